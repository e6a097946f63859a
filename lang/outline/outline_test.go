package outline

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

func parsed(text string) *syntax.Tree {
	tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	return tree
}

// drawn writes symbols one a line, indented by what they stand in.
func drawn(t *syntax.Tree, list []Symbol, indent string) string {
	out := ""
	for _, s := range list {
		out += fmt.Sprintf("%s%d %s | %s | %s\n", indent, s.Kind, s.Name, s.Detail, t.File.Text(s.Word)) + drawn(t, s.Inside, indent+"  ")
	}
	return out
}

func TestSymbolsOfAHouseAProcessAndARecord(t *testing.T) {
	tree := parsed(house + "limits { bed-temperature at most 22 °C }\n")
	assert.Equal(t, `0 Far field | species barley; moisture 12 % | "Far field"
0 tub | holds 25 l; weighs 900 g | "tub"
0 floor | area 1 m2 | "floor"
0 kiln | area 0.5 m2; airflow 60 m3/h; heater 1.5 kW | "kiln"
0 kitchen | division 1 g | "kitchen"
0 Loft | uptake 1.03 of "Far field" | "Loft"
1 limits | bed-temperature at most 22 °C | limits
`, drawn(tree, Symbols(tree), ""))

	tree = parsed(strings.Replace(process, "soak 7 h in water at 13 °C", "repeat 2 times { soak 7 h in water at 13 °C; rest 9 h in air }\n gate chit at least 80 %", 1))
	assert.Equal(t, `2 Pale | make pale malt; from 6 kg of "Far field" | "Pale"
  3 steep | in "tub" and "tub" | steep
    4 repeat | 2 times | repeat
      4 soak | 7 h in water at 13 °C | soak
      4 rest | 9 h in air | rest
    4 gate | chit at least 80 % | gate
  3 germinate | on "floor" for 5 days | germinate
    4 hold | bed at 14 to 17 °C | hold
  3 kiln | in "kiln" | kiln
    4 dry | at air-on 50 °C for 12 h | dry
`, drawn(tree, Symbols(tree), ""))

	tree = parsed("batch \"26-01\" of \"Pale\" {\n tare 8 g\n began 2026-03-06 07:00\n read water 13 °C at 22:00\n\n weighed 8 kg at 06:00 after soak 1 # next day\n felt rub chalky at 2026-03-09 08:00\n}\n")
	assert.Equal(t, `5 26-01 | of "Pale", began 2026-03-06 07:00 | "26-01"
  6 2026-03-06 | 2 lines | began
    7 began | 2026-03-06 07:00 | began
    7 read | water 13 °C at 22:00 | read
  6 2026-03-07 | 1 line | weighed
    7 weighed | 8 kg at 06:00 after soak 1 | weighed
  6 2026-03-09 | 1 line | felt
    7 felt | rub chalky at 2026-03-09 08:00 | felt
`, drawn(tree, Symbols(tree), ""))
}

func TestWhatStandsIsSeenWhereAStatementDoesNotRead(t *testing.T) {
	tree := parsed("vessel ) \"a\" { holds 25 l }\nvessel \"b\" { holds ( 25 l }\nprocess \"P\" {\n steep in \"b\" {\n soak ) 7 h\n rest 9 h in air\n }\n}\n")
	assert.Equal(t, `0 vessel | holds 25 l | vessel
0 b |  | "b"
2 P |  | "P"
  3 steep | in "b" | steep
    4 soak |  | soak
    4 rest | 9 h in air | rest
`, drawn(tree, Symbols(tree), ""))
	assert.Len(t, Names(tree), 3)
}

func TestALongDetailIsCutAtAWord(t *testing.T) {
	got := short(strings.Repeat("twelve 12 ", 9))
	assert.LessOrEqual(t, utf8.RuneCountInString(got), mostDetail+1)
	assert.True(t, strings.HasSuffix(got, " …"), got)
	assert.Equal(t, "as it is", short("as it is"))
}

func TestBlocksRunsOfCommentsAndDaysFold(t *testing.T) {
	for _, c := range []struct {
		what, text string
		want       []Fold
	}{
		{"a block to the line above its brace", "process \"P\" {\n  steep in \"a\" {\n    soak 7 h\n  }\n}\n", []Fold{{1, 4, BlockFold}, {2, 3, BlockFold}}},
		{"a block on one line", "vessel \"a\" { holds 9 l }\n", nil},
		{"a brace behind the last statement", "vessel \"a\" {\n holds 9 l }\n", []Fold{{1, 2, BlockFold}}},
		{"an empty block", "vessel \"a\" {\n}\n", nil},
		{"a block that is not closed", "process \"P\" {\n  make pale malt\n  at \"x\"\n", []Fold{{1, 3, BlockFold}}},
		{"comments", "# a\n# b\n# c\n\n# d\nvessel \"a\" { holds 9 l } # e\n# f\n# g\n", []Fold{{1, 3, CommentFold}, {7, 8, CommentFold}}},
		{"days", "batch \"b\" of \"P\" {\n began 2026-03-06 07:00\n turned at 08:00\n turned at 2026-03-07 06:00\n turned at 07:00\n turned at 08:00\n turned at 2026-03-08 06:00\n}\n",
			[]Fold{{1, 7, BlockFold}, {2, 3, DayFold}, {4, 6, DayFold}}},
		{"Windows lines", "process \"P\" {\r\n  make pale malt\r\n  at \"x\"\r\n}\r\n", []Fold{{1, 3, BlockFold}}},
	} {
		assert.Equal(t, c.want, Folds(parsed(c.text)), c.what)
	}
}

