package offer

import (
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// texts of whole statements, in the canonical layout; of a statement that has none its own example is
// the text. The names in them stand for those of the house. A test checks them in a house.
var wholeTexts = map[vocabulary.Key]string{
	{In: vocabulary.Process, Word: vocabulary.VerbSteep}:     steepText,
	{In: vocabulary.Process, Word: vocabulary.VerbGerminate}: germinateText,
	{In: vocabulary.Process, Word: vocabulary.VerbWither}:    witherText,
	{In: vocabulary.Process, Word: vocabulary.VerbKiln}:      kilnText,
	{In: vocabulary.File, Word: "process"}: `process "Our pale" {
  make pale malt
  from 6 kg of "Far field 2026"
  at   "Loft, spring"

` + deeper(steepText) + "\n" + deeper(germinateText) + "\n" + deeper(witherText) + "\n" + deeper(kilnText) + `
  deculm within 12 h
  store  in "lidded drum" for at least 3 weeks

  expect final moisture 3.5 to 4.8 %
}`,

	{In: vocabulary.File, Word: "batch"}: `batch "26-01" of "Loft pale" {
  began 2026-03-06 07:00
}`,
}

const steepText = `steep in "blue tub" to moisture 43 to 45 % {
  repeat at most 3 times until moisture at least 43 % {
    soak 7 h in water at 13 °C
    rest 9 h in air at 14 °C
  }
}`

const germinateText = `germinate on "growing tray" {
  hold  bed at 14 to 17 °C
  turn  every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 7 days
}`

const witherText = `wither on "larch floor" {
  air   at 18 to 22 °C
  until moisture at most 35 %
  allow 12 to 36 h
}`

const kilnText = `kiln in "tray kiln" {
  dry  at air-on 50 °C until moisture at most 25 % allow 6 to 14 h
  dry  from air-on 55 to 65 °C over 4 h until moisture at most 10 %
  gate moisture at most 10 %
  cure at air-on 82 °C for 5 h
  gate moisture at most 4.5 %
  cool to malt 30 °C
}`

// deeper is a text one step further in, with a line end.
func deeper(text string) string { return "  " + strings.ReplaceAll(text, "\n", "\n  ") + "\n" }

// Wholes gives the whole statements of a block as they are offered, by their words.
func Wholes(in vocabulary.Block, k Known) map[string]string {
	out := map[string]string{}
	for _, row := range rowsOf(in) {
		if text := wholeText(in, row); text != "" {
			out[row.Word], _ = k.fill(in, text)
		}
	}
	return out
}

// wholeText is that of a row, "" where it has none: what was learnt of a house no one writes, and a
// threshold is moved for a reason of one's own.
func wholeText(in vocabulary.Block, row vocabulary.Row) string {
	text, ok := wholeTexts[vocabulary.Key{In: in, Word: row.Word}]
	switch {
	case ok:
		return text
	case row.Opens == vocabulary.None || row.Opens == vocabulary.House || row.Opens == vocabulary.Limits:
		return ""
	}
	return row.Example
}

// wholes lists the statements that open a block with all that stands in it, and the readings of a record.
func (l *list) wholes() {
	if len(l.after) > 0 || strings.TrimSpace(l.file.Text(span(lineAt(l.file, l.start).Start, l.start))) != "" || l.opensBehind() {
		return
	}
	there := l.there()
	for _, row := range rowsOf(l.in) {
		text := wholeText(l.in, row)
		if text == "" || row.Once && there[row.Word] {
			continue
		}
		l.class = classOf(&row, l.in, there[row.Word], l.rankAbove())*10 + wholesBehind
		l.whole(row.Word, "whole, with values to change", text, filter(row.Word, vocabulary.WrittenFor(l.in, row.Word)))
	}
	if l.in == vocabulary.Batch {
		l.class = again*10 + wholesBehind
		l.readings()
	}
}

// whole adds a whole statement, filled in for the house.
func (l *list) whole(word, detail, text, filter string) {
	text, stops := l.known.fill(l.in, text)
	text, stops = further(text, stops, l.margin())
	l.add(Item{Label: word + " …", Kind: Whole, Detail: detail, Doc: text, Edit: Edit{l.word, text}, Stops: stops, Filter: filter})
}

// readings lists what is written down at one time, as a whole.
func (l *list) readings() {
	at := l.lastTime()
	if l.known.Now.After(at) {
		at = l.known.Now
	}
	if at.IsZero() {
		return
	}
	when := at.Format("2006-01-02 15:04")
	for _, r := range []struct{ label, text string }{
		{"readings of a soak", "read    water 13 °C at " + when + "\nweighed 7.48 kg after soak 1 at " + when},
		{"readings of the piece", "read    bed 16 °C at " + when + "\nturned  at " + when + "\ncounted acrospire 2 6 22 55 13 2 at " + when + "\nfelt    rub gritty at " + when},
		{"readings of the kiln", "read    air-on 50 °C at " + when + "\nread    air-off 30 °C at " + when},
	} {
		l.whole(r.label, "several lines, with values to change", r.text, r.label)
	}
}

// further is a text each line of which but the first begins with a margin.
func further(text string, stops []source.Span, margin string) (string, []source.Span) {
	for i, s := range stops {
		n := strings.Count(text[:s.Start], "\n") * len(margin)
		stops[i] = source.Span{Start: s.Start + n, End: s.End + n}
	}
	return strings.ReplaceAll(text, "\n", "\n"+margin), stops
}
