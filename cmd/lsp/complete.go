package lsp

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/offer"
	"maltwright/lang/source"
)

// triggered says that a sign which was typed has asked, and nobody did.
const triggered = 2

// completion answers with what may stand at a position. A blank or a quote that was typed asks only where
// something must stand: the end of a line that is whole is no place for a list.
func completion(_ context.Context, s *session, v *desk.View, p wire.CompletionParams) (wire.CompletionList, error) {
	out := wire.CompletionList{Items: []wire.CompletionItem{}}
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return out, unreadable(p.TextDocument.URI, err)
	}
	offset := v.Offset(doc.File, p.Position)
	items := offer.At(doc.File, doc.Tree(), offset, s.known(v, doc, offset))
	if p.Context != nil && p.Context.TriggerKind == triggered && !asked(items) {
		return out, nil
	}
	for _, it := range items {
		out.Items = append(out.Items, s.item(v, doc, it))
		// with each further digit the text of a number and its unit is another
		out.IsIncomplete = out.IsIncomplete || it.Kind == offer.Unit && it.Edit.New != it.Label
	}
	return out, nil
}

// asked tells whether something must stand at a place in a statement.
func asked(items []offer.Item) bool {
	return slices.ContainsFunc(items, func(it offer.Item) bool { return it.Needed && it.Kind != offer.Statement })
}

var itemKinds = map[offer.Kind]uint32{
	offer.Statement: wire.ItemKeyword, offer.Clause: wire.ItemKeyword, offer.Join: wire.ItemOperator, offer.Name: wire.ItemReference,
	offer.Choice: wire.ItemEnumMember, offer.Unit: wire.ItemUnit, offer.Value: wire.ItemValue, offer.Whole: wire.ItemSnippet,
}

func (s *session) item(v *desk.View, doc *desk.Doc, it offer.Item) wire.CompletionItem {
	can := s.can().TextDocument.Completion.CompletionItem
	out := wire.CompletionItem{Label: it.Label, Kind: itemKinds[it.Kind], Detail: it.Detail, SortText: it.Sort, FilterText: it.Filter,
		TextEdit: &wire.TextEdit{Range: v.Range(doc.File, it.Edit.Span), NewText: it.Edit.New}}
	if it.Filter == it.Label {
		out.FilterText = "" // the label is what an editor goes by then, and some take the range only of such an item
	}
	if !can.SnippetSupport {
		out.TextEdit.NewText = oneLine(it.Edit.New)
	}
	if m := can.InsertTextModeSupport; m != nil && slices.Contains(m.ValueSet, wire.InsertAsIs) && strings.Contains(out.TextEdit.NewText, "\n") {
		out.InsertTextMode = wire.InsertAsIs
	}
	if can.SnippetSupport && len(it.Stops) > 0 {
		out.InsertTextFormat, out.TextEdit.NewText = wire.InsertSnippet, snippet(it.Edit.New, it.Stops)
	}
	if it.Doc != "" {
		t := textOf(can.DocumentationFormat)
		if it.Kind == offer.Whole {
			t.code(it.Doc)
		} else {
			t.line(it.Doc)
			t.form(it.Form)
		}
		out.Documentation = t.content()
	}
	return out
}

// oneLine is a text on one line, which the layout sets on its own ones. An editor without snippets may put
// other signs in for line ends.
func oneLine(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		switch {
		case line == "":
			continue
		case b.Len() == 0:
		case line == "}" || strings.HasSuffix(b.String(), "{"):
			b.WriteString(" ")
		default:
			b.WriteString("; ")
		}
		b.WriteString(line)
	}
	return b.String()
}

// snippet writes a text with its stops as an editor takes them: a value to change is ${1:7 h}, and a place
// to go on $0.
func snippet(text string, stops []source.Span) string {
	escape := strings.NewReplacer(`\`, `\\`, `$`, `\$`, `}`, `\}`)
	var b strings.Builder
	at, last := 0, false
	for i, stop := range stops {
		b.WriteString(escape.Replace(text[at:stop.Start]))
		if stop.Empty() {
			b.WriteString("$0")
			last = true
		} else {
			fmt.Fprintf(&b, "${%d:%s}", i+1, escape.Replace(text[stop.Start:stop.End]))
		}
		at = stop.End
	}
	b.WriteString(escape.Replace(text[at:]))
	if !last {
		b.WriteString("$0")
	}
	return b.String()
}

func unreadable(uri string, err error) error {
	return &wire.Error{Code: wire.RequestFailed, Message: uri + " cannot be read: " + err.Error()}
}
