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
	"maltwright/cmd/words"
	"maltwright/lang/source"
)

// fixAll is the kind of the action that makes all certain repairs.
const fixAll = wire.ActionFixAll + ".maltwright"

var codeActionOptions = &wire.CodeActionOptions{CodeActionKinds: []string{wire.ActionQuickFix, wire.ActionRewrite, fixAll}, ResolveProvider: true}

// kindsOfDeeds are the deeds as an editor sorts them.
var kindsOfDeeds = map[margin.Deed]string{margin.Repair: wire.ActionQuickFix, margin.Offer: wire.ActionQuickFix, margin.Accept: wire.ActionQuickFix, margin.Gate: wire.ActionQuickFix, margin.Convert: wire.ActionRewrite}

// codeAction answers with what can be done about a range.
func codeAction(ctx context.Context, s *session, v *desk.View, p wire.CodeActionParams) ([]wire.CodeAction, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := []wire.CodeAction{}
	if x := s.putInAction(v, doc); x != nil && wants(p.Context.Only, wire.ActionQuickFix) {
		list = append(list, *x)
	}
	r := s.reportedSoFar(ctx, v, doc)
	if wants(p.Context.Only, wire.ActionQuickFix) || wants(p.Context.Only, wire.ActionRewrite) {
		for _, x := range margin.Actions(ctx, caseOf(v, doc), doc.Tree(), r, v.Span(doc.File, p.Range)) {
			if wants(p.Context.Only, kindsOfDeeds[x.Deed]) {
				list = append(list, actionOf(s, v, doc, x, p.Context.Diagnostics))
			}
		}
	}
	if n := repairs(r, doc); n > 1 && wants(p.Context.Only, fixAll) || n > 0 && len(p.Context.Only) > 0 && wants(p.Context.Only, fixAll) {
		all, err := s.allRepairs(ctx, v, doc, n)
		if err != nil {
			return nil, err
		}
		if all != nil {
			list = append(list, *all)
		}
	}
	return list, nil
}

// wants tells whether a kind is among those that are asked for: all where none is named, and each with those below it.
func wants(only []string, kind string) bool {
	return len(only) == 0 || slices.ContainsFunc(only, func(o string) bool { return o == "" || kind == o || strings.HasPrefix(kind, o+".") })
}

// reportedSoFar is the report of a document with its forecasts, or with what is found in its words alone
// where no forecast comes soon.
func (s *session) reportedSoFar(ctx context.Context, v *desk.View, doc *desk.Doc) check.Report {
	if is := s.margins.await(ctx, v, doc); is != nil {
		return is.report
	}
	words, err := v.Checked(doc.Path)
	if err != nil {
		return check.Report{}
	}
	return check.Report{House: words.House, Findings: words.Findings, NotJudged: words.NotJudged}
}

func actionOf(s *session, v *desk.View, doc *desk.Doc, x margin.Action, told []wire.Diagnostic) wire.CodeAction {
	var edits []wire.TextEdit
	for _, e := range x.Edits {
		edits = append(edits, wire.TextEdit{Range: v.Range(doc.File, e.Place.Span), NewText: e.New})
	}
	a := wire.CodeAction{Title: x.Title, Kind: kindsOfDeeds[x.Deed], IsPreferred: x.Deed == margin.Repair, Edit: s.edited(v, doc, edits)}
	if x.Of != nil {
		for _, d := range told {
			if d.Code == x.Of.Rule && overlap(v.Span(doc.File, d.Range), x.Of.Place.Span) {
				a.Diagnostics = append(a.Diagnostics, d)
			}
		}
	}
	return a
}

func overlap(a, b source.Span) bool { return a.Start <= b.End && b.Start <= a.End }

// edited is an edit of one document, of just this version where the editor keeps to that.
func (s *session) edited(v *desk.View, doc *desk.Doc, edits []wire.TextEdit) *wire.WorkspaceEdit {
	uri := v.URI(doc.Path)
	if !s.can().Workspace.WorkspaceEdit.DocumentChanges {
		return &wire.WorkspaceEdit{Changes: map[string][]wire.TextEdit{uri: edits}}
	}
	of := wire.OptionalVersionedTextDocumentIdentifier{URI: uri}
	if doc.Open {
		version := doc.Version
		of.Version = &version
	}
	return &wire.WorkspaceEdit{DocumentChanges: []wire.TextDocumentEdit{{TextDocument: of, Edits: edits}}}
}

// repairs counts the findings of a document that have a certain repair.
func repairs(r check.Report, doc *desk.Doc) (n int) {
	for _, f := range r.Findings {
		if len(f.Fixes) > 0 && f.Place.File != nil && f.Place.File.Name() == doc.File.Name() {
			n++
		}
	}
	return n
}

// allRepairs makes all certain repairs at once. Where the editor fetches edits later, the action says only of what.
func (s *session) allRepairs(ctx context.Context, v *desk.View, doc *desk.Doc, n int) (*wire.CodeAction, error) {
	a := wire.CodeAction{Title: "make " + words.Plural(n, "certain repair"), Kind: fixAll}
	if can := s.can().TextDocument.CodeAction.ResolveSupport; can != nil && slices.Contains(can.Properties, "edit") {
		raw, err := json.Marshal(wire.TextDocumentIdentifier{URI: v.URI(doc.Path)})
		a.Data = raw
		return &a, err
	}
	a.Edit = s.mended(ctx, v, doc)
	if a.Edit == nil {
		return nil, ctx.Err()
	}
	return &a, nil
}

// mended is the edit that makes all certain repairs; nil where none can be made.
func (s *session) mended(ctx context.Context, v *desk.View, doc *desk.Doc) *wire.WorkspaceEdit {
	text, ok := margin.Mended(ctx, caseOf(v, doc))
	if !ok {
		return nil
	}
	e := margin.Between(doc.File, text)
	return s.edited(v, doc, []wire.TextEdit{{Range: v.Range(doc.File, e.Place.Span), NewText: e.New}})
}

// resolveAction fills in the edits of an action.
func resolveAction(ctx context.Context, s *session, v *desk.View, a wire.CodeAction) (wire.CodeAction, error) {
	var of wire.TextDocumentIdentifier
	if a.Kind != fixAll || json.Unmarshal(a.Data, &of) != nil {
		return a, nil
	}
	doc, err := v.At(of.URI)
	if err != nil {
		return a, err
	}
	if a.Edit = s.mended(ctx, v, doc); a.Edit == nil && ctx.Err() == nil {
		return a, fmt.Errorf("no certain repair can be made any more")
	}
	return a, nil
}
