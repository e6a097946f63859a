package lsp

import (
	"context"
	"encoding/json"
	"path/filepath"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
)

// dueItem is something that is to be done at a batch, for a status line.
type dueItem struct {
	Text  string `json:"text"`  // what to do: drain, weigh
	Time  string `json:"time"`  // when, seen from now: at 23:00, on Sat at 06:30
	At    string `json:"at"`    // the same as 2026-03-06T23:00:00+01:00
	Left  string `json:"left"`  // until then, or since then
	Batch string `json:"batch"` // its name
	URI   string `json:"uri"`   // of its record
	Path  string `json:"path"`
	Late  bool   `json:"late"`
}

// due answers with what is to be done next at each batch under way in the folders, and with what is late; the
// earliest first. It goes by the files on disk.
func due(ctx context.Context, s *session, v *desk.View, _ json.RawMessage) ([]dueItem, error) {
	list := []dueItem{}
	for _, at := range v.Folders() {
		d := s.margins.folder(at)
		if d == nil {
			continue // it is not there
		}
		state, err := d.Look(ctx, s.now())
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			continue
		}
		files := map[folder.ID]string{}
		for _, b := range state.Underway {
			files[b.ID] = filepath.Join(at, filepath.FromSlash(b.File))
		}
		for _, x := range state.Due {
			path := files[x.Batch]
			list = append(list, dueItem{x.Says, x.When, x.At.Format("2006-01-02T15:04:05Z07:00"), x.Left, x.Name, v.URI(path), path, x.Late})
		}
	}
	return list, nil
}

// folder is a folder that stays open, so that what is known of its batches is not reckoned anew each time; nil where
// it cannot be opened.
func (m *margins) folder(at string) *folder.Folder {
	m.mu.Lock()
	defer m.mu.Unlock()
	if d := m.folders[at]; d != nil {
		return d
	}
	d, err := folder.Open(at, folder.Options{Clock: m.s.options.Clock})
	if err != nil {
		return nil
	}
	m.folders[at] = d
	return d
}

// close lets go of the folders.
func (m *margins) close() {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, d := range m.folders {
		_ = d.Close()
	}
	clear(m.folders)
}
