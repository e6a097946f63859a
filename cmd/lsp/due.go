package lsp

import (
	"context"
	"path/filepath"
	"slices"
	"sync"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
)

// folders are the folders of the editor as somebody at a bucket sees them: by the files on disk, for what
// is not saved was not done. They stay open, since what was found of a file is kept with them.
type folders struct {
	mu   sync.Mutex
	open map[string]*folder.Folder
}

// at opens a folder, or gives the one that is open.
func (f *folders) at(path string, o folder.Options) (*folder.Folder, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if d := f.open[path]; d != nil {
		return d, nil
	}
	d, err := folder.Open(path, o)
	if err != nil {
		return nil, err
	}
	if f.open == nil {
		f.open = map[string]*folder.Folder{}
	}
	f.open[path] = d
	return d, nil
}

// close lets go of all folders.
func (f *folders) close() {
	f.mu.Lock()
	defer f.mu.Unlock()
	for _, d := range f.open {
		_ = d.Close() // nothing was written
	}
	f.open = nil
}

// due lists what is late and what is next in the folders of the editor. A folder that cannot be read is
// left out, with a line in the log.
func due(ctx context.Context, s *session, v *desk.View, _ wire.DueParams) ([]wire.Due, error) {
	list, now := []wire.Due{}, s.now()
	for _, path := range v.Folders() {
		d, err := s.folders.at(path, folder.Options{Clock: s.options.Clock, Cache: s.options.Cache})
		if err != nil {
			s.say("%v", err)
			continue
		}
		state, err := d.Look(ctx, now)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			s.say("%v", err)
			continue
		}
		files := map[folder.ID]string{}
		for _, b := range state.Underway {
			files[b.ID] = filepath.Join(path, filepath.FromSlash(b.File))
		}
		for _, x := range state.Due {
			list = append(list, wire.Due{Text: words.Joined(", ", x.Says, x.Expected), Time: x.When, Left: x.Left, At: x.At,
				Late: x.Late, Night: x.Night, Batch: x.Name, URI: v.URI(files[x.Batch])})
		}
	}
	slices.SortStableFunc(list, func(a, b wire.Due) int { return a.At.Compare(b.At) })
	return list, nil
}
