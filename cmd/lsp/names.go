package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
	"maltwright/lang/source"
)

// named is what stands at a position of a document: the files around it, and the name there; ok is false where
// there is none.
func named(v *desk.View, id wire.TextDocumentIdentifier, p wire.Position) (a *around, f *outline.Folder, n outline.Name, ok bool, err error) {
	doc, err := document(v, id)
	if err != nil {
		return nil, nil, n, false, err
	}
	a = aroundOf(v, doc)
	f = outline.In(a)
	n, ok = f.At(a.own(), v.Offset(doc.File, p))
	return a, f, n, ok, nil
}

// definition leads from a name to where it is defined, from a file that is used to that, and from a step that a record
// names to the step.
func definition(_ context.Context, s *session, v *desk.View, p wire.DefinitionParams) (any, error) {
	a, f, n, ok, err := named(v, p.TextDocument, p.Position)
	if err != nil {
		return nil, err
	}
	if ok {
		var list []target
		for _, o := range f.Definitions(a.own(), n) {
			list = append(list, target{a.uri(o.Path), o.Place, source.Place{File: o.Place.File, Span: o.Whole}})
		}
		return s.targets(v, n.Place, list), nil
	}
	return a.elsewhere(s, f, v.Offset(a.doc.File, p.Position)), nil
}

// elsewhere leads from what is no name.
func (a *around) elsewhere(s *session, f *outline.Folder, offset int) any {
	tree := a.doc.Tree()
	for _, l := range outline.Links(tree) {
		to, ok := l.From(a.own())
		if !ok || offset < l.Place.Start || l.Place.End < offset {
			continue
		}
		doc, err := a.file(to)
		if err != nil {
			return nil
		}
		top := source.Place{File: doc.File, Span: source.Span{Start: doc.File.Start(), End: doc.File.Start()}}
		return s.targets(a.view, l.Place, []target{{a.uri(to), top, top}})
	}
	step, ok := outline.StepAt(tree, offset)
	if !ok {
		return nil
	}
	var list []target
	for _, o := range f.Definitions(a.own(), step.Process) {
		if at, ok := outline.StepOf(f.Tree(o.Path), o.Text, step.Word, step.Number); ok {
			list = append(list, target{a.uri(o.Path), at, at})
		}
	}
	return s.targets(a.view, step.Place, list)
}

// target is where something leads: to words, and to all that belongs to them.
type target struct {
	uri   string
	words source.Place
	whole source.Place
}

// targets are where a place leads, as the editor takes it.
func (s *session) targets(v *desk.View, from source.Place, list []target) any {
	if len(list) == 0 {
		return nil
	}
	if !s.can().TextDocument.Definition.LinkSupport {
		plain := make([]wire.Location, len(list))
		for i, t := range list {
			plain[i] = wire.Location{URI: t.uri, Range: v.Range(t.words.File, t.words.Span)}
		}
		return plain
	}
	origin := v.Range(from.File, from.Span)
	links := make([]wire.LocationLink, len(list))
	for i, t := range list {
		links[i] = wire.LocationLink{OriginSelectionRange: &origin, TargetURI: t.uri, TargetRange: v.Range(t.whole.File, t.whole.Span), TargetSelectionRange: v.Range(t.words.File, t.words.Span)}
	}
	return links
}

// references lists where the same thing is named, in all files around.
func references(_ context.Context, _ *session, v *desk.View, p wire.ReferenceParams) ([]wire.Location, error) {
	a, f, n, ok, err := named(v, p.TextDocument, p.Position)
	if err != nil || !ok {
		return nil, err
	}
	list := []wire.Location{}
	for _, o := range f.Same(a.own(), n) {
		if !o.Defines || p.Context.IncludeDeclaration {
			list = append(list, a.location(o))
		}
	}
	return list, nil
}

// Kinds of a place that is made to stand out.
const (
	placeRead    = 2
	placeWritten = 3
)

// documentHighlight lists those of the document alone: it is asked for wherever the cursor goes, and looks at no other
// file.
func documentHighlight(_ context.Context, _ *session, v *desk.View, p wire.DocumentHighlightParams) ([]wire.DocumentHighlight, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	var list []wire.DocumentHighlight
	offset := v.Offset(doc.File, p.Position)
	names := outline.Names(doc.Tree())
	for _, at := range names {
		if offset < at.Place.Start || at.Place.End < offset {
			continue
		}
		for _, n := range names {
			if n.Text != at.Text || !n.May(at.Kind) && !at.May(n.Kind) {
				continue
			}
			h := wire.DocumentHighlight{Range: v.Range(doc.File, n.Inner), Kind: placeRead}
			if n.Defines {
				h.Kind = placeWritten
			}
			list = append(list, h)
		}
		break
	}
	return list, nil
}
