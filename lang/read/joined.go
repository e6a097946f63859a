package read

import (
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// joined reads the values of a clause. Where it joins them by "and", those of each part
// stand one behind the other, as many for each as the clause has slots.
func (r *statementReader) joined(def *vocabulary.Clause, c *syntax.Clause) []*given {
	if !def.Joins {
		return r.slots(def.Slots, c.Terms, c.Word)
	}
	var out []*given
	for _, part := range value.Joined(c.Terms) {
		out = append(out, r.slots(def.Slots, part, c.Word)...)
	}
	return out
}

// parts gives the values of each part of a clause that joins them by "and".
func (r *filled) parts(word string) (list [][]*given) {
	def, ok := r.row.Clause(word)
	if !ok {
		return nil
	}
	values := r.clauses[word]
	for i := range (len(values) - 1) / max(len(def.Slots), 1) { // the last only marks that the clause is there
		list = append(list, values[i*len(def.Slots):(i+1)*len(def.Slots)])
	}
	return list
}
