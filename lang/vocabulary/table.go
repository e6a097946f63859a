package vocabulary

import (
	"slices"

	"maltwright/lang/nearest"
)

var rows = slices.Concat(house, learnt, stages, batch)

var byKey = func() map[Key]*Row {
	m := make(map[Key]*Row, 2*len(rows))
	for i := range rows {
		for _, b := range rows[i].In {
			m[Key{b, rows[i].Word}] = &rows[i]
		}
	}
	return m
}()

// Rows lists the statements in the order of the reference.
func Rows() []Row { return slices.Clone(rows) }

// Lookup finds the statement of that word in that block.
func Lookup(in Block, word string) (*Row, bool) {
	r, ok := byKey[Key{in, word}]
	return r, ok
}

// Words lists the words that begin a statement in the block, in the table's order.
func Words(in Block) []string {
	var list []string
	for i := range rows {
		if slices.Contains(rows[i].In, in) {
			list = append(list, rows[i].Word)
		}
	}
	return list
}

// Homes lists the blocks in which the word begins a statement.
func Homes(word string) []Block {
	var list []Block
	for i := range rows {
		if rows[i].Word == word {
			list = append(list, rows[i].In...)
		}
	}
	return list
}

// Meant gives the statement word of the block that is nearest to the one written.
func Meant(in Block, written string) (string, bool) { return nearest.Word(written, Words(in)) }

// NeededIn lists the statements without which a block is of no use.
func NeededIn(in Block) []string {
	var list []string
	for i := range rows {
		if rows[i].Needed && slices.Contains(rows[i].In, in) {
			list = append(list, rows[i].Word)
		}
	}
	return list
}

// FindMeasure finds a measure by its word or two words.
func FindMeasure(word string) (Measure, bool) {
	i := slices.IndexFunc(measures, func(m Measure) bool { return m.Word == word })
	if i < 0 {
		return Measure{}, false
	}
	return measures[i], true
}
