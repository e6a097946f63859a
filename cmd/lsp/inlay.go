package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/margin"
	"maltwright/lang/source"
)

// inlayHint answers with what a forecast has to say beside the lines of a range.
func inlayHint(ctx context.Context, s *session, v *desk.View, p wire.InlayHintParams) ([]wire.InlayHint, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	set := s.settings().Hints
	wanted := map[margin.Kind]bool{margin.Ends: set.Ends, margin.Gates: set.Gates, margin.Readings: set.Readings}
	list, in := []wire.InlayHint{}, v.Span(doc.File, p.Range)
	if !set.Ends && !set.Gates && !set.Readings {
		return list, nil
	}
	for _, x := range s.margins.of(ctx, v, doc).Hints {
		if !wanted[x.Kind] || x.At < in.Start || in.End < x.At {
			continue
		}
		list = append(list, wire.InlayHint{Position: v.Range(doc.File, source.Span{Start: x.At, End: x.At}).Start, Label: x.Text, PaddingLeft: true,
			Tooltip: &wire.MarkupContent{Kind: wire.PlainText, Value: x.More}})
	}
	return list, nil
}