func TestLinksAreTheFilesThatAreUsed(t *testing.T) {
	tree := parsed("use \"loft.malt\"\nuse “sub/a.malt”\nuse ) \"x\"\nuse \"\"\nstore in \"b.malt\"\n")
	links := Links(tree)
	require.Len(t, links, 2)
	assert.Equal(t, "loft.malt", links[0].Place.Text())
	assert.Equal(t, "sub/a.malt", links[1].Place.Text())
	for _, c := range []struct {
		file, target, to string
		ok               bool
	}{
		{"a.malt", "b.malt", "b.malt", true}, {"s/a.malt", "b.malt", "s/b.malt", true}, {"s/a.malt", "../b.malt", "b.malt", true},
		{"a.malt", "../b.malt", "../b.malt", false}, {"a.malt", "/b.malt", "b.malt", false}, {"a.malt", `s\b.malt`, `s\b.malt`, false},
	} {
		to, ok := Link{Target: c.target}.From(c.file)
		assert.Equal(t, c.to, to)
		assert.Equal(t, c.ok, ok, c.target)
	}
}

func TestEachWordHasItsKind(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"use \"a\" # b", "s:use t:\"a\" #:# b"},
		{"vessel \"a\" { holds 25 l; weighs 990 g }", `B:vessel N+vessel:"a" s:holds 1:25 u:l s:weighs 1:990 u:g`},
		{"process \"P\" { make pale malt\n steep in \"a\" and \"b\" to moisture 43 to 45 % { } }", `B:process N+process:"P" s:make w:pale w:malt B:steep c:in N-vessel:"a" b:and N-vessel:"b" c:to w:moisture 1:43 b:to 1:45 u:%`},
		{"process \"P\" { kiln in \"k\" { dry at air-on 50 °C until malt at least 3/4 and break allow 6 h 30 min } }", `B:process N+process:"P" B:kiln c:in N-kiln:"k" s:dry c:at m:air-on 1:50 u:°C c:until m:malt b:at least 1:3/4 b:and m:break c:allow 1:6 u:h 1:30 u:min`},
		{"batch \"b\" of \"P\" {\n began 2026-03-06 07:00\n weighed 8 kg in \"t\" at 14:00 after soak 1 by \"AK\"\n}", `B:batch N+batch:"b" c:of N-process:"P" s:began d:2026-03-06 d:07:00 s:weighed 1:8 u:kg c:in N-vessel:"t" c:at d:14:00 c:after w:soak 1:1 c:by t:"AK"`},
		{"site \"s\" { awake 06:30 to 22:30 }", `B:site N+site:"s" s:awake d:06:30 b:to d:22:30`},
		{"soak ) 7 h in water \"x\"", `s:soak 1:7 u:h c:in m:water t:"x"`},
		{"limits { bed-temperature at most 22 °C }", "B:limits s:bed-temperature b:at most 1:22 u:°C"},
	} {
		assert.Equal(t, c.want, kinds(parsed(c.text)), c.text)
	}
}

func kinds(tree *syntax.Tree) string {
	signs := [...]string{"?", "s", "B", "c", "b", "1", "u", "d", "m", "w", "N", "t", "#"}
	var list []string
	for _, w := range Kinds(tree) {
		sign := signs[w.Kind]
		if w.Kind == NameWord && w.Defines {
			sign += "+"
		} else if w.Kind == NameWord {
			sign += "-"
		}
		list = append(list, sign+string(w.Of)+":"+tree.File.Text(w.Span))
	}
	return strings.Join(list, " ")
}

func TestWhatLiesAroundAPlaceGrows(t *testing.T) {
	tree := parsed("process \"P Q\" {\n  dry at air-on 50 °C until moisture at most 25 %\n}\n")
	around := func(words string) (list []string) {
		for _, s := range Around(tree, strings.Index(tree.File.Text(tree.Top.Span), words)) {
			list = append(list, strings.TrimSpace(tree.File.Text(s)))
		}
		return list
	}
	all := strings.TrimSpace(tree.File.Text(tree.Top.Span))
	line := "dry at air-on 50 °C until moisture at most 25 %"
	assert.Equal(t, []string{"25", "25 %", "at most 25 %", "until moisture at most 25 %", line, line, "{\n  " + line + "\n}", all, all}, around("25"))
	assert.Equal(t, []string{"P Q", `"P Q"`, `process "P Q"`, all, all}, around("P Q"))
}

