package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/lang/quantity"
)

// The shell hands over 6 kg as two words and "6 kg" as one. Words that do not begin
// a number belong to the quantity before them; whether 5 lb 4 oz is then one weight
// or two is told by how many quantities the reckoning wants.

// typed are the quantities of a command line, as typed.
type typed []string

// Decode takes every word up to the next flag. A negative number is no flag: it is
// read, so that it can be told what is wrong with it.
func (q *typed) Decode(ctx *kong.DecodeContext) error {
	*q = pop(ctx.Scan, func([]string, string) bool { return false })
	return nil
}

// oneQuantity is the value of a flag that takes a single quantity.
type oneQuantity typed

// Decode takes the words of one quantity.
func (q *oneQuantity) Decode(ctx *kong.DecodeContext) error {
	*q = pop(ctx.Scan, func(have []string, next string) bool { return begins(have, next) })
	return missing(len(*q))
}

// startWords is the value of a flag that takes a weight and its moisture.
type startWords typed

// Decode takes words up to the end of the moisture.
func (b *startWords) Decode(ctx *kong.DecodeContext) error {
	*b = pop(ctx.Scan, func(have []string, next string) bool {
		return begins(have, next) && strings.Contains(strings.Join(have, " "), "%")
	})
	return missing(len(*b))
}

func missing(n int) error {
	if n == 0 {
		return errors.New("a quantity is missing")
	}
	return nil
}

// pop takes words up to a flag, or until enough are there.
func pop(scan *kong.Scanner, enough func(have []string, next string) bool) (have []string) {
	for {
		t := scan.Peek()
		text := t.String()
		if t.IsEOL() || !t.IsValue() && !number(text) || len(have) > 0 && enough(have, text) {
			return have
		}
		have = append(have, text)
		scan.Pop()
	}
}

// number tells whether a number begins here.
func number(text string) bool {
	text = strings.TrimPrefix(strings.TrimPrefix(text, "-"), "\u2212")
	return text != "" && (text[0] >= '0' && text[0] <= '9' || text[0] == '.')
}

// begins tells whether a word begins a new quantity rather than going on with the
// words so far: a number does, but for the 1/3 of 8 1/3 lb.
func begins(have []string, next string) bool {
	if !number(next) || len(have) == 0 {
		return number(next)
	}
	_, err := quantity.Parse(have[len(have)-1] + " " + next)
	return err != nil || !strings.Contains(next, "/")
}

// between are words that may stand between two quantities.
var between = []string{"at", "to", "of"}

// amount is one quantity and whether it was typed apart, in several words.
type amount struct {
	quantity.Quantity
	apart bool
}

// read gives the quantities, where as many stand there as fit.
func (q typed) read(fits func(int) bool, wanted string) ([]quantity.Quantity, error) {
	list, err := q.amounts()
	if err != nil {
		return nil, err
	}
	joined := join(list)
	fewer := len(joined) < len(list) && fits(len(joined))
	switch {
	case fits(len(list)) && fewer:
		return nil, usage("%s may be one quantity or two; put each into quotes, such as \"5 lb 4 oz\"", joined[0])
	case fewer:
		list = joined
	case !fits(len(list)):
		return nil, usage("%q holds %s; give %s", strings.Join(q, " "), quantities(len(list)), wanted)
	}
	out := make([]quantity.Quantity, len(list))
	for i, a := range list {
		out[i] = a.Quantity
	}
	return out, nil
}

// read gives the quantity of a flag, or nil where the flag is not there.
func (q oneQuantity) read(flag string) (*quantity.Quantity, error) {
	if len(q) == 0 {
		return nil, nil
	}
	list, err := typed(q).read(exactly(1), "one quantity behind "+flag)
	if err != nil {
		return nil, err
	}
	return &list[0], nil
}

func (q typed) amounts() (list []amount, err error) {
	for _, group := range q.groups() {
		text := strings.Join(group, " ")
		made, err := quantity.Parse(text)
		if err != nil {
			return nil, usage("%w", err)
		}
		list = append(list, amount{made, len(group) > 1})
	}
	return list, nil
}

// groups parts the words into those of each quantity.
func (q typed) groups() (groups [][]string) {
	fresh := true
	for _, word := range q.single() {
		switch {
		case slices.Contains(between, word):
			fresh = true
		case fresh || begins(groups[len(groups)-1], word):
			groups, fresh = append(groups, []string{word}), false
		default:
			last := len(groups) - 1
			groups[last] = append(groups[last], word)
		}
	}
	return groups
}

// single parts words in quotes at the words that stand between quantities.
func (q typed) single() (list []string) {
	for _, word := range q {
		rest := ""
		for _, f := range strings.Fields(word) {
			if slices.Contains(between, f) {
				list, rest = append(list, rest, f), ""
				continue
			}
			rest = strings.TrimSpace(rest + " " + f)
		}
		list = append(list, rest)
	}
	return slices.DeleteFunc(list, func(word string) bool { return word == "" })
}

// join makes one quantity of neighbours that were typed apart and go together, as
// 5 lb 4 oz do.
func join(list []amount) (joined []amount) {
	for _, a := range list {
		if n := len(joined); n > 0 && a.apart && joined[n-1].apart {
			if both, err := quantity.Parse(joined[n-1].String() + " " + a.String()); err == nil {
				joined[n-1].Quantity = both
				continue
			}
		}
		joined = append(joined, a)
	}
	return joined
}

func quantities(n int) string {
	switch n {
	case 0:
		return "no quantity"
	case 1:
		return "one quantity"
	}
	return fmt.Sprintf("%d quantities", n)
}
