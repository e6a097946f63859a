package lsp

import (
	"context"
	"encoding/json"
	"slices"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// encodings are what columns may be counted in, those that are taken first in front.
var encodings = []struct {
	name string
	is   source.Encoding
}{{"utf-8", source.Bytes}, {"utf-16", source.UTF16}, {"utf-32", source.Characters}}

// agreed takes the first of ours that an editor offers. UTF-16 is what every editor can.
func agreed(offered []string) (string, source.Encoding) {
	for _, e := range encodings {
		if slices.Contains(offered, e.name) {
			return e.name, e.is
		}
	}
	return "utf-16", source.UTF16
}

func initialize(_ context.Context, s *session, _ *desk.View, p wire.InitializeParams) (wire.InitializeResult, error) {
	name, enc := agreed(p.Capabilities.General.PositionEncodings)
	s.desk.Count(enc)
	s.desk.SetFolders(foldersOf(p))
	s.mu.Lock()
	s.client, s.stage = p.Capabilities, running
	s.set = s.set.with(p.InitializationOptions)
	s.mu.Unlock()
	c := wire.ServerCapabilities{
		PositionEncoding: name,
		TextDocumentSync: &wire.TextDocumentSyncOptions{OpenClose: true, Change: wire.SyncIncremental, WillSave: true, Save: &wire.SaveOptions{}},
		Workspace:        &wire.WorkspaceOptions{WorkspaceFolders: &wire.WorkspaceFoldersServerCapabilities{Supported: true, ChangeNotifications: true}},
	}
	if s.pulls() {
		c.DiagnosticProvider = &wire.DiagnosticOptions{Identifier: "maltwright", InterFileDependencies: true}
	}
	for _, m := range methods() {
		if m.offers != nil {
			m.offers(&c)
		}
	}
	if p.ProcessID != nil && *p.ProcessID > 0 {
		s.work.Go(func() { s.endWith(int(*p.ProcessID)) })
	}
	return wire.InitializeResult{Capabilities: c, ServerInfo: &wire.ServerInfo{Name: "maltwright", Version: s.options.Version}}, nil
}

// foldersOf are the folders that an editor has open: those that it lists, or the one that it began in.
func foldersOf(p wire.InitializeParams) []string {
	var list []string
	for _, f := range p.WorkspaceFolders {
		list = append(list, desk.Path(f.URI))
	}
	switch {
	case len(list) > 0:
	case p.RootURI != nil && *p.RootURI != "":
		list = append(list, desk.Path(*p.RootURI))
	case p.RootPath != nil && *p.RootPath != "":
		list = append(list, *p.RootPath)
	}
	return list
}

// initialized asks the editor to tell of files that come, change and go, where it can.
func initialized(s *session, _ json.RawMessage) error {
	if !s.can().Workspace.DidChangeWatchedFiles.DynamicRegistration {
		return nil
	}
	s.work.Go(func() {
		watch := wire.DidChangeWatchedFilesRegistrationOptions{Watchers: []wire.FileSystemWatcher{{GlobPattern: "**/*" + folder.Extension}}}
		r := wire.RegistrationParams{Registrations: []wire.Registration{{ID: "files", Method: "workspace/didChangeWatchedFiles", RegisterOptions: watch}}}
		if err := s.ask(s.ctx, "client/registerCapability", r, nil); err != nil && s.ctx.Err() == nil {
			s.say("the editor does not tell of files that change: %v", err)
		}
	})
	return nil
}

func shutdown(_ context.Context, s *session, _ *desk.View, _ json.RawMessage) (any, error) {
	s.goTo(shut)
	return nil, nil
}

func exit(s *session, _ json.RawMessage) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.clean = s.stage == shut
	s.stage = left
	return nil
}

// endWith ends the session when a process has ended.
func (s *session) endWith(process int) {
	tick := time.NewTicker(s.options.Look)
	defer tick.Stop()
	for {
		select {
		case <-tick.C:
			if !lives(process) {
				s.leave()
				return
			}
		case <-s.ctx.Done():
			return
		}
	}
}

func cancelRequest(s *session, p wire.CancelParams) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if cancel := s.running[p.ID]; cancel != nil {
		cancel()
	}
	return nil
}

// settings are what somebody can switch.
type settings struct {
	Hints struct {
		Ends     bool `json:"ends"`
		Gates    bool `json:"gates"`
		Readings bool `json:"readings"`
	} `json:"hints"`
	Lenses   bool   `json:"lenses"`
	Forecast bool   `json:"forecast"`
	Show     bool   `json:"show"`  // what is drawn is shown by the editor
	Start    string `json:"start"` // when the first soak of a process begins, as people say it; "" where it is not known
}

var usualSettings = func() settings {
	s := settings{Lenses: true, Forecast: true, Show: true}
	s.Hints.Ends, s.Hints.Gates, s.Hints.Readings = true, true, true
	return s
}()

// with gives the settings with those that are said. They may stand in a part of the name maltwright,
// as editors keep them. What does not read is passed over.
func (set settings) with(raw json.RawMessage) settings {
	var part struct {
		Maltwright json.RawMessage `json:"maltwright"`
	}
	if json.Unmarshal(raw, &part) == nil && len(part.Maltwright) > 0 {
		raw = part.Maltwright
	}
	said := set
	if len(raw) == 0 || json.Unmarshal(raw, &said) != nil {
		return set
	}
	return said
}
