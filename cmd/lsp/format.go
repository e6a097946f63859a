package lsp

import (
	"bytes"
	"context"
	"strings"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// laidOut are the edits that lay a document out as tidy does: none where it does not read, or would be too
// large then.
func laidOut(doc *desk.Doc) []finding.Edit {
	tree, found := doc.Statements()
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return nil
	}
	out := layout.Write(tree)
	if len(out) > source.MaxBytes {
		return nil
	}
	return layout.Edits(doc.File, out)
}

func formatting(_ context.Context, _ *session, v *desk.View, p wire.DocumentFormattingParams) ([]wire.TextEdit, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	return textEdits(v, doc, laidOut(doc)), nil
}

// rangeFormatting lays out the lines that a range touches. What is aligned with a line stands in
// lines beside it, so that they may need it too.
func rangeFormatting(_ context.Context, _ *session, v *desk.View, p wire.DocumentRangeFormattingParams) ([]wire.TextEdit, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	f, span := doc.File, v.Span(doc.File, p.Range)
	from := f.Line(f.Position(span.Start, source.Bytes).Line).Start
	to := f.Line(f.Position(span.End, source.Bytes).Line).End
	if span.End > span.Start && strings.HasSuffix(f.Text(span), "\n") { // up to a line, and nothing of it
		to = span.End - 1
	}
	var list []finding.Edit
	for _, e := range laidOut(doc) {
		if e.Place.End >= from && e.Place.Start <= to {
			list = append(list, e)
		}
	}
	if !sameSaid(f, list) { // a statement that goes over the end of the range
		list = nil
	}
	return textEdits(v, doc, list), nil
}

// sameSaid tells whether a file says the same with some edits, in their order.
func sameSaid(f *source.File, list []finding.Edit) bool {
	var text []byte
	last := 0
	for _, e := range list {
		text = append(append(text, f.Bytes()[last:e.Place.Start]...), e.New...)
		last = e.Place.End
	}
	after, found := syntax.Parse(source.New(f.Name(), append(text, f.Bytes()[last:]...)))
	before, _ := syntax.Parse(f)
	worst, any := finding.Worst(found)
	return !(any && worst >= finding.Fault) && bytes.Equal(layout.Plain(after), layout.Plain(before))
}

func offerTyping(c *wire.ServerCapabilities) {
	c.OnTypeFormattingProvider = &wire.DocumentOnTypeFormattingOptions{FirstTriggerCharacter: "}", MoreTriggerCharacter: []string{"\n"}}
}

// onTypeFormatting indents a line that was begun or has just been closed, by the braces above it; so it
// does in a text that does not read yet.
func onTypeFormatting(_ context.Context, _ *session, v *desk.View, p wire.DocumentOnTypeFormattingParams) ([]wire.TextEdit, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	f := doc.File
	line := f.Line(f.Position(v.Offset(f, p.Position), source.Bytes).Line)
	text := f.Text(line)
	body := strings.TrimLeft(text, " \t")
	if p.Ch == "}" && body != "}" { // it closes a block on the line of something else
		return []wire.TextEdit{}, nil
	}
	indent := strings.Repeat("  ", depthAt(f, line.Start, strings.HasPrefix(body, "}")))
	gap := source.Span{Start: line.Start, End: line.Start + len(text) - len(body)}
	if f.Text(gap) == indent {
		return []wire.TextEdit{}, nil
	}
	return textEdits(v, doc, []finding.Edit{{Place: source.Place{File: f, Span: gap}, New: indent}}), nil
}

// depthAt is how many blocks are open at a place, without one that is closed there.
func depthAt(f *source.File, at int, closed bool) int {
	depth := 0
	for _, l := range syntax.Lexemes(f) {
		switch {
		case l.Start >= at:
		case l.Kind == syntax.OpenLexeme:
			depth++
		case l.Kind == syntax.CloseLexeme && depth > 0:
			depth--
		}
	}
	if closed && depth > 0 {
		depth--
	}
	return depth
}

func textEdits(v *desk.View, doc *desk.Doc, list []finding.Edit) []wire.TextEdit {
	out := make([]wire.TextEdit, 0, len(list))
	for _, e := range list {
		out = append(out, wire.TextEdit{Range: v.Range(doc.File, e.Place.Span), NewText: e.New})
	}
	return out
}
