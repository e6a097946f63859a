package read

import (
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// table is what the statements of a block set in what the block builds, by their words.
// Each row of the vocabulary has its line in the table of every block it may stand in,
// and the other way round: table_test.go holds the two against each other.
type table[T any] map[string]func(*builder, *T, *filled)

// everywhere builds the statements that mean the same in all blocks. Scope is the whole
// of the block.
var everywhere = map[string]func(b *builder, r *filled, scope source.Place){
	"accept": (*builder).accept,
}

// fill reads a block by its table into what the block builds. It tells whether all of
// its statements could be read.
func fill[T any](b *builder, body *syntax.Block, in vocabulary.Block, scope, blame source.Place, it *T, set table[T]) (whole bool) {
	return b.block(scope.File, body, in, scope, blame, func(s *filled) {
		if do := set[s.Verb.Text]; do != nil {
			do(b, it, s)
		}
	})
}

// facts reads the block of a definition.
func facts[T any](b *builder, r *filled, in vocabulary.Block, it *T, set table[T]) {
	if r.Body != nil {
		fill(b, r.Body, in, r.scope(), r.place, it, set)
	}
}
