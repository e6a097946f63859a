package merge

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func tree(t require.TestingT, text string) *syntax.Tree {
	got, found := syntax.Parse(source.New("x.malt", []byte(text)))
	worst, any := finding.Worst(found)
	require.False(t, any && worst >= finding.Fault, "%v\n%s", found, text)
	return got
}

func tidy(t require.TestingT, text string) string { return string(layout.Write(tree(t, text))) }

// merged merges three texts, and asks of every result that it reads and is laid out.
func merged(t require.TestingT, base, ours, theirs string) (string, int) {
	got, err := Trees(tree(t, base), tree(t, ours), tree(t, theirs))
	require.NoError(t, err)
	assert.Equal(t, tidy(t, string(got.Text)), string(got.Text))
	return string(got.Text), got.Unsettled
}

const season = `# a season
process "p" {
  steep in "tub" {
    soak 7 h in water at 13 °C
    rest 9 h in air at 14 °C
    soak 6 h in water at 13 °C
  }

  kiln in "k" {
    dry  at air-on 50 °C until moisture at most 25 % allow 6 to 14 h
    gate moisture at most 10 %
    cure at air-on 82 °C for 4 h  # the fan on
  }

  expect final moisture 3.5 to 4.8 %
}

vessel "tub" { holds 25 l }
`

func edit(t require.TestingT, text string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, text, pairs[i])
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

// What two people did goes together where they did different things.
func TestEditsOfDifferentThingsMerge(t *testing.T) {
	for name, c := range map[string]struct{ ours, theirs, want []string }{
		"two statements":                {[]string{"soak 7 h", "soak 8 h"}, []string{"rest 9 h", "rest 10 h"}, nil},
		"two clauses of one":            {[]string{"air-on 82 °C", "air-on 85 °C"}, []string{"for 4 h", "for 5 h"}, nil},
		"a value and a comment":         {[]string{"for 4 h", "for 5 h"}, []string{"# the fan on", "# the fan off"}, nil},
		"a step and a fact":             {[]string{"    gate moisture at most 10 %\n", ""}, []string{"holds 25 l", "holds 30 l"}, nil},
		"a new clause and a value":      {[]string{"gate moisture at most 10 %", "gate moisture at most 10 % allow 1 to 6 h"}, []string{"gate moisture at most 10 %", "gate moisture at most 9 %"}, []string{"gate moisture at most 10 %", "gate moisture at most 9 % allow 1 to 6 h"}},
		"a rename and an edit":          {[]string{`process "p"`, `process "q"`}, []string{"soak 6 h", "soak 5 h"}, nil},
		"a new fact and a new block":    {[]string{"{ holds 25 l }", "{ holds 25 l; accept oxygen-gone because \"x\" }"}, []string{"vessel \"tub\" { holds 25 l }", "vessel \"tub\" { holds 25 l }\nfloor \"f\" { area 1 m2 }"}, nil},
		"a step on either side":         {[]string{"    rest 9 h", "    soak 1 h in water at 9 °C\n    rest 9 h"}, []string{"    cure", "    dry at air-on 70 °C for 1 h\n    cure"}, nil},
		"a scale and what a tub weighs": {[]string{"vessel \"tub\"", "scale \"s\" { division 1 g }\nvessel \"tub\""}, []string{"holds 25 l", "holds 25 l; weighs 990 g"}, nil},
		"one in other units":            {[]string{"at 14 °C", "at 57.2 °F"}, []string{"rest 9 h in air at 14 °C", "rest 9 h in air at 15 °C"}, []string{"rest 9 h in air at 14 °C", "rest 9 h in air at 15 °C"}},
	} {
		t.Run(name, func(t *testing.T) {
			ours, theirs := edit(t, season, c.ours...), edit(t, season, c.theirs...)
			got, unsettled := merged(t, season, ours, theirs)
			want := edit(t, season, c.want...)
			if c.want == nil {
				want = edit(t, theirs, c.ours...)
			}
			assert.Equal(t, tidy(t, want), got)
			assert.Zero(t, unsettled)
		})
	}
}

