// Package samples holds findings about lines that are hard to show, for the tests of
// whatever writes findings.
package samples

import (
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// About makes a finding about the words between the brackets ⟦ ⟧ of a text.
func About(name, text string, f finding.Finding) finding.Finding {
	start := strings.Index(text, "⟦")
	text = strings.Replace(text, "⟦", "", 1)
	end := strings.Index(text, "⟧")
	text = strings.Replace(text, "⟧", "", 1)
	f.Place = source.Place{File: source.New(name, []byte(text)), Span: source.Span{Start: start, End: end}}
	return f
}

var long = strings.Repeat("the tub by the north window ", 12)

// All are findings about lines that are hard to show.
func All() []finding.Finding {
	fault := finding.Finding{Severity: finding.Fault, Rule: "a-rule", Message: "the malt is at 62.4 °C while it still holds 31 % moisture",
		Why:  "above 50 °C the enzymes of wet malt are lost; 62.4 °C at 31 % leaves about a third of them, as the forecast of this batch has it",
		Hint: "hold 50 °C until the moisture is at most 12 %"}
	with := func(s finding.Severity, message string) finding.Finding {
		f := fault
		f.Severity, f.Message = s, message
		return f
	}
	first := About("loft.malt", "kiln {\n  cure at ⟦air-on 82 °C⟧ for 4 h # hot\n}", fault)
	related := About("loft.malt", "kiln {\n  ⟦dry at air-on 50 °C⟧ for 4 h\n}", with(finding.Danger, "people can be hurt"))
	related.Related = []finding.Related{{Place: first.Place, Message: "it was this"}, {Message: "nowhere"}}
	first.Fixes = []finding.Edit{{Place: first.Place, New: "air-on 50 °C"}}
	for _, says := range []string{"dry at air-on 50 °C for 4 h", "dry {at} malt 50 °C"} {
		related.Offers = append(related.Offers, finding.Offer{Says: says, Edits: []finding.Edit{{Place: related.Place, New: says}, {New: "nowhere"}}})
	}
	return []finding.Finding{
		first,
		related,
		About("tabs.malt", "\t\tsoak\t⟦7\th⟧\tin water", with(finding.Caution, "a line with tabs")),
		About("wide.malt", `vessel "大麦の桶" { ⟦大きい⟧ 25 l }`, with(finding.Note, "wide characters")),
		About("emoji.malt", "soak 7 h # 👩‍🌾 ⟦🌾🌾⟧ é", with(finding.Note, "an emoji of several parts")),
		About("long.malt", "# "+long+"⟦blue tub⟧ "+long, with(finding.Note, "words in the middle of a long line")),
		About("start.malt", "⟦soak⟧ # "+long, with(finding.Note, "words at the start of a long line")),
		About("end.malt", "# "+long+"⟦soak⟧", with(finding.Note, "words at the end of a long line")),
		About("all.malt", "⟦# "+long+"⟧", with(finding.Note, "a long line of nothing else")),
		About("hidden.malt", "soak \x1b[31m⟦7\u202e h⟧\x00\u2028\ufeff\xb0", with(finding.Fault, "not \x1b[2Jraw\u202e")),
		About("several.malt", "⟦steep {\n  soak 7 h\n}⟧", with(finding.Note, "several lines")),
		About("empty.malt", "soak⟦⟧", with(finding.Note, "no words at all")),
		{Severity: finding.Caution, Rule: "no-place", Message: "nothing in the file says how much grain there is"},
	}
}
