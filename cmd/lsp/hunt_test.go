package lsp

import (
	"bytes"
	"context"
	"io"
	"io/fs"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/recall"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/source/spoil"
	"maltwright/lang/syntax"
)

// hunt is somebody who types whatever comes into a folder of files, and a second reckoner: the texts as the editor
// has them, and what a server that has just begun says of them.
type hunt struct {
	*typist.Typist
	rnd   *rand.Rand
	s     *session // of the server
	log   *quietLog
	enc   source.Encoding
	names []string
	first map[string]string // the texts as they were
	disk  map[string]string
	open  map[string]string // as the editor has them
	said  []string          // what was done last
	typed int               // changes
}

// quietLog is what the server says of what breaks.
type quietLog struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *quietLog) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *quietLog) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// Whatever is typed, the server has the same text, the same statements and the same findings as one that reads all
// of it anew, and it answers everything that is asked meanwhile.
func TestAnyEditsLeaveWhatAReadingFromNothingFinds(t *testing.T) {
	edits := 60
	if golden.Long() {
		edits = 250 // a million with the seeds below
	}
	for seed := range spoil.Seeds(6, 4000) {
		h := newHunt(t, seed, `{"forecast":false}`, time.Hour)
		atOnce := 1 // notifications before it is looked at what has come of them: with more, a check is overtaken
		if seed%4 != 0 {
			atOnce = 8
		}
		for h.typed < edits {
			for range 1 + h.rnd.IntN(atOnce) {
				h.step()
			}
			if h.rnd.IntN(4) == 0 {
				h.ask()
			}
			h.compare(check.Options{NoForecast: true})
		}
		h.end()
	}
}

// The same with forecasts: once it is quiet their findings are those of a forecast from nothing.
func TestAnyEditsLeaveWhatAForecastFromNothingFinds(t *testing.T) {
	for seed := range spoil.Seeds(2, 400) {
		h := newHunt(t, seed, `{}`, time.Millisecond)
		for range 12 {
			for range h.rnd.IntN(6) {
				h.step()
			}
			h.step()
			if h.rnd.IntN(3) == 0 {
				h.ask()
			}
			h.compare(check.Options{})
		}
		h.end()
	}
}

func newHunt(t *testing.T, seed uint64, settings string, quiet time.Duration) *hunt {
	h := &hunt{rnd: spoil.Random(seed), log: &quietLog{}, first: map[string]string{}, disk: map[string]string{}, open: map[string]string{}}
	var files []string
	for name, text := range huntIn(t, seed) {
		if h.first[name] = text; seed%3 == 1 {
			h.first[name] = strings.ReplaceAll(text, "\n", "\r\n")
		}
		files = append(files, name, h.first[name])
		h.names, h.disk[name] = append(h.names, name), h.first[name]
	}
	slices.Sort(h.names)
	came := make(chan *session, 1)
	serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
		s := newSession(out, Options{Err: h.log, Quiet: quiet, Look: time.Hour, Members: 10}.whole())
		came <- s
		return s.serve(ctx, in)
	}
	counts := []string{"utf-16", "utf-16", "utf-8", "utf-32"}[h.rnd.IntN(4)]
	h.Typist = typist.Sit(t, serve, func(p *wire.InitializeParams) {
		p.InitializationOptions = []byte(settings)
		p.Capabilities.General.PositionEncodings = []string{counts}
	}, files...)
	h.s = <-came
	h.enc = map[string]source.Encoding{"utf-8": source.Bytes, "utf-16": source.UTF16, "utf-32": source.Characters}[counts]
	t.Logf("seed %d, %s", seed, counts)
	h.openAs("pale.malt", h.first["pale.malt"])
	return h
}

// end closes everything, and holds that nothing broke.
func (h *hunt) end() {
	for name := range h.open {
		h.Close(name)
	}
	h.Ask("shutdown", nil, nil)
	require.Empty(h.T, h.log.String(), h.told())
}

func (h *hunt) told() string { return strings.Join(h.said, "\n") }

