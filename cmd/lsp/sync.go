package lsp

import (
	"encoding/json"
	"fmt"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

func didOpen(s *session, p wire.DidOpenTextDocumentParams) error {
	d := p.TextDocument
	s.desk.Open(d.URI, d.Version, d.Text)
	s.judge.changed(desk.Path(d.URI))
	return nil
}

func didChange(s *session, p wire.DidChangeTextDocumentParams) error {
	d := p.TextDocument
	if !s.desk.Change(d.URI, d.Version, p.ContentChanges) {
		return fmt.Errorf("%s is not open", d.URI)
	}
	s.judge.changed(desk.Path(d.URI))
	return nil
}

func didSave(s *session, p wire.DidSaveTextDocumentParams) error {
	s.saves.written(s.desk, p.TextDocument.URI)
	s.judge.changed(desk.Path(p.TextDocument.URI))
	return nil
}

func didClose(s *session, p wire.DidCloseTextDocumentParams) error {
	s.desk.Close(p.TextDocument.URI)
	s.saves.closed(desk.Path(p.TextDocument.URI))
	s.judge.closed(desk.Path(p.TextDocument.URI), p.TextDocument.URI)
	return nil
}

func didChangeFolders(s *session, p wire.DidChangeWorkspaceFoldersParams) error {
	var added, removed []string
	for _, f := range p.Event.Added {
		added = append(added, desk.Path(f.URI))
	}
	for _, f := range p.Event.Removed {
		removed = append(removed, desk.Path(f.URI))
	}
	s.desk.ChangeFolders(added, removed)
	s.judge.changed("")
	return nil
}

func didChangeWatched(s *session, _ wire.DidChangeWatchedFilesParams) error {
	s.judge.changed("")
	return nil
}

// didChangeConfiguration takes settings; an editor that keeps them to itself until asked is asked.
func didChangeConfiguration(s *session, p wire.DidChangeConfigurationParams) error {
	if s.can().Workspace.Configuration && (len(p.Settings) == 0 || string(p.Settings) == "null") {
		s.work.Go(func() {
			s.asking.Lock()
			defer s.asking.Unlock()
			defer s.judge.recovered("the settings")
			var got []json.RawMessage
			err := s.ask(s.ctx, "workspace/configuration", wire.ConfigurationParams{Items: []wire.ConfigurationItem{{Section: "maltwright"}}}, &got)
			if err == nil && len(got) == 1 {
				s.configure(got[0])
			}
		})
		return nil
	}
	s.configure(p.Settings)
	return nil
}

func (s *session) configure(raw json.RawMessage) {
	s.mu.Lock()
	s.set = s.set.with(raw)
	forecast := s.set.Forecast
	s.mu.Unlock()
	if !forecast {
		s.judge.unforesee()
	}
	s.judge.changed("")
	s.margins.reset()
	s.refresh()
}