func TestEditsOfOneThingLeaveBoth(t *testing.T) {
	for name, c := range map[string]struct {
		ours, theirs []string
		want         string
	}{
		"a value":           {[]string{"soak 7 h", "soak 8 h"}, []string{"soak 7 h", "soak 6 h"}, "    # both: ours 8 h; theirs 6 h; before 7 h\n    soak 8 h in water"},
		"a clause":          {[]string{"82 °C", "85 °C"}, []string{"82 °C", "90 °C"}, "    # both: ours at air-on 85 °C; theirs at air-on 90 °C; before at air-on 82 °C\n    cure at air-on 85 °C for 4 h  # the fan on"},
		"a clause that is":  {[]string{" allow 6 to 14 h", ""}, []string{" 6 to 14 h", " 6 to 16 h"}, "    # both: ours without allow; theirs allow 6 to 16 h; before allow 6 to 14 h\n    dry  at air-on 50 °C until moisture at most 25 % allow 6 to 16 h"},
		"taken out":         {[]string{"    gate moisture at most 10 %\n", ""}, []string{"most 10 %", "most 9 %"}, "    # both: ours took this out; theirs changed it\n    gate moisture at most 9 %"},
		"taken out there":   {[]string{"most 10 %", "most 9 %"}, []string{"    gate moisture at most 10 %\n", ""}, "    # both: ours changed this; theirs took it out\n    gate moisture at most 9 %"},
		"steps in one spot": {[]string{"    cure", "    dry at air-on 70 °C for 1 h\n    cure"}, []string{"    cure", "    stew at malt 65 °C for 1 h\n    cure"}, "    dry  at air-on 70 °C for 1 h\n    # both: ours has dry at air-on 70 °C for 1 h here; theirs has stew at malt 65 °C for 1 h here\n    stew at malt 65 °C for 1 h\n"},
		"one new thing":     {[]string{"  expect", "  deculm within 12 h\n  expect"}, []string{"  expect", "  deculm within 20 h\n  expect"}, "  # both: ours within 12 h; theirs within 20 h\n  deculm within 12 h\n"},
	} {
		t.Run(name, func(t *testing.T) {
			got, unsettled := merged(t, season, edit(t, season, c.ours...), edit(t, season, c.theirs...))
			assert.Contains(t, got, c.want)
			assert.Equal(t, 1, unsettled)
			_, found := read.Load("x.malt", []byte(got), ".", nil)
			assert.True(t, slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Rule == "merge-unsettled" }), "the mark is found")
		})
	}
}

// Stages that both brought are one where they are on one floor or kiln, and two elsewhere.
func TestStagesOfAKindMergeByWhereTheyAre(t *testing.T) {
	stage := func(kiln, hours string) string {
		return edit(t, season, "\n  expect", "\n  kiln in \""+kiln+"\" {\n    cure at air-on 90 °C for "+hours+"\n  }\n\n  expect")
	}
	got, unsettled := merged(t, season, stage("oven", "2 h"), edit(t, season, "soak 6 h", "soak 5 h"))
	assert.Equal(t, tidy(t, edit(t, stage("oven", "2 h"), "soak 6 h", "soak 5 h")), got)
	assert.Zero(t, unsettled)
	got, unsettled = merged(t, season, stage("oven", "2 h"), stage("oven", "3 h"))
	assert.Equal(t, 1, strings.Count(got, `kiln in "oven"`), got)
	assert.Equal(t, 1, unsettled)
	got, _ = merged(t, season, stage("oven", "2 h"), stage("drum", "3 h"))
	assert.Contains(t, got, `kiln in "oven"`)
	assert.Contains(t, got, `kiln in "drum"`)
	got, unsettled = merged(t, stage("oven", "2 h"), edit(t, stage("oven", "2 h"), "90 °C for 2 h", "90 °C for 3 h"), edit(t, stage("oven", "2 h"), "82 °C for 4 h", "85 °C for 4 h"))
	assert.Contains(t, got, "90 °C for 3 h")
	assert.Contains(t, got, "85 °C for 4 h")
	assert.Zero(t, unsettled)
}

