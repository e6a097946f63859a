package vocabulary

import (
	"maps"
	"slices"
	"strings"

	q "maltwright/lang/quantity"
)

// Sense is which values of a slot make sense. It has two bands: outside the one a
// value cannot be, which is a fault; outside the other it is out of the ordinary, and
// a slip of the pen is likely, which is a caution.
type Sense struct {
	What     string   // what a message calls the value: "a protein"
	Can      q.Range  // outside it the value cannot be, or no model holds for it
	Usual    *q.Range // nil where nothing narrower than Can is usual
	By       []Kin    // narrower usual bands by the word that the block was given
	Standing string   // where the usual band comes from
	Advice   string   // what to do where no slip explains the value
	Held     bool     // it is a moisture: more than grain can hold is told of as that
	OfDry    bool     // it is a share of the dry matter anyway: "dry basis" says so, and its number stays

	Instead map[string]*Sense // what makes sense where a statement of that word stands in the block; behind a space a word that it has
	Also    *Sense            // what makes sense in a value of another dimension
}

// Kin is what is usual for some of the words of another statement of the block, such
// as the weight of a thousand kernels for a species.
type Kin struct {
	Words []string
	Usual q.Range
}

// Beside gives what makes sense in a block that has statements of such words: of several that
// change it the last by the alphabet.
func (s *Sense) Beside(words map[string]bool) *Sense {
	is := s
	for _, word := range slices.Sorted(maps.Keys(s.Instead)) {
		if words[word] {
			is = s.Instead[word]
		}
	}
	return is
}

// Of gives what makes sense in a value of a dimension, nil where any may.
func (s *Sense) Of(d q.Dimension) *Sense {
	if s.Also == nil {
		return s
	}
	for ; s != nil; s = s.Also {
		if s.Can.High.Dimension == d {
			return s
		}
	}
	return nil
}

// OfAny is Of, of no sense too.
func (s *Sense) OfAny(d q.Dimension) *Sense {
	if s == nil {
		return nil
	}
	return s.Of(d)
}

// UsualOf gives what is usual for a word, if the sense knows it.
func (s *Sense) UsualOf(word string) (q.Range, bool) {
	for _, k := range s.By {
		for _, w := range k.Words {
			if w == word {
				return k.Usual, true
			}
		}
	}
	return q.Range{}, false
}

// Text writes the bands for the reference: "4 to 25 %; 7 to 18 % is usual (common practice)".
func (s *Sense) Text() string {
	text := s.Can.String()
	if s.Usual != nil {
		text += "; usual is " + s.Usual.String()
	}
	for i, k := range s.By {
		sep := ", "
		if i == 0 {
			sep = "; usual is "
		}
		text += sep + k.Usual.String() + " for " + strings.Join(k.Words, " and ")
	}
	if s.Standing != "" {
		text += " (" + s.Standing + ")"
	}
	for _, word := range slices.Sorted(maps.Keys(s.Instead)) {
		text += "; behind " + word + ": " + s.Instead[word].Text()
	}
	if s.Also != nil {
		text += "; " + s.Also.What + ": " + s.Also.Text()
	}
	return text
}

// Senses lists the slots of a statement and of its clauses of which it is known what
// makes sense in them.
func Senses(r Row) []Slot {
	var list []Slot
	add := func(slots []Slot) {
		for _, s := range slots {
			if s.Sense != nil {
				list = append(list, s)
			}
		}
	}
	add(r.Slots)
	for _, c := range r.Clauses {
		add(c.Slots)
	}
	return list
}

const practice = "common practice"

// bandsOf makes a sense of two bands, as they are written: "4 to 25 %".
func bandsOf(what, can, usual, standing string) *Sense {
	s := &Sense{What: what, Can: band(can), Standing: standing}
	if usual != "" {
		narrow := band(usual)
		s.Usual = &narrow
	}
	return s
}

// advised is the sense with what to do about a value that no slip explains.
func (s *Sense) advised(advice string) *Sense {
	s.Advice = advice
	return s
}

// ofDry is the sense of a share of the dry matter.
func (s *Sense) ofDry() *Sense {
	s.OfDry = true
	return s
}

// also is the sense with that of a value of another dimension.
func (s *Sense) also(other *Sense) *Sense {
	s.Also = other
	return s
}

// sensed is the slot with what makes sense in it.
func sensed(slot Slot, s *Sense) Slot {
	slot.Sense = s
	return slot
}

// band reads a band of the table. A band that does not read is a slip in the table,
// which every test would meet.
func band(text string) q.Range {
	low, high, _ := strings.Cut(text, " to ")
	r, err := q.Between([]q.Part{partOf(low)}, []q.Part{partOf(high)})
	if err != nil {
		panic(text + ": " + err.Error())
	}
	return r
}

func partOf(text string) q.Part {
	number, unit, _ := strings.Cut(text, " ")
	return q.Part{Number: number, Unit: unit}
}
