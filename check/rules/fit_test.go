package rules_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// An example of a rule is a few telling lines. To be run it is fitted into a whole
// process, the base:
//
//   - an example with a process in it is a whole file and stands for itself;
//   - a line stands in for the first base line with its verb, in the block where the
//     line before it went, or else in the first block that has such a line;
//   - a line with a block stands in for the whole block of that verb, of the same
//     name where it is a definition;
//   - lines that follow each other in one block stand together: with the first and the
//     last base line they stand in for goes what lies between, so that something can be
//     shown left out; definitions, which have no order, stand alone;
//   - lines that the base has no like of are put at the beginning of their block.
type fitting struct {
	base   *source.File
	blocks []fitBlock // of the base, in the order in which they begin
}

type fitBlock struct {
	kind vocabulary.Block
	body syntax.Block
}

// run is a part of an example that goes into one block.
type run struct {
	block      int
	statements []*syntax.Statement
}

func fitted(t *testing.T, base, example string) string {
	t.Helper()
	from := source.New("example.malt", []byte(example))
	tree, found := syntax.Parse(from)
	require.Empty(t, found, "the example can be read")
	if slices.ContainsFunc(tree.Top.Statements, func(s *syntax.Statement) bool { return s.Verb.Text == "process" }) {
		return example
	}
	f := fitting{base: source.New("base.malt", []byte(base))}
	whole, found := syntax.Parse(f.base)
	require.Empty(t, found, "the base can be read")
	f.collect(vocabulary.File, whole.Top)
	return f.put(from, f.runs(t, tree.Top.Statements))
}

func (f *fitting) collect(kind vocabulary.Block, b syntax.Block) {
	f.blocks = append(f.blocks, fitBlock{kind, b})
	for _, s := range b.Statements {
		if row, ok := vocabulary.Lookup(kind, s.Verb.Text); ok && s.Body != nil {
			f.collect(row.Opens, *s.Body)
		}
	}
}

func (f *fitting) runs(t *testing.T, list []*syntax.Statement) []run {
	var runs []run
	for _, s := range list {
		last := len(runs) - 1
		if last >= 0 && runs[last].block > 0 && f.fits(runs[last].block, s) {
			runs[last].statements = append(runs[last].statements, s)
			continue
		}
		home := slices.IndexFunc(f.blocks, func(b fitBlock) bool { return slices.ContainsFunc(b.body.Statements, alike(s)) })
		for i := 0; home < 0 && i < len(f.blocks); i++ {
			if f.fits(i, s) {
				home = i
			}
		}
		require.GreaterOrEqual(t, home, 0, "%s belongs nowhere", s.Verb.Text)
		runs = append(runs, run{home, []*syntax.Statement{s}})
	}
	return runs
}

// fits tells whether a statement may stand in a block. A word that begins two kinds
// of statement is told apart by what stands behind it: kiln "box" { } defines one,
// kiln in "box" { } dries in it.
func (f *fitting) fits(block int, s *syntax.Statement) bool {
	row, ok := vocabulary.Lookup(f.blocks[block].kind, s.Verb.Text)
	return ok && (row.Opens == vocabulary.None || (len(row.Slots) > 0) == (len(s.Terms) > 0))
}

// alike finds what a statement stands in for.
func alike(s *syntax.Statement) func(*syntax.Statement) bool {
	return func(o *syntax.Statement) bool {
		return o.Verb.Text == s.Verb.Text && (o.Body == nil) == (s.Body == nil) && (s.Body == nil || defined(o) == defined(s))
	}
}

// defined is the name that a definition defines.
func defined(s *syntax.Statement) string {
	if len(s.Terms) == 0 {
		return ""
	}
	name, _ := s.Terms[0].(syntax.Text)
	return name.Value
}

// put writes the base with the runs in their places.
func (f *fitting) put(from *source.File, runs []run) string {
	type change struct {
		source.Span
		text string
	}
	changes := make([]change, 0, len(runs))
	for _, r := range runs {
		lines := make([]string, 0, len(r.statements))
		for _, s := range r.statements {
			lines = append(lines, from.Text(s.Span))
		}
		changes = append(changes, change{f.place(r), strings.Join(lines, "\n") + "\n"})
	}
	slices.SortStableFunc(changes, func(a, b change) int { return b.Start - a.Start })
	text := string(f.base.Bytes())
	for _, c := range changes {
		text = text[:c.Start] + c.text + text[c.End:]
	}
	return text
}

// place is what a run takes out of the base.
func (f *fitting) place(r run) source.Span {
	body := f.blocks[r.block].body
	first, next := -1, 0
	for _, s := range r.statements {
		i := slices.IndexFunc(body.Statements[next:], alike(s))
		if i < 0 {
			continue
		}
		if first < 0 {
			first = next + i
		}
		next += i + 1
	}
	if first < 0 {
		at := body.Statements[0].Start
		return source.Span{Start: at, End: at}
	}
	return source.Span{Start: body.Statements[first].Start, End: body.Statements[next-1].End}
}

func TestAnExampleIsFittedIntoTheBase(t *testing.T) {
	const base = `kiln "box" {
  area 1 m2
}
process "p" {
  steep in "tub" {
    soak 6 h in water
    rest 9 h in air
    soak 7 h in water
    rest 8 h in air
  }
  kiln in "box" {
    dry for 3 h
  }
}
`
	for example, want := range map[string]string{
		"soak 1 h in water":                      strings.Replace(base, "soak 6 h in water", "soak 1 h in water\n", 1),
		"soak 1 h in water\nsoak 2 h in water":   strings.Replace(base, "soak 6 h in water\n    rest 9 h in air\n    soak 7 h in water", "soak 1 h in water\nsoak 2 h in water\n", 1),
		"rest 1 h in air\nsoak 2 h in water":     strings.Replace(base, "rest 9 h in air\n    soak 7 h in water", "rest 1 h in air\nsoak 2 h in water\n", 1),
		"stir every 2 h\ndry for 4 h":            strings.Replace(base, "dry for 3 h", "stir every 2 h\ndry for 4 h\n", 1),
		"stir every 2 h":                         strings.Replace(base, "dry for 3 h", "stir every 2 h\ndry for 3 h", 1),
		"kiln \"box\" { area 2 m2 }":             strings.Replace(base, "kiln \"box\" {\n  area 1 m2\n}", "kiln \"box\" { area 2 m2 }\n", 1),
		"kiln in \"box\" { dry for 9 h }":        strings.Replace(base, "kiln in \"box\" {\n    dry for 3 h\n  }", "kiln in \"box\" { dry for 9 h }\n", 1),
		"area 3 m2\ndry for 9 h # with a word":   strings.NewReplacer("area 1 m2", "area 3 m2\n", "dry for 3 h", "dry for 9 h\n").Replace(base),
		"floor \"tray\" { area 2 m2 }":           "floor \"tray\" { area 2 m2 }\n" + base,
		"process \"own\" {\n  make pale malt\n}": "process \"own\" {\n  make pale malt\n}",
	} {
		assert.Equal(t, want, fitted(t, base, example), example)
	}
}
