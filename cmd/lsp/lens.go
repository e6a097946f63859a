package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

// codeLens answers with what a process or a batch comes to, above it, and what can be made of it.
func codeLens(ctx context.Context, s *session, v *desk.View, p wire.CodeLensParams) ([]wire.CodeLens, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := []wire.CodeLens{}
	if !s.settings().Lenses {
		return list, nil
	}
	for _, x := range s.margins.of(ctx, v, doc).Lenses {
		at := v.Range(doc.File, x.Of)
		add := func(title, command string) {
			list = append(list, wire.CodeLens{Range: at, Command: &wire.Command{Title: title, Command: command, Arguments: []any{p.TextDocument.URI, wire.DrawOptions{Name: x.Name}}}})
		}
		add(x.Text, commandChart)
		if x.Drawn {
			add("chart", commandChart)
			add("sheet by the bucket", commandSheet)
		}
	}
	return list, nil
}