func TestAirAtIntervalsOnBothSidesIsOneThing(t *testing.T) {
	with := func(air string) string { return edit(t, season, "    rest 9 h", air+"    rest 9 h") }
	base := with("    aerate every 30 min for 5 min\n")
	got, unsettled := merged(t, base, edit(t, base, "every 30 min", "every 1 h"), edit(t, base, "for 5 min", "for 10 min"))
	assert.Equal(t, tidy(t, with("    aerate every 1 h for 10 min\n")), got)
	assert.Zero(t, unsettled)
	got, unsettled = merged(t, season, with("    aerate every 30 min for 5 min\n"), edit(t, season, "    soak 6 h", "    aerate every 1 h for 5 min\n    soak 6 h"))
	assert.Contains(t, got, "    # both: ours every 30 min; theirs every 1 h\n    aerate every 30 min for 5 min\n")
	assert.Equal(t, 1, unsettled)
}

func TestShiftsAndWhatASoakIsWithMerge(t *testing.T) {
	base := season + "\nsite \"Hall\" {\n  awake 06:00 to 14:00\n  awake 14:00 to 22:00\n}\n"
	got, unsettled := merged(t, base, edit(t, base, "14:00 to 22:00", "14:00 to 22:00 with 1 hand"), edit(t, base, "14:00\n", "14:00 with 2 hands\n", "22:00\n", "22:00\n  away  2026-04-03\n"))
	assert.Contains(t, got, "  awake 06:00 to 14:00 with 2 hands\n  awake 14:00 to 22:00 with 1 hand\n  away  2026-04-03\n")
	assert.Zero(t, unsettled)
	got, unsettled = merged(t, season, edit(t, season, "soak 6 h in water at 13 °C", "soak 6 h in 12 l water at 13 °C"), edit(t, season, "soak 6 h in water at 13 °C", "soak 6 h in water at 13 °C with lime and air"))
	assert.Contains(t, got, "soak 6 h in 12 l water at 13 °C with lime and air\n")
	assert.Zero(t, unsettled)
}

func TestAirThatIsBlownIsMergedLineByLine(t *testing.T) {
	const base = "process \"p\" {\n  germinate {\n    air at air-on 12 °C when bed above 16 °C\n    air at air-on 14 °C for 10 min every 1 h\n  }\n}\n"
	got, unsettled := merged(t, base, edit(t, base, "above 16 °C", "above 17 °C"), edit(t, base, "for 10 min", "for 15 min"))
	assert.Equal(t, tidy(t, edit(t, base, "above 16 °C", "above 17 °C", "for 10 min", "for 15 min")), got)
	assert.Zero(t, unsettled)
	_, unsettled = merged(t, base, edit(t, base, "above 16 °C", "above 17 °C"), edit(t, base, "above 16 °C", "above 15 °C"))
	assert.Equal(t, 1, unsettled)
}

func TestFiguresLearntOfOneLotOnBothSidesAreOneThing(t *testing.T) {
	for _, word := range []string{"uptake", "husk-water", "chit"} {
		line := func(value, lot string) string { return fmt.Sprintf("\n  %s %s of %q", word, value, lot) }
		base := `house "L" {` + line("1.2", "A") + "\n}\n"
		got, unsettled := merged(t, base, edit(t, base, "\n}", line("1.1", "B")+"\n}"), edit(t, base, "\n}", line("1.3", "B")+"\n}"))
		assert.Contains(t, got, "# both: ours 1.1; theirs 1.3"+line("1.1", "B")+"\n")
		assert.Equal(t, 1, unsettled)
		got, unsettled = merged(t, base, edit(t, base, "1.2", "1.1"), edit(t, base, "\n}", line("1.3", "B")+"\n}"))
		assert.Equal(t, `house "L" {`+line("1.1", "A")+line("1.3", "B")+"\n}\n", got)
		assert.Zero(t, unsettled)
	}
}

