package layout

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"maltwright/lang/syntax"
)

// Dates and times of day written anyhow are laid out to what means the same, and that again to
// itself; what does not read is not laid out.
func TestTimesWrittenAnyhowAreLaidOut(t *testing.T) {
	parts := []string{"began", "turned at", "awake", "turn at", "germination 97 % on", "read bed 17 °C", "weighed 7 kg",
		" ", " ", " ", "at", "on", "to", "until", "and", "-", "27", "3", "Jan", "may", "2026", "2026-01-27", "27.01.2026", "03/04/2026", "3.4.26", "20260127",
		"7", "07:15", "7.15", "7h15", "0715", "am", "pm", "noon", "midnight", "Uhr", "o'clock", "Z", "th", "h", "°C", "by \"AK\"", "after soak 1"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(parts), 1, 9).Draw(t, "parts"), " ")
		if tree, ok := parse([]byte(text + "\n")); ok && !twoTimes(tree) {
			laid := string(Write(tree))
			again, ok := parse([]byte(laid))
			if !ok {
				t.Fatalf("%q is laid out as %q, which does not read", text, laid)
			}
			if got := string(Write(again)); got != laid {
				t.Fatalf("%q: %q is laid out again as %q", text, laid, got)
			}
			if a, b := string(Plain(tree)), string(Plain(again)); a != b {
				t.Fatalf("%q means %q, and laid out %q", text, a, b)
			}
		}
	})
}

// twoTimes tells whether two times stand side by side, which no statement takes.
func twoTimes(tree *syntax.Tree) bool {
	two := false
	tree.Top.Walk(func(s *syntax.Statement) {
		for _, terms := range append([][]syntax.Term{s.Terms}, clauseTerms(s)...) {
			for i := 1; i < len(terms); i++ {
				_, a := terms[i-1].(syntax.Moment)
				_, b := terms[i].(syntax.Moment)
				two = two || a && b
			}
		}
	})
	return two
}

func clauseTerms(s *syntax.Statement) (list [][]syntax.Term) {
	for _, c := range s.Clauses {
		list = append(list, c.Terms)
	}
	return list
}