// A statement that takes or gives a name is seen without a word about it in this package.
func TestEveryRowOfANameIsSeen(t *testing.T) {
	defined := map[vocabulary.Block]bool{}
	for _, row := range vocabulary.Rows() {
		if row.Opens != vocabulary.None && len(row.Slots) > 0 && row.Slots[0].Kind == vocabulary.Text {
			names := Names(parsed(row.Example))
			require.NotEmpty(t, names, row.Example)
			assert.True(t, names[0].Defines, row.Example)
			assert.Equal(t, row.Opens, names[0].Kind, row.Example)
			defined[row.Opens] = true
			assert.NotEmpty(t, Symbols(parsed(row.Example)), row.Example)
		}
	}
	for _, row := range vocabulary.Rows() {
		for clause, slots := range slotsOf(row) {
			for _, s := range slots {
				if s.Kind != vocabulary.Name {
					continue
				}
				for _, kind := range append([]vocabulary.Block{s.Of}, s.Or...) {
					assert.True(t, defined[kind], "%s %s: nothing defines %s", row.Word, clause, kind)
				}
				for _, in := range row.In {
					text := written(in, row.Word+" "+clause+` "Name of it"`)
					seen := false
					for _, n := range Names(parsed(text)) {
						seen = seen || n.Text == "Name of it" && n.May(s.Of) && (!n.Defines || row.Opens != vocabulary.None)
					}
					assert.True(t, seen, text)
				}
			}
		}
	}
}

func slotsOf(row vocabulary.Row) map[string][]vocabulary.Slot {
	all := map[string][]vocabulary.Slot{"": row.Slots}
	for _, c := range row.Clauses {
		all[c.Word] = c.Slots
	}
	return all
}

// written puts a statement into a block of a kind.
func written(in vocabulary.Block, statement string) string {
	if in == vocabulary.File {
		return statement
	}
	for _, row := range vocabulary.Rows() {
		if row.Opens == in && row.In[0] != in {
			return written(row.In[0], row.Word+" {\n"+statement+"\n}")
		}
	}
	return statement
}

// Of any text everything stands within it and in order, and nothing panics.
func TestOfASpoiltTextAllStandsWithinIt(t *testing.T) {
	all := below(t, "../../examples")
	i := 0
	for _, p := range all.Paths() {
		for seed := range spoil.Seeds(1, 25) {
			text := spoil.Text(spoil.Random(seed*1000+uint64(i)), all[p], append(spoil.Words(all[p]), "{", "}", "\"", "°", "🌾", "\xb0", "use", "\n"))
			i++
			checkAll(t, text)
		}
	}
}

func checkAll(t *testing.T, text string) {
	t.Helper()
	tree := parsed(text)
	f := tree.File
	inside := func(s source.Span) bool { return 0 <= s.Start && s.Start <= s.End && s.End <= len(text) }
	end := 0
	for _, w := range Kinds(tree) {
		require.True(t, inside(w.Span) && !w.Empty() && w.Start >= end, "%v of\n%s", w, text)
		require.NotContains(t, f.Text(w.Span), "\n", text)
		end = w.End
	}
	var symbols func([]Symbol, source.Span)
	symbols = func(list []Symbol, in source.Span) {
		for _, s := range list {
			require.True(t, inside(s.Whole) && in.Start <= s.Whole.Start && s.Whole.End <= in.End, "%v of\n%s", s, text)
			require.True(t, s.Whole.Start <= s.Word.Start && s.Word.End <= s.Whole.End && s.Name != "", "%v of\n%s", s, text)
			symbols(s.Inside, s.Whole)
		}
	}
	symbols(Symbols(tree), source.Span{End: len(text)})
	for _, fold := range Folds(tree) {
		require.True(t, 1 <= fold.First && fold.First < fold.Last && fold.Last <= f.Lines(), "%v of\n%s", fold, text)
	}
	for _, n := range Names(tree) {
		require.True(t, inside(n.Inner) && n.Place.Start < n.Inner.Start && n.Inner.End <= n.Place.End, "%v of\n%s", n, text)
	}
	for at := 0; at <= len(text); at += 37 {
		last := source.Span{Start: at, End: at}
		for _, s := range Around(tree, at) {
			require.True(t, s.Start <= last.Start && last.End <= s.End && inside(s), "%v around %d of\n%s", s, at, text)
			last = s
		}
	}
	folder := In(texts{"x.malt": text})
	for _, n := range Names(tree) {
		_, err := folder.Rename("x.malt", n.Place.Start, "another", nil)
		if err != nil {
			require.IsType(t, Refusal(""), err)
		}
	}
}
