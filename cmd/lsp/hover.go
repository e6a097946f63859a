package lsp

import (
	"context"
	"strings"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/offer"
	"maltwright/lang/source"
)

// besides are what else has something to say of a place, a line each, behind what the word there means:
// what a forecast has at the step.
var besides = []func(ctx context.Context, s *session, v *desk.View, doc *desk.Doc, offset int) []string{beside}

// hover answers with what stands at a position: what it means, in other units too, what is named by it,
// what is usual there, and what the forecast has.
func hover(ctx context.Context, s *session, v *desk.View, p wire.HoverParams) (*wire.Hover, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return nil, unreadable(p.TextDocument.URI, err)
	}
	offset := v.Offset(doc.File, p.Position)
	t := textOf(s.can().TextDocument.Hover.ContentFormat)
	m, ok := offer.MeaningAt(doc.File, doc.Tree(), offset, s.known(v, doc, offset))
	if ok {
		t.head(m.Title)
		t.line(m.Doc)
	}
	lines, usual := sameValue(m.Facts)
	for _, says := range besides {
		lines = append(lines, says(ctx, s, v, doc, offset)...)
	}
	t.list(append(lines, usual...))
	if ok {
		background(t, v, doc, m)
	}
	if t.empty() {
		return nil, nil
	}
	h := &wire.Hover{Contents: *t.content()}
	if ok {
		r := v.Range(doc.File, m.Span)
		h.Range = &r
	}
	return h, nil
}

// sameValue parts what a value is in other units from what else is known of it.
func sameValue(facts []string) (same, rest []string) {
	for _, f := range facts {
		if strings.HasPrefix(f, "= ") {
			same = append(same, f)
		} else {
			rest = append(rest, f)
		}
	}
	return same, rest
}

// background is what stands behind what the forecast says: what a name is defined as, and last how the statement is
// written.
func background(t *text, v *desk.View, doc *desk.Doc, m offer.Meaning) {
	if m.Says != "" {
		t.code(m.Says)
		if in := fileOf(v, doc, m.From); in != "" {
			t.line("in " + in)
		}
	}
	t.form(m.Form)
}

// fileOf is the name of the file of a place, "" of the document itself.
func fileOf(v *desk.View, doc *desk.Doc, p source.Place) string {
	if !p.Known() || p.File.Name() == doc.File.Name() {
		return ""
	}
	return base(v.PathOf(p.File))
}
