package read

import (
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

// files is a folder in memory.
type files map[string]string

func (f files) Read(path string) ([]byte, error) {
	text, ok := f[path]
	if !ok {
		return nil, &fs.PathError{Op: "open", Path: path, Err: fs.ErrNotExist}
	}
	return []byte(text), nil
}

func load(text string) (*model.House, []finding.Finding) {
	return Load("main.malt", []byte(text), ".", files{})
}

// Each archive is of one rule. Its cases named fires... must raise it, those named
// quiet... must not; what else is found stands there too.
func TestFindings(t *testing.T) {
	known := map[string]bool{}
	for _, r := range Rules() {
		known[r.Name] = true
	}
	paths, err := filepath.Glob("testdata/*.txtar")
	require.NoError(t, err)
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".txtar")
		t.Run(name, func(t *testing.T) {
			assert.True(t, known[name], "no rule is called %s", name)
			delete(known, name)
			fires, quiet := 0, 0
			golden.Archive(t, path, func(t *testing.T, c golden.Case) string {
				_, found := Load("main.malt", []byte(c.Files["main.malt"]), ".", files(c.Files))
				if strings.HasPrefix(c.Name, "fires") {
					fires++
					assert.True(t, has(found, name), "%s is not found", name)
				} else {
					quiet++
					assert.False(t, has(found, name), "%s is found", name)
				}
				return golden.Findings(found)
			})
			assert.Positive(t, fires, "no case fires")
			assert.Positive(t, quiet, "no case is quiet")
		})
	}
	delete(known, useTooMany.Name) // TestManyFiles
	assert.Empty(t, known, "rules without an archive")
}

func has(found []finding.Finding, rule string) bool {
	for _, f := range found {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

func TestEachRulesExamplesShowIt(t *testing.T) {
	needFiles := map[string]bool{useCircle.Name: true, useTooMany.Name: true, noFrame.Name: true} // the last is of a whole file
	for _, r := range Rules() {
		t.Run(r.Name, func(t *testing.T) {
			assert.NotEmpty(t, r.Title)
			assert.NotEmpty(t, r.Why)
			if r.Bad == "" {
				assert.True(t, needFiles[r.Name], "it has no example")
				return
			}
			_, bad := loadExample(t, r.Bad)
			assert.True(t, has(bad, r.Name), "the bad example does not show it: %v", golden.Findings(bad))
			_, good := loadExample(t, r.Good)
			assert.Empty(t, golden.Findings(good), "the good example")
		})
	}
}

func TestUnrelatedMistakesGiveOneFindingEach(t *testing.T) {
	_, found := Load("main.malt", []byte(`use "loft.malt"
process "Loft pale" {
  make pale malt
  from 6 kg of "Far field 2026"
  at "Loft, sprign"
  steep in "blue tub" {
    soak 7 h in water
  germinate on "larch floor" {
    hold bed at 14 to 17 °C
    turn every 8
    for 5 days
  }
  kiln in "tray kiln" {
    dry at 50 °C for 12 h
    cure at air-on 82 °C
    cool to malt 30 kg
  }
  storre in "drum"
  expect final moisture at least
}
`), ".", loft(t))
	var got []string
	for _, f := range found {
		got = append(got, f.Rule+": "+f.Place.Text())
	}
	assert.Equal(t, []string{
		`unknown-name: "Loft, sprign"`,
		"unclosed-block: {",
		"missing-unit: 8",
		"place-of-temperature-missing: 50 °C",
		"step-needs-end: cure at air-on 82 °C",
		"wrong-dimension: 30 kg",
		"unknown-word: storre",
		"value-missing: at least",
	}, got)
}

func TestFilesUsedInTurnAreAllRead(t *testing.T) {
	house, found := Load("main.malt", []byte("use \"a/one.malt\"\nuse \"a/two.malt\""), ".", files{
		"a/one.malt": "use \"two.malt\"\nvessel \"one\" { holds 1 l }",
		"a/two.malt": "vessel \"two\" { holds 2 l }",
	})
	assert.Empty(t, found)
	require.Len(t, house.Vessels, 2, "two.malt is used twice and read once")
	assert.Equal(t, "two", house.Vessels[0].Name, "what is used comes first")
	assert.Equal(t, "a/two.malt", house.Vessels[0].Place.File.Name())
}

func TestLargeFilesTogether(t *testing.T) {
	in, read := files{}, 0
	var b strings.Builder
	for i := range 6 {
		name := fmt.Sprintf("f%d.malt", i)
		in[name] = strings.Repeat(strings.Repeat("#", 99)+"\n", 30_000)
		fmt.Fprintf(&b, "use %q\n", name)
	}
	_, found := Load("main.malt", []byte(b.String()), ".", counting{in, &read})
	require.Len(t, found, 1, "it is said once")
	assert.Equal(t, useTooMany.Name, found[0].Rule)
	assert.Equal(t, `"f2.malt"`, found[0].Place.Text())
	assert.Contains(t, found[0].Message, "more than 8 MiB together")
	assert.Equal(t, 3, read, "nothing more is read")
}

// counting counts what is read.
type counting struct {
	files
	read *int
}

func (c counting) Read(path string) ([]byte, error) {
	*c.read++
	return c.files.Read(path)
}

func TestManyFiles(t *testing.T) {
	in := files{}
	var b strings.Builder
	for i := range MaxFiles {
		name := fmt.Sprintf("f%d.malt", i)
		in[name] = ""
		fmt.Fprintf(&b, "use %q\n", name)
	}
	_, found := Load("main.malt", []byte(b.String()), ".", in)
	require.Len(t, found, 1, "the file itself counts as one")
	assert.Equal(t, useTooMany.Name, found[0].Rule)
	assert.Equal(t, `"f63.malt"`, found[0].Place.Text())
}
