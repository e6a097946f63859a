package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
)

var foldKinds = map[outline.FoldKind]string{outline.CommentFold: "comment", outline.DayFold: "region"}

// foldingRange lists what can be folded: as many as the editor takes, the first of them.
func foldingRange(_ context.Context, s *session, v *desk.View, p wire.FoldingRangeParams) ([]wire.FoldingRange, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	list := []wire.FoldingRange{}
	most := int(s.can().TextDocument.FoldingRange.RangeLimit)
	for _, f := range outline.Folds(doc.Tree()) {
		if most > 0 && len(list) == most {
			break
		}
		list = append(list, wire.FoldingRange{StartLine: uint32(f.First - 1), EndLine: uint32(f.Last - 1), Kind: foldKinds[f.Kind]})
	}
	return list, nil
}

// selectionRange tells for each position what lies around it.
func selectionRange(_ context.Context, _ *session, v *desk.View, p wire.SelectionRangeParams) ([]wire.SelectionRange, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	list := make([]wire.SelectionRange, len(p.Positions))
	for i, at := range p.Positions {
		var outer *wire.SelectionRange
		spans := outline.Around(doc.Tree(), v.Offset(doc.File, at))
		for k := len(spans) - 1; k >= 0; k-- {
			if r := v.Range(doc.File, spans[k]); outer == nil || r != outer.Range {
				outer = &wire.SelectionRange{Range: r, Parent: outer}
			}
		}
		list[i] = *outer
	}
	return list, nil
}
