package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/margin"
)

// The commands. Each takes the address of a document, and what more it needs.
const (
	commandChart     = "maltwright.chart"     // and the name of a process or batch: draws it, and answers with the address of the SVG
	commandSheet     = "maltwright.sheet"     // the same of the sheet by the bucket, a PDF
	commandOtherwise = "maltwright.otherwise" // and a position: says what one more and one less of the number there changes
)

var commands = map[string]func(context.Context, *session, *desk.View, *desk.Doc, []json.RawMessage) (any, error){
	commandChart: func(ctx context.Context, s *session, v *desk.View, d *desk.Doc, more []json.RawMessage) (any, error) {
		return s.picture(ctx, v, d, more, ".svg")
	},
	commandSheet: func(ctx context.Context, s *session, v *desk.View, d *desk.Doc, more []json.RawMessage) (any, error) {
		return s.picture(ctx, v, d, more, ".pdf")
	},
	commandOtherwise: otherwise,
}

func commandNames() []string { return slices.Sorted(maps.Keys(commands)) }

func wrong(format string, args ...any) error {
	return &wire.Error{Code: wire.InvalidParams, Message: fmt.Sprintf(format, args...)}
}

func executeCommand(ctx context.Context, s *session, v *desk.View, p wire.ExecuteCommandParams) (any, error) {
	run := commands[p.Command]
	if run == nil {
		return nil, wrong("%q is no command; there are %s", p.Command, strings.Join(commandNames(), ", "))
	}
	var uri string
	if len(p.Arguments) == 0 || json.Unmarshal(p.Arguments[0], &uri) != nil {
		return nil, wrong("%s takes the address of a document", p.Command)
	}
	doc, err := v.At(uri)
	if err != nil {
		return nil, wrong("%s cannot be read: %v", uri, err)
	}
	return run(ctx, s, v, doc, p.Arguments[1:])
}

// reported is the report of a document as it is in a view, with its forecasts: that of the judge, or where that has
// none one that is made for it.
func (s *session) reported(ctx context.Context, v *desk.View, doc *desk.Doc) check.Report {
	if is := s.margins.await(ctx, v, doc); is != nil {
		s.margins.mu.Lock()
		defer s.margins.mu.Unlock()
		return is.report
	}
	return v.Check(doc, check.Options{Context: ctx})
}

// picture draws a process or a batch into the folder of what is kept, has the editor show it where that is
// set and it can, and answers with its address.
func (s *session) picture(ctx context.Context, v *desk.View, doc *desk.Doc, more []json.RawMessage, ending string) (any, error) {
	var name string
	if len(more) > 0 && json.Unmarshal(more[0], &name) != nil {
		return nil, wrong("the second argument is the name of a process or a batch")
	}
	drawn, err := margin.DrawnOf(s.reported(ctx, v, doc), name)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if ending == ".svg" {
		err = drawn.Chart(ctx, &out, s.now())
	} else {
		err = drawn.Sheet(ctx, &out, filepath.Base(doc.Path), s.now())
	}
	if err != nil {
		return nil, err
	}
	at, err := s.put(doc.Path, drawn.Name, ending, out.Bytes())
	if err != nil {
		return nil, err
	}
	uri := desk.URI(at)
	if show := s.can().Window.ShowDocument; show != nil && show.Support && s.settings().Show {
		s.work.Go(func() {
			_ = s.ask(s.ctx, "window/showDocument", wire.ShowDocumentParams{URI: uri, External: true}, nil)
		})
	}
	return uri, nil
}

// otherwise says what one more and one less of a number changes, however long that takes, and shows it.
func otherwise(ctx context.Context, s *session, v *desk.View, doc *desk.Doc, more []json.RawMessage) (any, error) {
	var at wire.Position
	if len(more) == 0 || json.Unmarshal(more[0], &at) != nil {
		return nil, wrong("%s takes a position", commandOtherwise)
	}
	o := margin.OtherwiseAt(ctx, caseOf(v, doc), doc.Tree(), s.reported(ctx, v, doc), v.Offset(doc.File, at), 0)
	if o == nil {
		return nil, wrong("there is no number of a forecast process there")
	}
	text := strings.Join(o.Lines(), "\n")
	if o.Dear {
		text = "what another number changes takes too many steps of the model"
	}
	s.tell("window/showMessage", wire.ShowMessageParams{Type: wire.MessageInfo, Message: text})
	return text, nil
}

// caseOf is a document as it is checked.
func caseOf(v *desk.View, doc *desk.Doc) margin.Case {
	return margin.Case{Name: doc.File.Name(), Text: doc.Text(), Dir: ".", Reader: v.Reader(doc.Dir())}
}

// beside is what a forecast has at a place of a document, and what one more or less of the number there changes: a line
// each, for the hover. It does not wait for a forecast.
func (s *session) beside(ctx context.Context, v *desk.View, doc *desk.Doc, offset int) []string {
	words, err := v.Checked(doc.Path)
	if err != nil || !doc.Open || !s.settings().Forecast {
		return nil
	}
	s.margins.mu.Lock()
	is := s.margins.docs[doc.Path]
	if is == nil || is.words != words {
		s.margins.mu.Unlock()
		return nil
	}
	lines, r := slices.Clone(is.told.At(offset)), is.report
	s.margins.mu.Unlock()
	o := margin.OtherwiseAt(ctx, caseOf(v, doc), doc.Tree(), r, offset, margin.Steps)
	switch {
	case o == nil:
	case o.Dear:
		lines = append(lines, "what another number than "+o.Text+" changes takes long to reckon: the command "+commandOtherwise+" says it")
	default:
		lines = append(lines, o.Lines()...)
	}
	return lines
}
