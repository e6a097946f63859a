package offer_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/offer"
	reading "maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// examples are the process files, houses and records of the examples, as trees.
func examples(t *testing.T) (list []*syntax.Tree) {
	t.Helper()
	require.NoError(t, filepath.WalkDir("../../examples", func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() && d.Name() == "broken" {
			return filepath.SkipDir
		}
		if filepath.Ext(path) == ".malt" {
			list = append(list, parsed(path, read(t, path)))
		}
		return nil
	}))
	require.Greater(t, len(list), 20)
	return list
}

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

func parsed(name, text string) *syntax.Tree {
	tree, _ := syntax.Parse(source.New(name, []byte(text)))
	return tree
}

// known is what the files of a folder say: names of all of them.
func known(t *testing.T, path string) (k offer.Known) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*.malt"))
	require.NoError(t, err)
	for _, file := range files {
		k.Names = append(k.Names, offer.NamesIn(parsed(file, read(t, file)))...)
		k.Files = append(k.Files, filepath.Base(file))
	}
	return k
}

// step is a place in a statement, and the word that stands behind it.
type step struct {
	at   int // what stands behind it up to the end of the head is cut away
	end  int
	word string // "" for what nobody can know: a number, a time, a name that is given
}

// steps are the places of a statement.
func steps(f *source.File, s *syntax.Statement) (list []step) {
	head := s.Head()
	at := head.Start
	for _, p := range syntax.Lexemes(source.New("", []byte(f.Text(head)))) {
		text := f.Text(source.Span{Start: head.Start + p.Start, End: head.Start + p.End})
		switch p.Kind {
		case syntax.NumberLexeme, syntax.DateLexeme, syntax.ClockLexeme:
			text = ""
		}
		list = append(list, step{at, head.End, strings.Join(strings.Fields(text), " ")})
		at = head.Start + p.End
	}
	return list
}

// given tells whether the quoted text of a statement is one that only its writer can know.
func given(s *syntax.Statement, word string, k offer.Known) bool {
	if !strings.HasPrefix(word, `"`) {
		return false
	}
	if s.Body != nil && len(s.Terms) > 0 {
		if name, ok := s.Terms[0].(syntax.Text); ok && word == `"`+name.Value+`"` {
			return true // what it defines
		}
	}
	for _, n := range k.Names {
		if `"`+n.Text+`"` == word {
			return false
		}
	}
	return s.Verb.Text != "use"
}

// The words of the examples are offered where they stand, with all that stands behind them in
// their statement taken away.
func TestTheWordThatStoodThereIsOffered(t *testing.T) {
	asked, offered, free := 0, 0, 0
	missed := map[string]int{}
	for _, tree := range examples(t) {
		f := tree.File
		k := known(t, f.Name())
		text := string(f.Bytes())
		shapes := map[string]int{}
		top := source.Span{}
		tree.Top.Walk(func(s *syntax.Statement) {
			if s.Start >= top.End {
				top = s.Span // the rest of the file is of no matter, but for the names in it
			}
			if shape := shapeOf(s); shapes[shape] > 0 {
				return // records say one thing a hundred times
			} else {
				shapes[shape]++
			}
			if s.Verb.Text == "accept" && len(s.Terms) == 1 {
				k.Rules = append(k.Rules, offer.Named{Text: f.Text(s.Terms[0].Range())}) // which rules there are is handed in
			}
			for _, st := range steps(f, s) {
				if st.word == "" || given(s, st.word, k) {
					free++
					continue
				}
				cut := parsed(f.Name(), text[top.Start:st.at]+" "+text[st.end:top.End])
				asked++
				if has(offer.At(cut.File, cut, st.at+1-top.Start, k), st.word) {
					offered++
				} else {
					missed[fmt.Sprintf("%s: %s ▮ %s", filepath.Base(f.Name()), text[s.Start:st.at], st.word)]++
				}
			}
		})
	}
	share := float64(offered) / float64(asked)
	t.Logf("%d of %d words are offered where they stand, %.2f %%; %d numbers, times and texts are nobody's to know", offered, asked, 100*share, free)
	for m := range missed {
		t.Log(m)
	}
	assert.GreaterOrEqual(t, share, 0.99)
}

func shapeOf(s *syntax.Statement) string {
	shape := s.Verb.Text
	for _, t := range s.Terms {
		if w, ok := t.(syntax.Word); ok {
			shape += " " + w.Text
		}
	}
	for _, c := range s.Clauses {
		shape += " " + c.Word.Text
	}
	return shape
}

func has(items []offer.Item, word string) bool {
	for _, it := range items {
		if it.Edit.New == word || it.Kind == offer.Unit && unitIs(it.Label, word) || it.Label == vocabulary.Today(word) || it.Detail == "what is measured" && strings.HasPrefix(it.Label, word+" ") {
			return true
		}
	}
	return false
}

// unitIs tells whether a unit is the one of that spelling.
func unitIs(name, written string) bool { return name == written || name == written+"s" }

// termsOf are the places of the values of a statement.
func termsOf(s *syntax.Statement) (list []source.Span) {
	add := func(terms []syntax.Term) {
		for _, t := range terms {
			if b, ok := t.(syntax.Bounded); ok {
				t = b.Value
			}
			list = append(list, t.Range())
		}
	}
	add(s.Terms)
	for _, c := range s.Clauses {
		add(c.Terms)
	}
	return list
}

// folder reads the folder of a file.
func folder(t *testing.T, path string) reading.Reader {
	t.Helper()
	root, err := reading.OpenRoot(filepath.Dir(path))
	require.NoError(t, err)
	return root
}