func TestTheSameEditOnBothSidesIsOne(t *testing.T) {
	both := edit(t, season, "soak 7 h", "soak 8 h", "    cure", "    dry at air-on 70 °C for 1 h\n    cure", "vessel", "floor \"f\" { area 1 m2 }\nvessel")
	got, unsettled := merged(t, season, both, both)
	assert.Equal(t, tidy(t, both), got)
	assert.Zero(t, unsettled)
}

func TestAFileThatWouldBeTooLargeIsAnError(t *testing.T) {
	long := func(word string) string {
		return "process \"p\" { steep {\n" + strings.Repeat(word+"\n", 6000) + "} }\n"
	}
	_, err := Trees(tree(t, "process \"p\" { steep { } }"), tree(t, long("soak 1 h")), tree(t, long("rest 1 h")))
	assert.ErrorIs(t, err, ErrUnread)
}

// draft is a file under edit: blocks of lines, each with a comment or none.
type draft struct {
	blocks [4][]string
	next   int // number of the next comment
}

var openings = [4]string{"process \"p\" {\nsteep in \"tub\" {\n", "kiln in \"k\" {\n", "expect total time at most 14 days\n", "vessel \"tub\" {\n"}
var closings = [4]string{"}\n", "}\n", "}\n", "}\n"}
var phrases = [4][]string{
	{"soak %d h in water at %d °C", "rest %d h in air at %d °C", "gate moisture at least %d %% allow 1 to %d h", "aerate every %d h for %d min"},
	{"dry at air-on %d °C for %d h", "cure at air-on %d °C for %d h", "gate moisture at most %d %% allow 1 to %d h"},
	{"expect final moisture %d to %d %%", "limits { bed-temperature at most %d °C; turn-gap at most %d h }", "deculm within %d h allow %d h"},
	{"holds %d l", "accept oxygen-gone because \"reason %d\""},
}

func (d draft) text() string {
	var b strings.Builder
	for i, lines := range d.blocks {
		b.WriteString(openings[i] + strings.Join(lines, "") + closings[i])
	}
	return b.String()
}

func (d *draft) line(t *rapid.T, block int, who string) string {
	phrase := rapid.SampledFrom(phrases[block]).Draw(t, "phrase")
	numbers := []any{rapid.IntRange(1, 4).Draw(t, "a"), rapid.IntRange(1, 4).Draw(t, "b")}[:strings.Count(strings.ReplaceAll(phrase, "%%", ""), "%")]
	text := fmt.Sprintf(phrase, numbers...)
	switch rapid.IntRange(0, 5).Draw(t, "comment") {
	case 0:
		text = d.comment(who) + "\n" + text
	case 1:
		text += " " + d.comment(who)
	case 2:
		text = "\n" + text
	}
	return text + "\n"
}

func (d *draft) comment(who string) string {
	d.next++
	return fmt.Sprintf("# %s%d", who, d.next)
}

// edited is the draft after a few edits by somebody.
func (d draft) edited(t *rapid.T, who string) draft {
	out := draft{next: d.next}
	for i := range d.blocks {
		out.blocks[i] = slices.Clone(d.blocks[i])
	}
	for range rapid.IntRange(0, 4).Draw(t, "edits") {
		i := rapid.IntRange(0, 3).Draw(t, "block")
		lines := out.blocks[i]
		at := rapid.IntRange(0, len(lines)).Draw(t, "at")
		switch what := rapid.IntRange(0, 4).Draw(t, "what"); {
		case what == 0 || len(lines) == 0:
			out.blocks[i] = slices.Insert(lines, at, out.line(t, i, who))
		case at == len(lines):
			out.blocks[i] = append(lines, out.comment(who)+"\n")
		case what == 1:
			out.blocks[i] = slices.Delete(lines, at, at+1)
		case what == 2: // a value
			lines[at] = strings.NewReplacer("1", "2", "2", "3", "3", "4", "4", "1").Replace(lines[at])
		case what == 3: // moved
			line := lines[at]
			rest := slices.Delete(lines, at, at+1)
			out.blocks[i] = slices.Insert(rest, rapid.IntRange(0, len(rest)).Draw(t, "to"), line)
		default:
			lines[at] = out.comment(who) + "\n" + lines[at]
		}
	}
	return out
}

