// Package rewrite puts a new text in the place of a file, so that at every moment
// either the old or the new one is there, whole, and nothing that another program of
// this kind has written is lost.
//
// How it works: a writer takes the lock of the file (lock.go), reads, makes the new text
// of what it has read, writes that beside the file, syncs it, looks once more whether the
// file still is what it was, and renames (replace.go). There is no way to write without
// the lock. What belongs to the file beside its text (keep.go) goes over to the new one;
// where that cannot be, the file is left as it is.
package rewrite

import (
	"bytes"
	"errors"
	"os"
	"time"
)

// Refusal is why a file is not written and what to do, in words for people.
type Refusal string

func (r Refusal) Error() string { return string(r) }

// Busy says that another held the lock for longer than is waited for.
type Busy string

func (b Busy) Error() string { return string(b) }

const (
	// ErrLink says that the path is a link: what it points at may lie anywhere, and is
	// not touched.
	ErrLink Refusal = "it is a link; give the file itself"
	// ErrChanged says that a program which asks for no lock keeps changing the file.
	ErrChanged Refusal = "it was changed by somebody else in the meantime"
)

// Options are how to wait and to write. The zero value is what a command wants, but for
// Waiting.
type Options struct {
	Waiting func()               // called once, when another has held the lock for Say
	Say     time.Duration        // 0: one second
	GiveUp  time.Duration        // how long to wait in all; 0: thirty seconds
	Sync    func(*os.File) error // makes a text last; nil: that of the file
	Create  bool                 // a file that is not there is made; its old text is empty
}

const (
	mostTries   = 5 // how often a file that another program keeps changing is read again
	defaultSay  = time.Second
	defaultQuit = 30 * time.Second
	maxBytes    = 4<<20 + 1 // of a text; see source.MaxBytes
)

// Edit replaces the text of a regular file by what change makes of it. Change is called
// under the lock, and again where a program that asks for no lock came between; it gives
// the text that it got for the file to be left alone. Its error is given back as it is.
// On any error the file is as it was and nothing is left beside it.
func Edit(path string, o Options, change func(old []byte) ([]byte, error)) error {
	if _, err := o.look(path); err != nil && !errors.Is(err, ErrChanged) { // before a lock is put beside it; who holds the lock may be renaming
		return err
	}
	release, err := o.lock(path)
	if err != nil {
		return err
	}
	defer release()
	sweep(path)
	for try := 1; ; try++ {
		if err = o.once(path, change); !errors.Is(err, ErrChanged) || try == mostTries {
			return err
		}
	}
}

func (o Options) once(path string, change func(old []byte) ([]byte, error)) error {
	was, err := o.look(path)
	if err != nil {
		return err
	}
	text, err := change(bytes.Clone(was.text))
	if err != nil || bytes.Equal(text, was.text) && was.info != nil {
		return err
	}
	return o.replace(path, was, text)
}
