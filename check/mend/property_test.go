package mend

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
)

// mutants is how many texts are mutated; they are the same ones each time.
func mutants() int {
	if golden.Long() {
		return 10_000
	}
	return 2500
}

// mutant is a mutated file. What is found in a text is kept, since the properties ask
// for it more than once.
type mutant struct {
	text   string
	beside folder
	known  map[string]check.Report
}

// check checks a text in the place of the file, without a forecast, which is slow and
// seldom brings a repair; those that it brings have tests beside the rules.
func (m mutant) check(text []byte) check.Report {
	rep, ok := m.known[string(text)]
	if !ok {
		rep = check.File("main.malt", text, ".", m.beside, check.Options{NoForecast: true})
		m.known[string(text)] = rep
	}
	return rep
}

func (m mutant) checker(text []byte) (*source.File, []finding.Finding) {
	rep := m.check(text)
	return rep.House.Files[0], rep.Findings
}

// eachMutant gives mutated files, always the same ones, until one fails.
func eachMutant(t *testing.T, of int, do func(mutant) bool) {
	list := slices.DeleteFunc(samples(t), func(s sample) bool { return len(s.text) > 3000 }) // the long ones are no wiser
	r := rand.New(rand.NewPCG(1, 2))
	for range of {
		s := list[r.IntN(len(list))]
		if m := (mutant{mutated(r, s.text), s.beside, map[string]check.Report{}}); !do(m) {
			t.Fatalf("%s, mutated:\n%s", s.name, m.text)
		}
	}
}

// Every finding stands at the words that it is about, and not at the first byte for
// want of a better place. Each round of mending changes only the words of the findings
// that it mends, and to mend the text once more changes nothing.
func TestMendingAMutantDamagesNothing(t *testing.T) {
	t.Parallel()
	mended := 0
	eachMutant(t, mutants(), func(m mutant) bool {
		if !atTheirWords(t, m.check([]byte(m.text))) {
			return false
		}
		path := mender{m.checker}.path([]byte(m.text))
		end := path[len(path)-1]
		if len(path) > 1 {
			mended++
		}
		for i := range path[1:] {
			if !onlyTheWords(t, path[i], path[i+1]) {
				return false
			}
		}
		return assert.Equal(t, len(path) > 1, end.text() != m.text) &&
			(len(path) == 1 || assert.False(t, end.unread(), "what is mended reads")) &&
			assert.Equal(t, end.text(), string(Text([]byte(end.text()), m.checker).Text), "a second time")
	})
	t.Logf("%d of %d mutants were mended", mended, mutants())
	assert.Greater(t, mended, mutants()/10, "too few to show anything")
}

func atTheirWords(t *testing.T, rep check.Report) bool {
	for _, f := range rep.Findings {
		places := []source.Place{f.Place}
		for _, r := range f.Related {
			places = append(places, r.Place)
		}
		for _, p := range places {
			if !assert.True(t, p.Known() && slices.Contains(rep.House.Files, p.File), "%s is in no file: %s", f.Rule, f.Message) {
				return false
			}
			if !assert.True(t, p.File.Start() <= p.Start && p.End <= p.File.Size(), "%s lies outside of its file: %s", f.Rule, f.Message) {
				return false
			}
			blank := strings.TrimSpace(strings.TrimPrefix(string(p.File.Bytes()), "\ufeff")) == ""
			if !assert.True(t, blank || strings.TrimSpace(p.Text()) != "", "%s stands at no words: %s", f.Rule, f.Message) {
				return false
			}
		}
		for _, e := range f.Fixes {
			if !assert.True(t, About(f, e), "%s would be mended elsewhere: %s", f.Rule, f.Message) {
				return false
			}
		}
	}
	return true
}

// onlyTheWords tells whether a round left everything but the words of its findings as
// it was, found by what stands between them alone.
func onlyTheWords(t *testing.T, before, after look) bool {
	var spans []source.Span
	for _, f := range after.mended[len(before.mended):] {
		spans = append(spans, f.Place.Span)
		for _, r := range f.Related {
			if r.Place.File == f.Place.File {
				spans = append(spans, r.Place.Span)
			}
		}
	}
	slices.SortFunc(spans, func(a, b source.Span) int { return a.Start - b.Start })
	was, is, at := before.file.Bytes(), after.file.Bytes(), 0
	for i, s := range spans {
		if s.Start < at {
			continue
		}
		kept := was[at:s.Start]
		where := bytes.Index(is, kept)
		if !assert.True(t, where == 0 || i > 0 && where > 0, "%q is not there any more", kept) {
			return false
		}
		is, at = is[where+len(kept):], s.End
	}
	return assert.True(t, bytes.HasSuffix(is, was[at:]), "%q is not the end any more", was[at:])
}

func TestMutantsAreAlwaysTheSame(t *testing.T) {
	var first, second []string
	for _, list := range []*[]string{&first, &second} {
		eachMutant(t, 50, func(m mutant) bool {
			*list = append(*list, m.text)
			return true
		})
	}
	require.NotEmpty(t, first)
	assert.Equal(t, first, second)
}

// A repair is what was meant: of one slip in a file that is good, it gives back what
// the file said, or it leaves something to find. Where a range lost or got a digit and
// stands the wrong way round, that it was turned cannot be told from it.
func TestMendingOneSlipGivesBackWhatWasMeant(t *testing.T) {
	t.Parallel()
	says := func(text string) string {
		tree, _ := syntax.Parse(source.New("x", []byte(text)))
		return string(layout.Plain(tree))
	}
	good := slices.DeleteFunc(samples(t), func(s sample) bool {
		return len(s.text) > 3000 || strings.Contains(s.name, "broken") || strings.Contains(s.name, "fires")
	})
	r := rand.New(rand.NewPCG(4, 4))
	right := 0
	for range mutants() / 4 {
		s := good[r.IntN(len(good))]
		m := mutant{slips[r.IntN(4)](r, s.text), s.beside, map[string]check.Report{}}
		got := Text([]byte(m.text), m.checker)
		worst, _ := finding.Worst(m.check(got.Text).Findings)
		ranges := slices.ContainsFunc(got.Mended, func(f finding.Finding) bool { return strings.HasSuffix(f.Rule, "-upside-down") })
		if !got.Changed || worst >= finding.Fault || ranges {
			continue
		}
		right++
		if !assert.Equal(t, says(s.text), says(string(got.Text)), "%s, mended from\n%s", s.name, m.text) {
			return
		}
	}
	assert.Greater(t, right, mutants()/40, "too few to show anything")
}