func drafts(t *rapid.T) (base, a, b string) {
	var d draft
	for i := range d.blocks {
		for range rapid.IntRange(0, 4).Draw(t, "lines") {
			d.blocks[i] = append(d.blocks[i], d.line(t, i, "base"))
		}
	}
	return d.text(), d.edited(t, "ours").text(), d.edited(t, "theirs").text()
}

func commentsOf(t require.TestingT, text string) map[string]bool {
	out := map[string]bool{}
	tree(t, text).Top.Comments(func(c *syntax.Comment) { out[c.Text] = true })
	return out
}

func TestWhatOneSideLeftAloneIsAsTheOtherHasIt(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base, a, _ := drafts(rt)
		got, unsettled := merged(rt, base, a, base)
		assert.Equal(rt, tidy(rt, a), got)
		assert.Zero(rt, unsettled)
		got, unsettled = merged(rt, base, base, a)
		assert.Equal(rt, tidy(rt, a), got)
		assert.Zero(rt, unsettled)
		got, unsettled = merged(rt, base, a, a)
		assert.Equal(rt, tidy(rt, a), got)
		assert.Zero(rt, unsettled)
	})
}

func TestNoCommentIsLost(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base, a, b := drafts(rt)
		got, _ := merged(rt, base, a, b)
		was, ours, theirs, now := commentsOf(rt, base), commentsOf(rt, a), commentsOf(rt, b), commentsOf(rt, got)
		for c := range ours {
			if !was[c] || theirs[c] {
				assert.True(rt, now[c], "%s\n%s", c, got)
			}
		}
		for c := range theirs {
			if !was[c] {
				assert.True(rt, now[c], "%s\n%s", c, got)
			}
		}
	})
}

// Which side is whose makes no difference, but for the marks and the statement
// below each, which has the value of one of the two.
func TestSidesSwapUpToTheMarks(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base, a, b := drafts(rt)
		one, n := merged(rt, base, a, b)
		other, k := merged(rt, base, b, a)
		assert.Equal(rt, n, k)
		if n == 0 {
			assert.Equal(rt, one, other)
			return
		}
		assert.ElementsMatch(rt, marks(rt, one, false), marks(rt, other, true))
		assert.ElementsMatch(rt, unmarked(rt, one), unmarked(rt, other))
	})
}

// marks lists the marks of a text, with the sides swapped if asked.
func marks(t require.TestingT, text string, swap bool) []string {
	var out []string
	tree(t, text).Top.Comments(func(c *syntax.Comment) {
		rest, ok := strings.CutPrefix(c.Text, read.UnsettledMark)
		if !ok {
			return
		}
		ours, rest, _ := strings.Cut(rest, "; theirs ")
		theirs, before, _ := strings.Cut(rest, "; before ")
		words := strings.NewReplacer("took this out", "out", "took it out", "out", "changed this", "changed", "changed it", "changed")
		ours, theirs = words.Replace(ours), words.Replace(theirs)
		if swap {
			ours, theirs = theirs, ours
		}
		out = append(out, ours+"|"+theirs+"|"+before)
	})
	return out
}

