package main

import (
	"path/filepath"

	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// older is what older batches taught, and where the files lie that define what it names.
type older struct {
	house *model.Learnt // nil for nothing
	files map[*source.File]string
}

// name is that of the block, "" for none.
func (o older) name() string {
	if o.house == nil {
		return ""
	}
	return o.house.Name
}

// older reads the house block of --from.
func (c Learn) older(w *World) (older, error) {
	if c.From == "" {
		return older{}, nil
	}
	files, err := w.gather([]string{c.From}, c.Root)
	if err != nil {
		return older{}, err
	}
	if len(files) != 1 {
		return older{}, usage("--from %s: it takes one file, that of the house block", words.Safe(c.From))
	}
	in := files[0]
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return older{}, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	h, found := read.Load(in.name, in.text, in.dir, in.past(root, nil))
	if faults := atLeast(found, finding.Fault); len(faults) > 0 {
		_ = text.Findings(w.Err, faults, text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
		return older{}, failure{ExitFindings, errFromUnread(in.name)}
	}
	if h.Learnt == nil {
		return older{}, usage("--from %s: there is no house block in it; maltwright learn --format malt writes one", words.Safe(c.From))
	}
	o := older{h.Learnt, map[*source.File]string{}}
	for _, f := range h.Files {
		if at := below(in, root, f); at != "" {
			o.files[f] = filepath.Join(in.root, filepath.FromSlash(at))
		}
	}
	return o, nil
}

// errFromUnread says that the file of --from must be put right.
type errFromUnread string

func (e errFromUnread) Error() string {
	return "--from " + words.Safe(string(e)) + ": put it right first, or leave --from out and learn from all batches"
}
