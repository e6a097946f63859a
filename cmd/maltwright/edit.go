package main

import (
	"errors"
	"fmt"
	"io/fs"

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
	waiting := o.Waiting
	o.Waiting = func() {
		w.aside(fmt.Sprintf("waiting for another maltwright that is writing %s", words.Safe(name)))
		if waiting != nil {
			waiting()
		}
	}
	var own error
	err := rewrite.Edit(path, o, func(old []byte) (out []byte, _ error) {
		out, own = change(old)
		return out, own
	})
	if own != nil {
		return own
	}
	if err != nil {
		return failed("%s: %s", name, rewriteError(err))
	}
	return nil
}

func rewriteError(err error) string {
	var refusal rewrite.Refusal
	switch {
	case errors.As(err, &refusal):
		return refusal.Error()
	case errors.Is(err, fs.ErrPermission):
		return "nothing may be written in its folder"
	}
	return plainError(err)
}
