package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/margin"
)

// caseOf is a document as it is checked.
func caseOf(v *desk.View, doc *desk.Doc) margin.Case {
	return margin.Case{Name: doc.File.Name(), Text: doc.Text(), Dir: ".", Reader: v.Reader(doc.Dir())}
}

// reported is the report of a document as it is in a view, with its forecasts: that of the judge, or where that has
// none one that is made for it.
func (s *session) reported(ctx context.Context, v *desk.View, doc *desk.Doc) check.Report {
	if is := s.margins.await(ctx, v, doc); is != nil {
		return is.report
	}
	return v.Check(doc, check.Options{Context: ctx})
}

// otherwise says what one more and one less of a number changes, however long that takes, and shows it. It takes
// the address of a document and a position.
func otherwise(ctx context.Context, s *session, v *desk.View, arguments []json.RawMessage) (any, error) {
	var uri string
	var at wire.Position
	for i, into := range []any{&uri, &at} {
		if i >= len(arguments) || json.Unmarshal(arguments[i], into) != nil {
			return nil, &wire.Error{Code: wire.InvalidParams, Message: commandOtherwise + " takes the address of a document and a position"}
		}
	}
	doc, err := v.At(uri)
	if err != nil {
		return nil, unreadable(uri, err)
	}
	o := margin.OtherwiseAt(ctx, caseOf(v, doc), doc.Tree(), s.reported(ctx, v, doc), v.Offset(doc.File, at), 0)
	if o == nil {
		return nil, refused(fmt.Errorf("there is no number of a forecast process there"))
	}
	text := strings.Join(o.Lines(), "\n")
	if o.Dear {
		text = "what another number changes takes too many steps of the model"
	}
	s.tell("window/showMessage", wire.ShowMessageParams{Type: wire.MessageInfo, Message: text})
	return text, nil
}

// beside is what a forecast has at a place of a document, and what one more or less of the number there changes: a line
// each, for the hover. It does not wait for a forecast.
func beside(ctx context.Context, s *session, v *desk.View, doc *desk.Doc, offset int) []string {
	is := s.margins.now(v, doc)
	if is == nil {
		return nil
	}
	var lines []string
	for _, line := range is.told.At(offset) {
		lines = append(lines, strings.Split(line, "\n")...)
	}
	o := margin.OtherwiseAt(ctx, caseOf(v, doc), doc.Tree(), is.report, offset, margin.Steps)
	switch {
	case o == nil:
	case o.Dear:
		lines = append(lines, "what another number than "+o.Text+" changes takes long to reckon: the command "+commandOtherwise+" says it")
	default:
		lines = slices.Concat(lines, o.Lines())
	}
	return lines
}