func (h *hunt) note(what string) {
	if h.said = append(h.said, what); len(h.said) > 12 {
		h.said = h.said[1:]
	}
}

// texts reads the files as a folder has them that holds what the editor has.
type texts struct{ *hunt }

func (x texts) Read(at string) ([]byte, error) {
	if text, ok := x.open[at]; ok {
		return []byte(text), nil
	}
	if text, ok := x.disk[at]; ok {
		return []byte(text), nil
	}
	return nil, &fs.PathError{Op: "open", Path: at, Err: fs.ErrNotExist}
}

// compare holds what the server has of each open file to what is found from nothing.
func (h *hunt) compare(o check.Options) {
	h.T.Helper()
	again := newSession(io.Discard, Options{}.whole())
	again.client = h.s.can()
	again.desk.Count(h.enc)
	again.desk.SetFolders([]string{h.Folder})
	for name, text := range h.open {
		again.desk.Open(h.URI(name), 0, text)
	}
	view := again.desk.Now()
	for _, name := range slices.Sorted(mapsKeys(h.open)) {
		text := h.open[name]
		doc, err := view.Doc(h.Path(name))
		require.NoError(h.T, err)
		in := folder.File{Name: doc.File.Name(), Path: doc.Path, Text: []byte(text), Root: h.Folder, Dir: "."}
		want := again.diagnostics(view, doc, check.File(in.Name, in.Text, ".", in.Past(texts{h}, recall.Known{}), o).Findings)
		var got []wire.Diagnostic
		if !h.Within(typist.Patience, func() bool {
			list, now := h.Shown(name)
			got = list
			return now && reflect.DeepEqual(plain(got), plain(want))
		}) {
			require.Equal(h.T, plain(want), plain(got), "the findings of %s are others\n%s\n%s", name, h.told(), h.log)
		}
		is, err := h.s.desk.Now().Doc(h.Path(name))
		require.NoError(h.T, err)
		require.Equal(h.T, text, string(is.Text()), "%s\n%s", name, h.told())
		tree, _ := syntax.Parse(source.New(h.Path(name), []byte(text)))
		if text != "" && !reflect.DeepEqual(tree, is.Tree()) { // of a text without a byte one is nil
			require.Equal(h.T, tree, is.Tree(), "the statements of %s are others\n%s", name, h.told())
		}
		for _, d := range got {
			h.inside(name, d.Range)
		}
	}
}

// plain are findings without what is told of the file on disk, and with data that can be compared.
func plain(list []wire.Diagnostic) []wire.Diagnostic {
	out := []wire.Diagnostic{}
	for _, d := range list {
		if strings.HasPrefix(d.Message, "the file has changed on disk") || strings.HasPrefix(d.Message, "this was saved over") {
			continue
		}
		if d.RelatedInformation == nil {
			d.RelatedInformation = []wire.DiagnosticRelatedInformation{}
		}
		if d.Tags == nil {
			d.Tags = []uint32{}
		}
		d.Data = append([]byte{}, d.Data...)
		out = append(out, d)
	}
	return out
}

// inside holds that a range lies within a text that the editor knows.
func (h *hunt) inside(name string, r wire.Range) {
	h.T.Helper()
	text, known := h.open[name]
	if !known {
		text = h.disk[name]
	}
	end := placeIn(text, len(text), h.enc)
	for _, p := range []wire.Position{r.Start, r.End} {
		require.True(h.T, p.Line < end.Line || p.Line == end.Line && p.Character <= end.Character, "%v lies behind %v, the end of %s\n%s", p, end, name, h.told())
		at := desk.Offset(source.New(name, []byte(text)), p, h.enc)
		require.Equal(h.T, p, placeIn(text, at, h.enc), "%v of %s is no place\n%s", p, name, h.told())
	}
	require.True(h.T, r.Start.Line < r.End.Line || r.Start.Line == r.End.Line && r.Start.Character <= r.End.Character, "%v of %s ends before it begins\n%s", r, name, h.told())
}

// nameOf is the file of the folder that an address names.
func (h *hunt) nameOf(uri string) string { return filepath.Base(desk.Path(uri)) }
