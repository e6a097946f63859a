package sheet

import (
	"fmt"
	"unicode"
	"unicode/utf8"

	"maltwright/check/profile"
	"maltwright/check/tell"
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/model"
)

// dangers is the last page: what can hurt somebody, what to do when something goes wrong, and what to type.
func (m *maker) dangers() section {
	var lines []string
	for _, c := range outlook.CautionsOf(m.p) {
		lines = append(lines, m.h.Say(c))
	}
	usual, hot := profile.Of(m.p), ""
	if model.First[*model.Germination](m.p) != nil {
		hot = fmt.Sprintf(" Above %s the grain grows unevenly and goes mouldy, above %s the piece is lost.", m.h.Shown(answer.Celsius(usual.GrowWarm())), m.h.Shown(answer.Celsius(usual.GrowsHot)))
	}
	s := section{of: "dangers", bare: true, first: []Block{Cautions{Title: "Take care", Lines: lines}, goesWrong(hot)}}
	s.first = append(s.first, m.toType()...)
	return s
}

// goesWrong is what to do when something goes wrong; hot says what a bed that is too warm comes to.
func goesWrong(hot string) Block {
	of := func(what string, kind tell.AlarmKind) Wrong {
		a := tell.AlarmOf(kind)
		return Wrong{what, capital(a.Do) + ". " + capital(a.Means) + "."}
	}
	return GoesWrong{Title: "When it goes wrong", Small: "Common practice. Local codes and licensed practice come before anything said here.", Rows: []Wrong{
		of("gas alarm, headache, dizzy", tell.AlarmGas),
		of("smoke, fire", tell.AlarmSmoke),
		of("sour or slimy", tell.AlarmSour),
		of("mould", tell.AlarmMould),
		of("black horns: ergot", tell.AlarmErgot),
		{"bed too warm", "Turn it now, spread it thinner, cool it, and read it again within the hour." + hot},
		{"power cut", "Electric kiln or oven: switch it off, so that it does not come on again by itself; then open its door or vents, and spread damp malt. A kiln with a fire: shut it down as its maker says, and air the room. " +
			"A growing bed whose fan stands still: air the room, open the bed, turn it by hand. A steep that a pump airs: drain it, and turn the grain in air. No generator, grill or open fire indoors. " +
			"When power is back, look, smell and weigh before you go on, and note how long it lasted."},
	}}
}

func capital(text string) string {
	if text == "" {
		return text
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

const sayBegin = "Begin the record of the batch, so that its readings have a place; it answers with the line by which they are noted:"

// toType is how the batch gets into the computer.
func (m *maker) toType() (list []Block) {
	if !m.begun {
		list = m.beginning()
	}
	if m.o.Note != "" {
		list = append(list, Code{Say: "A reading of this batch is noted so, with the time at which it was taken:", Line: words.Safe(m.o.Note) + " weighed " + blank + " after " + blank + " --at " + blank})
	}
	return list
}