// unmarked lists the heads of the statements above which no mark stands.
func unmarked(t require.TestingT, text string) []string {
	var out []string
	tree(t, text).Top.Walk(func(s *syntax.Statement) {
		if !slices.ContainsFunc(s.Lead, func(c syntax.Comment) bool { return strings.HasPrefix(c.Text, read.UnsettledMark) }) {
			plain := &syntax.Statement{Verb: s.Verb, Terms: s.Terms, Clauses: s.Clauses}
			out = append(out, layout.Statement(plain, ""))
		}
	})
	return out
}

func TestWhereTheSidesDifferInLineEndsThoseOfOursStay(t *testing.T) {
	windows := func(text string) string { return "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n") }
	mine := edit(t, season, "82 °C", "85 °C")
	yours := edit(t, season, "for 4 h", "for 5 h")
	want := tidy(t, edit(t, mine, "for 4 h", "for 5 h"))
	same := func(text string) string { return text }
	for _, base := range []func(string) string{same, windows} {
		for _, theirs := range []func(string) string{same, windows} {
			got, n := merged(t, base(season), mine, theirs(yours))
			assert.Zero(t, n)
			assert.Equal(t, want, got)
			got, n = merged(t, base(season), windows(mine), theirs(yours))
			assert.Zero(t, n)
			assert.Equal(t, windows(want), got)
		}
	}
}

// FuzzMerge merges short texts, for the reason that FuzzParse reads short ones: all
// three are minimised.
func FuzzMerge(f *testing.F) {
	const longest = 160 // bytes of each
	const kiln = "process \"p\" {\n  kiln in \"k\" {\n    gate moisture at most 10 %\n    cure at air-on 82 °C for 4 h  # the fan on\n  }\n}\n"
	f.Add("site \"L\" { air 8 °C }\n", "# c\nsite \"L\" { air 9 °C; air 8 °C } # d\n", "site \"L\" { }\n")
	f.Add("steep { soak 7 h; rest 1 h }", "steep\n{ rest 1 h; soak 7 h } # x", "steep # y\n{ soak 7 h with x because y }")
	f.Add(kiln, edit(f, kiln, "82 °C", "84 °C"), edit(f, kiln, "10 %", "12 %"))
	f.Fuzz(func(t *testing.T, base, ours, theirs string) {
		var trees [3]*syntax.Tree
		for i, text := range []string{base, ours, theirs} {
			got, found := syntax.Parse(source.New("x.malt", []byte(text)))
			if worst, any := finding.Worst(found); any && worst >= finding.Fault || len(text) > longest {
				return
			}
			trees[i] = got
		}
		if got, err := Trees(trees[0], trees[1], trees[2]); err == nil {
			require.Equal(t, tidy(t, string(got.Text)), string(got.Text))
		}
		got, err := Trees(trees[0], trees[1], trees[0])
		require.NoError(t, err)
		require.Equal(t, string(layout.Write(trees[1])), string(got.Text))
	})
}

func TestWhatBothSidesKeepOfALotAndABatchMerges(t *testing.T) {
	const base = "grain \"A\" {\n  species   barley\n  delivered 2 t on 2026-02-01\n}\n\nbatch \"1\" of \"p\" {\n  began 2026-03-06 07:00\n}\n"
	got, unsettled := merged(t, base,
		edit(t, base, "2026-02-01\n", "2026-02-01\n  delivered 1 t on 2026-03-01\n", "07:00\n", "07:00\n  remark \"late\" at 2026-03-08 08:00 by \"AK\"\n"),
		edit(t, base, "species   barley\n", "species   barley\n  store     in \"silo 2\"\n", "07:00\n", "07:00\n  remark \"early\" at 2026-03-07 08:00\n"))
	assert.Zero(t, unsettled)
	for _, line := range []string{`delivered 2 t on 2026-02-01`, `delivered 1 t on 2026-03-01`, `store     in "silo 2"`} {
		assert.Contains(t, got, line)
	}
	assert.Less(t, strings.Index(got, "early"), strings.Index(got, "late"))
}
