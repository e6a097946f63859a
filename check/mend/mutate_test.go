package mend

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// sample is a file to mutate, with the files beside it.
type sample struct {
	name   string
	text   string
	beside folder
}

type folder map[string]string

func (f folder) Read(path string) ([]byte, error) {
	text, ok := f[path]
	if !ok {
		return nil, os.ErrNotExist
	}
	return []byte(text), nil
}

// samples are the files of the project: examples, broken ones, and the cases of the
// rules of the language.
func samples(t testing.TB) (list []sample) {
	for _, dir := range []string{"../../examples", "../../examples/broken", "../../examples/batches", "../testdata/schedules", "../testdata/wrong", "../testdata/units", "../rules/testdata"} {
		paths, err := filepath.Glob(dir + "/*.malt")
		require.NoError(t, err)
		require.NotEmpty(t, paths, dir)
		beside := folder{}
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			beside[filepath.Base(path)] = string(text)
		}
		for _, path := range paths {
			list = append(list, sample{path, beside[filepath.Base(path)], beside})
		}
	}
	archives, err := filepath.Glob("../../lang/read/testdata/*.txtar")
	require.NoError(t, err)
	for _, path := range archives {
		a, err := txtar.ParseFile(path)
		require.NoError(t, err)
		cases := map[string]folder{}
		for _, f := range a.Files {
			name, file, _ := strings.Cut(f.Name, "/")
			if cases[name] == nil {
				cases[name] = folder{}
			}
			cases[name][file] = string(f.Data)
		}
		for _, f := range a.Files {
			if name, file, _ := strings.Cut(f.Name, "/"); file == "main.malt" {
				list = append(list, sample{path + " " + name, string(f.Data), cases[name]})
			}
		}
	}
	return list
}

// slips are what a hand does to a text: each gives the text with one slip more.
var slips = []func(r *rand.Rand, text string) string{
	func(r *rand.Rand, text string) string { // a letter too few
		from, to := letter(r, text)
		return text[:from] + text[to:]
	},
	func(r *rand.Rand, text string) string { // a letter twice
		from, to := letter(r, text)
		return text[:to] + text[from:to] + text[to:]
	},
	func(r *rand.Rand, text string) string { // two letters swapped
		from, to := letter(r, text)
		_, n := utf8.DecodeRuneInString(text[to:])
		return text[:from] + text[to:to+n] + text[from:to] + text[to+n:]
	},
	misspelt, misspelt, misspelt, // a unit, or a word
	func(r *rand.Rand, text string) string { // two words swapped
		words := tokens(text)
		a, b := pick(r, words), pick(r, words)
		if a.Start > b.Start {
			a, b = b, a
		}
		if a.End > b.Start {
			return text
		}
		return text[:a.Start] + text[b.Start:b.End] + text[a.End:b.Start] + text[a.Start:a.End] + text[b.End:]
	},
	func(r *rand.Rand, text string) string { // a word left out
		w := pick(r, tokens(text))
		return text[:w.Start] + text[w.End:]
	},
	func(r *rand.Rand, text string) string { // a word twice
		w := pick(r, tokens(text))
		return text[:w.End] + " " + text[w.Start:w.End] + text[w.End:]
	},
	func(r *rand.Rand, text string) string { // a decimal comma
		return strings.Replace(text, ".", ",", 1+r.IntN(3))
	},
	upsideDown, upsideDown,
	func(_ *rand.Rand, text string) string { return strings.ReplaceAll(text, "\n", "\r\n") },
	func(_ *rand.Rand, text string) string { return "\ufeff" + text },
}

// mutated makes one to four slips in a text.
func mutated(r *rand.Rand, text string) string {
	for range 1 + r.IntN(4) {
		text = slips[r.IntN(len(slips))](r, text)
	}
	return text
}

func letter(r *rand.Rand, text string) (from, to int) {
	if text == "" {
		return 0, 0
	}
	from = r.IntN(len(text))
	for from > 0 && !utf8.RuneStart(text[from]) {
		from--
	}
	_, n := utf8.DecodeRuneInString(text[from:])
	return from, from + n
}

// tokens gives the spans of the words of a text, as blanks part them.
func tokens(text string) (list []source.Span) {
	start := -1
	for i := 0; i <= len(text); i++ {
		blank := i == len(text) || strings.IndexByte(" \t\r\n", text[i]) >= 0
		switch {
		case blank && start >= 0:
			list, start = append(list, source.Span{Start: start, End: i}), -1
		case !blank && start < 0:
			start = i
		}
	}
	return list
}

func pick(r *rand.Rand, list []source.Span) source.Span {
	if len(list) == 0 {
		return source.Span{}
	}
	return list[r.IntN(len(list))]
}

// misspelt misspells a unit or a bare word of the file.
func misspelt(r *rand.Rand, text string) string {
	tree, _ := syntax.Parse(source.New("x", []byte(text)))
	var words []syntax.Word
	take := func(q syntax.Quantity) {
		for _, p := range q.Parts {
			words = append(words, p.Unit, p.Unit) // twice as likely
		}
	}
	var term func(t syntax.Term)
	term = func(t syntax.Term) {
		switch t := t.(type) {
		case syntax.Word:
			words = append(words, t)
		case syntax.Amount:
			take(t.Low)
			if t.High != nil {
				take(*t.High)
			}
		case syntax.Bounded:
			term(t.Value)
		}
	}
	tree.Top.Walk(func(s *syntax.Statement) {
		words = append(words, s.Verb)
		for _, t := range s.Terms {
			term(t)
		}
		for _, c := range s.Clauses {
			for _, t := range c.Terms {
				term(t)
			}
		}
	})
	if len(words) == 0 {
		return text
	}
	w := words[r.IntN(len(words))]
	if w.Text == "" {
		return text
	}
	from, to := letter(r, text[w.Start:w.End])
	from, to = from+w.Start, to+w.Start
	switch r.IntN(4) {
	case 0:
		return text[:to] + "z" + text[to:]
	case 1:
		return text[:from] + text[to:]
	case 2:
		return text[:w.Start] + strings.ToUpper(text[w.Start:w.End]) + text[w.End:]
	}
	return text[:to] + text[from:to] + text[to:]
}

// upsideDown swaps the words on both sides of a "to".
func upsideDown(r *rand.Rand, text string) string {
	words := tokens(text)
	var at []int
	for i := 1; i+1 < len(words); i++ {
		if text[words[i].Start:words[i].End] == "to" {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return text
	}
	i := at[r.IntN(len(at))]
	a, b := words[i-1], words[i+1]
	return text[:a.Start] + text[b.Start:b.End] + text[a.End:b.Start] + text[a.Start:a.End] + text[b.End:]
}
