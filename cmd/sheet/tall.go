package sheet

// FieldWide is how wide one of two columns of the head is, and LabelWide its label.
func (s Size) FieldWide() float64 { return (s.Body() - Gap) / 2 }

// LabelWide is how wide the label of a field is.
const LabelWide = 27.0

// below is how much lower a label in small print stands, on the line of its text.
const below = BodyLine - FineLine

// Tall is that of rows with two fields each.
func (b Head) Tall(s Size) (tall float64) {
	for _, row := range b.Rows() {
		most := BodyLine
		for _, f := range row {
			wide := s.FieldWide()
			if f.Wide {
				wide = s.Body()
			}
			most = max(most, tallOf(f.Text, wide-LabelWide, false), tallOf(f.Label, LabelWide-1, true)+below, BodyLine)
			if f.Text == "" {
				most = max(most, RowTall)
			}
		}
		tall += most + 1
	}
	return tall
}

// Rows are the fields two and two, what is wide alone.
func (b Head) Rows() (rows [][]Field) {
	open := false
	for _, f := range b.Fields {
		switch {
		case f.Wide:
			rows, open = append(rows, []Field{f}), false
		case open:
			rows[len(rows)-1], open = append(rows[len(rows)-1], f), false
		default:
			rows, open = append(rows, []Field{f}), true
		}
	}
	return rows
}

// Tall is that of a line or more.
func (b Heading) Tall(s Size) float64 {
	return HeadLine * float64(Lines(b.Text, s.Body(), HeadPoints))
}

// Tall is that of its lines.
func (b Words) Tall(s Size) float64 { return tallOf(b.Text, s.Body(), b.Small) }

// SumWide is how wide what a sum is of is, and ResultWide its result.
const (
	SumWide    = 34.0
	ResultWide = 36.0
)

// Tall is that of a row for each.
func (b Sums) Tall(s Size) (tall float64) {
	for _, r := range b.Rows {
		tall += max(tallOf(r.Label, SumWide, false), tallOf(r.Working, s.Body()-SumWide-ResultWide, false), tallOf(r.Result, ResultWide, false)) + 1
	}
	return tall
}

// Tall is that of what to do, or of the boxes beside it.
func (b Visit) Tall(s Size) float64 {
	text, wide := 0.0, s.DoWide(Across(b.Boxes))
	for _, do := range b.Do {
		text += tallOf(do, wide, false)
	}
	for _, e := range b.Expect {
		text += tallOf(e, wide, true)
	}
	when := 2*BodyLine + FineLine
	if b.When.Clock == "" {
		when = RowTall + FineLine
	}
	if b.When.Mark != "" && b.When.Clock == "" { // else it stands beside the clock
		when += FineLine
	}
	return max(text, when, besideTall(b.Boxes)) + Rule
}

// ReadWide is how wide the column of the clock is in rows of readings.
const ReadWide = 44.0

// Tall is that of a row for each.
func (b Readings) Tall(s Size) (tall float64) {
	for _, r := range b.Rows {
		tall += tallOf(r.Line, s.Body()-ReadWide, false) + 1
	}
	return tall
}

// Tall is that of a line of boxes for each.
func (b SpareRows) Tall(Size) float64 { return float64(b.Count) * (BoxLabel + BoxTall + Rule) }

// Tall is that of the drawings over their names.
func (b Drawing) Tall(s Size) float64 { return tallOf(b.Say, s.Body(), true) + LookTall + BodyLine + 1 }

// Tall is that of a line of boxes for each class.
func (b Tally) Tall(s Size) float64 {
	return BodyLine + tallOf(b.Say, s.Body(), true) + float64(len(b.Classes))*(BoxTall+1) + tallOf(b.Line, s.Body(), false) + 1
}

// Tall is that of a line of boxes for each row.
func (b Ticks) Tall(s Size) float64 {
	return BodyLine + tallOf(b.Say, s.Body(), true) + float64(b.Rows)*(BoxTall+2)
}

// Tall is that of what it asks, or of the boxes beside it, as of a visit.
func (b Gate) Tall(s Size) float64 {
	wide := s.DoWide(Across(b.Boxes)) + WhenWide + Gap
	text := tallOf(b.Asks, wide, false)
	for _, l := range b.Looks {
		text += tallOf(l, wide, true)
	}
	return max(text, besideTall(b.Boxes)) + Rule
}

// Tall is that of the steps, of a line of boxes, and of the sum.
func (b SampleSum) Tall(s Size) float64 {
	tall := BodyLine + 1 + boxesTall((len(b.Boxes)+3)/4) + tallOf(b.Sum, s.Body(), false) + tallOf(b.Line, s.Body(), false)
	for _, step := range b.Steps {
		tall += tallOf(step, s.Body()-Gap, false)
	}
	return tall
}

// Tall is that of the lines.
func (b Remarks) Tall(Size) float64 { return FineLine + float64(b.Lines)*RowTall }

// Tall is that of one line to write on.
func (b Initials) Tall(Size) float64 { return RowTall }

// Indent is how far lines of a list stand in, behind their mark.
const Indent = 5.0

// Tall is that of the lines.
func (b Cautions) Tall(s Size) float64 {
	tall := BodyLine + 1
	for _, l := range b.Lines {
		tall += tallOf(l, s.Body()-Indent, false)
	}
	return tall
}

// WrongWide is how wide what goes wrong is, beside what to do then.
const WrongWide = 40.0

// Tall is that of a row for each.
func (b GoesWrong) Tall(s Size) float64 {
	tall := BodyLine + 1 + tallOf(b.Small, s.Body(), true)
	for _, r := range b.Rows {
		tall += max(tallOf(r.What, WrongWide, false), tallOf(r.Do, s.Body()-WrongWide-Gap, false)) + 1
	}
	return tall
}

// Tall is that of the line in letters of one width, which are no narrower than others.
func (b Code) Tall(s Size) float64 {
	const mono = 0.61 / letter
	return tallOf(b.Say, s.Body(), true) + BodyLine*float64(Lines(b.Line, s.Body()/mono, BodyPoints)) + 2
}
