package words

import (
	"fmt"
	"reflect"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/sums"
)

// formatter puts the values of one type into words.
type formatter struct {
	of  reflect.Type
	say func(House, answer.Told) string
}

// formatterOf makes the formatter of a type.
func formatterOf[T answer.Told](say func(House, T) string) formatter {
	return formatter{reflect.TypeFor[T](), func(h House, t answer.Told) string { return say(h, t.(T)) }}
}

// formatters are all there are, by type.
var formatters = byType(
	formatterOf(House.amount),
	formatterOf(House.trouble),
	formatterOf(House.caution),
	formatterOf(House.taken),
	formatterOf(House.open),
	formatterOf(House.learn),
	formatterOf(House.corner),
	formatterOf(House.unkept),
	formatterOf(House.task),
	formatterOf(House.suspected),
	formatterOf(House.side),
	formatterOf(House.reason),
	formatterOf(func(_ House, s sums.Step) string { return written(s) }),
	formatterOf(func(_ House, n sums.Note) string { return WorkingNote(n) }),
)

func byType(list ...formatter) map[reflect.Type]func(House, answer.Told) string {
	table := map[reflect.Type]func(House, answer.Told) string{}
	for _, s := range list {
		table[s.of] = s.say
	}
	return table
}

// Say puts what an answer tells into words, safe for a terminal.
func (h House) Say(t answer.Told) string {
	if say := formatters[reflect.TypeOf(t)]; say != nil {
		return Safe(say(h, t))
	}
	return Safe(fmt.Sprintf("%+v", t)) // a row is missing above: its values are better than nothing
}
