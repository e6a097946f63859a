package words

import (
	"strings"

	"maltwright/cmd/answer/effect"
	"maltwright/lang/contrast"
	"maltwright/lang/vocabulary"
)

// ChangeRow is a row of the table of changes.
type ChangeRow struct {
	Group    string // the statements around it
	What     string // the statement and what became of it; "" where it goes on
	Old, New string
	OldLine  int // 0 where it does not stand there
	NewLine  int
}

// ChangeRows tells the changes, a part of a statement a row.
func ChangeRows(r effect.Result) (rows []ChangeRow) {
	for _, c := range r.Changes {
		rows = append(rows, rowsOf(r, c)...)
	}
	return rows
}

func rowsOf(r effect.Result, c effect.Change) (rows []ChangeRow) {
	row := ChangeRow{Group: group(r, c), What: verb(c), OldLine: lineOf(c.OldPlace), NewLine: lineOf(c.NewPlace)}
	if c.Kind != contrast.Changed.String() {
		row.What += ", " + c.Kind
		row.Old, row.New = withoutVerb(c.Old), withoutVerb(c.New)
		return []ChangeRow{row}
	}
	for _, p := range c.Parts {
		one := row
		one.Old, one.New = partText(p.What, p.Old, p.New), partText(p.What, p.New, p.Old)
		rows = append(rows, one)
		row.OldLine, row.NewLine, row.What = 0, 0, ""
	}
	return rows
}

// partText is a side of a part; one that does not stand there says so.
func partText(what, value, other string) string {
	switch {
	case value == "" && what == vocabulary.ClauseBy && other == vocabulary.ByMachine:
		return "by hand"
	case value == "" && what == vocabulary.ClauseBy:
		return "by not said"
	case value == "":
		return strings.TrimSpace("no " + what)
	}
	return strings.TrimSpace(what + " " + value)
}

func verb(c effect.Change) string {
	text := c.New
	if text == "" {
		text = c.Old
	}
	word, _, _ := strings.Cut(text, " ")
	if c.Of != "" {
		word += " of " + c.Of
	}
	return word
}

func withoutVerb(text string) string {
	if _, rest, ok := strings.Cut(text, " "); ok {
		return rest
	}
	return text
}

// group says where a change is: in which blocks, and in which file if that is not the one
// compared.
func group(r effect.Result, c effect.Change) string {
	text := strings.Join(c.Path, ", ")
	place, main := c.NewPlace, r.NewFile
	if place == nil {
		place, main = c.OldPlace, r.OldFile
	}
	if text == "" {
		text = "the house"
	}
	if place != nil && place.File != main {
		text += " (" + place.File + ")"
	}
	return text
}

func lineOf(p *effect.Place) int {
	if p == nil {
		return 0
	}
	return p.Line
}
