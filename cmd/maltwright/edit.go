package main

import (
	"errors"
	"fmt"

	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/rewrite"
	"maltwright/cmd/words"
)

// edit puts what change makes of the text of a file in its place, under the lock of the
// file: the one way in which any command writes to a file that was there before. The text
// that change gets may be another than the command has read. An error of change is given
// back as it is; one of the writing with the name in front of it.
func (w World) edit(name, path string, change func(old []byte) ([]byte, error)) error {
	return w.editWith(w.writing, name, path, change)
}

func (w World) editWith(o rewrite.Options, name, path string, change func(old []byte) ([]byte, error)) error {
	return exitOf(folder.Edit(w.telling(o, name), name, path, change))
}

// telling says aloud when a file is waited for.
func (w World) telling(o rewrite.Options, name string) rewrite.Options {
	waiting := o.Waiting
	o.Waiting = func() {
		w.aside(fmt.Sprintf("waiting for another maltwright that is writing %s", words.Safe(name)))
		if waiting != nil {
			waiting()
		}
	}
	return o
}

// clerk notes in the record of a file.
func (w World) clerk(in input) folder.Clerk {
	return folder.Clerk{Options: folder.Options{Clock: w.now, Cache: w.Cache, Order: w.reader(true).Order, Writing: w.telling(w.writing, in.name)}}
}

// exitOf gives an error of a folder its exit code.
func exitOf(err error) error {
	var misuse journal.Misuse
	var wrong *folder.Wrong
	var refused *folder.Refused
	var busy *folder.Busy
	var lost *folder.Failed
	switch {
	case errors.As(err, &misuse):
		return usage("%v", err)
	case errors.As(err, &wrong) && wrong.Given != "":
		return usage("--%s %s", wrong.Field, wrong)
	case errors.As(err, &wrong):
		return usage("--%s: %s", wrong.Field, wrong)
	case errors.As(err, &refused):
		return failure{ExitFindings, err}
	case errors.As(err, &busy), errors.As(err, &lost):
		return failure{ExitFailed, err}
	}
	return err
}
