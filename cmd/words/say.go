package words

import (
	"fmt"
	"reflect"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/sums"
)

// sayer puts the values of one type into words.
type sayer struct {
	of  reflect.Type
	say func(House, answer.Told) string
}

// says makes the sayer of a type.
func says[T answer.Told](say func(House, T) string) sayer {
	return sayer{reflect.TypeFor[T](), func(h House, t answer.Told) string { return say(h, t.(T)) }}
}

// sayers are all there are, by type.
var sayers = byType(
	says(House.amount),
	says(House.trouble),
	says(House.caution),
	says(House.taken),
	says(House.open),
	says(House.learn),
	says(House.corner),
	says(House.unkept),
	says(House.task),
	says(House.suspected),
	says(House.side),
	says(House.reason),
	says(func(_ House, s sums.Step) string { return written(s) }),
	says(func(_ House, n sums.Note) string { return WorkingNote(n) }),
)

func byType(list ...sayer) map[reflect.Type]func(House, answer.Told) string {
	table := map[reflect.Type]func(House, answer.Told) string{}
	for _, s := range list {
		table[s.of] = s.say
	}
	return table
}

// Say puts what an answer tells into words, safe for a terminal.
func (h House) Say(t answer.Told) string {
	if say := sayers[reflect.TypeOf(t)]; say != nil {
		return Safe(say(h, t))
	}
	return Safe(fmt.Sprintf("%+v", t)) // a row is missing above: its values are better than nothing
}
