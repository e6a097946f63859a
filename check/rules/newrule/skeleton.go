package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/format"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"text/template"
)

// ruleName is lower-case words joined by "-".
var ruleName = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// skeleton is a rule that compiles, finds nothing and declares nothing yet. The
// tests ask for each empty field, and for the cases.
var skeleton = template.Must(template.New("rule").Parse(`package rules

import "maltwright/lang/finding"

var {{.Variable}} = Rule{
	Forecast: false, // true where it asks the forecast
	Rule: finding.Rule{Name: "{{.Name}}", Severity: finding.Caution,
		Title:  "", // when it fires, in one line: "the soak is too long for the grain"
		Why:    "", // the reason, with its source, or (common practice)
		Do:     "", // what to do about it
		Bad:    "", // the telling lines of a process on which it fires
		Good:   "", // the same put right
		Limits: "", // what it cannot see
	},
	Judge: func(r finding.Rule, c *Case) {
		// Ask c.Process, c.Profile or c.Forecast; note with c.Note(r.At(place, sentence)).
		// Where a fact is missing: c.NotJudged(r, "what is not given").
	},
}
`))

const cases = `A process on which %s fires, and more that must stay quiet: the near miss on
both sides, another malt type or grain that may do it, units in °F and lb. The forms
are told in cases_test.go.

-- fires/say what is wrong --
- make pale malt
+ make pale malt
-- quiet/the unchanged process --
- altitude 100 m
+ altitude 100 m
`

// write writes both files of a rule into the folder of the rules, or neither, and
// gives what is left to do.
func write(folder, family, name string) (left string, err error) {
	if !ruleName.MatchString(name) {
		return "", fmt.Errorf("%q is no name of a rule: write lower-case words joined by -, such as soak-too-long", name)
	}
	list := filepath.Join(folder, "family_"+family+".go")
	if _, err := os.Stat(list); err != nil {
		return "", fmt.Errorf("there is no family %q; there are %s", family, families(folder))
	}
	v := variable(name)
	var b bytes.Buffer
	if err := skeleton.Execute(&b, map[string]string{"Variable": v, "Name": name}); err != nil {
		return "", err
	}
	code, err := format.Source(b.Bytes())
	if err != nil {
		return "", err
	}
	source, archive := filepath.Join(folder, name+".go"), filepath.Join(folder, "testdata", name+".txtar")
	if err := create(source, code); err != nil {
		return "", err
	}
	if err := create(archive, fmt.Appendf(nil, cases, name)); err != nil {
		return "", errors.Join(err, os.Remove(source))
	}
	return fmt.Sprintf(todo, source, archive, v, list, name), nil
}

const todo = `%[1]s and %[2]s are written. Now:
  1. add %[3]s to the list in %[4]s
  2. declare it and write its judgement
  3. write its cases, at least as many quiet as firing, then
     MALTWRIGHT_UPDATE=1 go test ./check/rules -run 'TestRules.*/%[5]s$'
  4. write examples/broken/%[5]s.malt, which raises it and nothing else
  5. MALTWRIGHT_UPDATE=1 go test ./check/... ./cmd/... writes its page and what check
     prints about it
`

// create writes a file that does not exist yet.
func create(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, os.ErrExist) {
		return fmt.Errorf("%s is there already, and is left as it is", path)
	}
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	return errors.Join(err, f.Close())
}

// variable is the name in Go: soak-too-long is soakTooLong. A word of Go itself gets
// "Rule" behind it.
func variable(name string) string {
	words := strings.Split(name, "-")
	for i := range words[1:] {
		words[i+1] = strings.ToUpper(words[i+1][:1]) + words[i+1][1:]
	}
	v := strings.Join(words, "")
	if token.IsKeyword(v) {
		v += "Rule"
	}
	return v
}

func families(folder string) string {
	files, _ := filepath.Glob(filepath.Join(folder, "family_*.go")) // the pattern is sound
	for i, f := range files {
		files[i] = strings.TrimSuffix(strings.TrimPrefix(filepath.Base(f), "family_"), ".go")
	}
	return strings.Join(files, ", ")
}
