package offer

import (
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func placeOf(tree *syntax.Tree, s *syntax.Statement) source.Place {
	return source.Place{File: tree.File, Span: s.Head()}
}

func (l *list) wholes() {}
