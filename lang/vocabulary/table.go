package vocabulary

import (
	"slices"
	"strings"

	"maltwright/lang/nearest"
)

var allRows = slices.Concat(houseRows, heatRows, learntRows, stageRows, batchRows, recordRows)

var byKey = func() map[Key]*Row {
	m := make(map[Key]*Row, 2*len(allRows))
	for i := range allRows {
		for _, b := range allRows[i].In {
			m[Key{b, allRows[i].Word}] = &allRows[i]
		}
	}
	return m
}()

// Rows lists the statements in the order of the reference.
func Rows() []Row { return slices.Clone(allRows) }

// Lookup finds the statement of that word in that block.
func Lookup(in Block, word string) (*Row, bool) {
	r, ok := byKey[Key{in, word}]
	return r, ok
}

// Words lists the words that begin a statement in the block, in the table's order.
func Words(in Block) []string {
	var list []string
	for i := range allRows {
		if slices.Contains(allRows[i].In, in) {
			list = append(list, allRows[i].Word)
		}
	}
	return list
}

// Homes lists the blocks in which the word begins a statement.
func Homes(word string) []Block {
	var list []Block
	for i := range allRows {
		if allRows[i].Word == word {
			list = append(list, allRows[i].In...)
		}
	}
	return list
}

// Ordered tells whether the place of a statement among the others of its block means
// something. In the record of a batch every line's does.
func Ordered(in Block, word string) bool {
	r, ok := Lookup(in, word)
	return in == Batch || ok && (r.Ordered || r.Ranked)
}

// Opens gives the block that a statement opens, None where the word is not known there.
func Opens(in Block, word string) Block {
	if r, ok := Lookup(in, word); ok {
		return r.Opens
	}
	return None
}

// Grows tells whether the block that a statement opens never stands on one line.
func Grows(in Block, word string) bool {
	r, ok := Lookup(in, word)
	return ok && r.Grows
}

// Includes tells whether the word brings in another file.
func Includes(word string) bool {
	r, ok := Lookup(File, word)
	return ok && r.Includes
}

// NamesStep tells whether the first value of a statement of that word, in any block, is
// a step and its number.
func NamesStep(word string) bool { return stepNamers[word] }

var stepNamers = func() map[string]bool {
	set := map[string]bool{}
	for _, r := range allRows {
		if r.NamesStep {
			set[r.Word] = true
		}
	}
	return set
}()

// Meant gives the statement word of the block that is nearest to the one written.
func Meant(in Block, written string) (string, bool) { return nearest.Word(written, Words(in)) }

// NeededIn lists the statements without which a block is of no use.
func NeededIn(in Block) []string {
	var list []string
	for i := range allRows {
		if allRows[i].Needed && slices.Contains(allRows[i].In, in) {
			list = append(list, allRows[i].Word)
		}
	}
	return list
}

// FindMeasure finds a measure by its word or two words.
func FindMeasure(word string) (Measure, bool) {
	i := slices.IndexFunc(allMeasures, func(m Measure) bool { return m.Word == word })
	if i < 0 {
		return Measure{}, false
	}
	return allMeasures[i], true
}

// Hand tells which of a date and a time of day may stand next to a word.
type Hand struct{ Date, Clock bool }

// TimeBehind tells whether a date or a time of day is wanted behind a word of a statement, its
// first or that of one of its clauses, in any block.
func TimeBehind(verb, word string) Hand { return timesBehind[[2]string{verb, word}] }

var timesBehind = func() map[[2]string]Hand {
	set := map[[2]string]Hand{}
	add := func(verb, word string, slots []Slot) {
		if len(slots) == 0 {
			return
		}
		switch slots[0].Kind {
		case Moment:
			set[[2]string{verb, word}] = Hand{Date: true, Clock: true}
		case Date:
			set[[2]string{verb, word}] = Hand{Date: true}
		case Clock, Hour:
			set[[2]string{verb, word}] = Hand{Clock: true}
		}
	}
	for _, r := range allRows {
		add(r.Word, r.Word, r.Slots)
		for _, c := range r.Clauses {
			add(r.Word, c.Word, c.Slots)
		}
	}
	return set
}()

// IsMeasure tells whether a condition can name the word, alone or as the last of two.
func IsMeasure(word string) bool {
	return slices.ContainsFunc(allMeasures, func(m Measure) bool {
		return m.Word == word || strings.HasSuffix(m.Word, " "+word)
	})
}
