package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
)

// documentLink leads from each file that a document names to that, whether it is there yet or not. What lies outside of the
// folder of the document is not read, and not linked.
func documentLink(_ context.Context, _ *session, v *desk.View, p wire.DocumentLinkParams) ([]wire.DocumentLink, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	list := []wire.DocumentLink{}
	a := aroundOf(v, doc)
	for _, l := range outline.Links(doc.Tree()) {
		if to, ok := l.From(a.own()); ok {
			list = append(list, wire.DocumentLink{Range: v.Range(doc.File, l.Place.Span), Target: a.uri(to)})
		}
	}
	return list, nil
}
