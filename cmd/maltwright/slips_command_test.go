package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ran is what came of a command.
type ran struct {
	code     int
	out, err string
	files    string
}

// judgeCommand judges a command line: it does what was meant, or its error names what to type.
func judgeCommand(t *testing.T, bases map[string]base, s slip) verdict {
	days := strings.NewReplacer("{today}", time.Now().Format(time.DateOnly), "{tomorrow}", time.Now().AddDate(0, 0, 1).Format(time.DateOnly))
	line, want := days.Replace(s.typed), days.Replace(s.meant[0])
	meant := ranIn(t, bases, s.base, want)
	assert.LessOrEqual(t, meant.code, 1, "%s: what was meant works: %s", want, meant.err)
	got := ranIn(t, bases, s.base, line)
	if got.code == meant.code && got.files == meant.files && strings.HasSuffix(got.out, meant.out) { // it may say first what it took it for
		return verdict{right: true}
	}
	v := verdict{because: fmt.Sprintf("exit code %d, %s", got.code, strings.TrimSpace(got.err))}
	if got.code == 0 || got.files != before(bases, s.base) {
		v.because = firstLine(got.out + got.err)
		if !strings.HasPrefix(want, "maltwright explain") { // what explains another word does nothing
			v.harm = "it did something else: " + v.because
		}
		return v
	}
	typed := toType(got.err)
	for _, line := range typed {
		if same := ranIn(t, bases, s.base, line); same.code == meant.code && same.files == meant.files && strings.HasSuffix(same.out, meant.out) {
			return verdict{right: true}
		}
	}
	if len(typed) > 0 {
		v.harm = "it says to type " + strings.Join(typed, ", or ")
	}
	say := unquoted(got.err)
	said, other := told(say), changed(unquoted(line), unquoted(want))
	want = unquoted(want)
	v.right = strings.Contains(say, want) || slices.ContainsFunc(said, func(x string) bool { return strings.Contains(x, other) && strings.Contains(want, x) })
	for _, x := range said {
		if !v.right && !strings.Contains(want, x) && (strings.Contains(say, "did you mean") || numbers.MatchString(x)) {
			v.harm = fmt.Sprintf("it says %q: %s", x, say)
		}
	}
	return v
}

var commandToType = regexp.MustCompile(`maltwright (?:[^,;']|'[^']*')+`)

// toType lists the command lines that an error says to type.
func toType(text string) (list []string) {
	_, said, _ := strings.Cut(text, "type: ")
	for _, line := range commandToType.FindAllString(said, -1) {
		list = append(list, strings.ReplaceAll(strings.TrimSpace(line), "'", `"`))
	}
	return list
}

var dated = regexp.MustCompile(`(\d{4}-\d\d-\d\d)T(\d)`)

// unquoted is a text without quotes, which shells need, and with a blank between date and time.
func unquoted(text string) string {
	text = dated.ReplaceAllString(text, "$1 $2")
	return strings.Join(strings.Fields(strings.NewReplacer("'", "", `"`, "").Replace(text)), " ")
}

var proposal = regexp.MustCompile(`(?:did you mean|write it as|write|type|say|such as|may be|or) (?:maltwright )?([^?,;\[]+?)(?: or |[?,;\[]|$)`)

// told lists what an error says to type.
func told(text string) (list []string) {
	for _, m := range proposal.FindAllStringSubmatch(text, -1) {
		list = append(list, strings.TrimSpace(m[1]))
	}
	return list
}

// changed is what of one line is other than in another, by words.
func changed(from, to string) string {
	a, b := strings.Fields(from), strings.Fields(to)
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return strings.Join(b, " ")
}

func firstLine(text string) string {
	line, _, _ := strings.Cut(strings.TrimSpace(text), "\n")
	return line
}

// ranIn runs a command line in a folder that holds some of the bases.
func ranIn(t *testing.T, bases map[string]base, files, line string) ran {
	folder := t.TempDir()
	for _, name := range strings.Fields(files) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name+".malt"), []byte(bases[name].text), 0o644))
	}
	back, err := os.Getwd()
	require.NoError(t, err)
	require.NoError(t, os.Chdir(folder))
	defer func() { require.NoError(t, os.Chdir(back)) }()
	var out, errs bytes.Buffer
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }, Context: context.Background()}
	code := Main(w, argumentsOf(line)[1:])
	return ran{code, strings.ReplaceAll(out.String(), folder, "."), strings.ReplaceAll(errs.String(), folder, "."), held(t, folder)}
}

var argument = regexp.MustCompile(`(?:"[^"]*"|[^\s"])+`)

// argumentsOf cuts a line as a shell does.
func argumentsOf(line string) (list []string) {
	for _, a := range argument.FindAllString(line, -1) {
		list = append(list, strings.ReplaceAll(a, `"`, ""))
	}
	return list
}

// held is what the files of a folder hold.
func held(t *testing.T, folder string) string {
	names, err := filepath.Glob(filepath.Join(folder, "*"))
	require.NoError(t, err)
	var b strings.Builder
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		fmt.Fprintf(&b, "-- %s --\n%s", filepath.Base(name), text)
	}
	return b.String()
}

// before is what they held when the command began.
func before(bases map[string]base, files string) string {
	var b strings.Builder
	for _, name := range slices.Sorted(slices.Values(strings.Fields(files))) {
		fmt.Fprintf(&b, "-- %s.malt --\n%s", name, bases[name].text)
	}
	return b.String()
}
