package rewrite

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"maltwright/lang/regular"
)

// state is a file as it was looked at. Where it may be made and is not there, info is
// nil.
type state struct {
	info  os.FileInfo
	text  []byte
	extra belongings
}

// look reads a file, and refuses one that is not to be replaced.
func (o Options) look(path string) (state, error) {
	info, err := os.Lstat(path)
	switch {
	case o.Create && errors.Is(err, fs.ErrNotExist):
		return state{}, nil
	case err != nil:
		return state{}, err
	case info.Mode()&os.ModeSymlink != 0:
		return state{}, ErrLink
	case !info.Mode().IsRegular():
		return state{}, Refusal("it is not a regular file")
	case info.Mode()&0o200 == 0: // the superuser could, and should not
		return state{}, Refusal(fmt.Sprintf("it may not be written, not even by its owner (mode %04o); if it is to be changed, let its owner write it first", info.Mode().Perm()))
	}
	f, err := regular.OpenFile(path, os.O_RDWR)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return state{}, Refusal("it may not be written by you; ask its owner, or work on a copy")
	case err != nil:
		return state{}, err
	}
	defer f.Close()
	was := state{}
	if was.info, err = f.Stat(); err != nil {
		return state{}, err
	}
	if !os.SameFile(info, was.info) {
		return state{}, ErrChanged
	}
	if was.text, err = io.ReadAll(io.LimitReader(f, maxBytes)); err != nil {
		return state{}, err
	}
	if len(was.text) == maxBytes {
		return state{}, Refusal("it is too large")
	}
	was.extra, err = belongingsOf(f, was.info)
	return was, err
}

// same tells whether the file still is what it was.
func (o Options) same(path string, was state) error {
	now, err := o.look(path)
	switch {
	case err != nil:
		return err
	case (was.info == nil) != (now.info == nil), was.info != nil && !os.SameFile(was.info, now.info), !bytes.Equal(was.text, now.text):
		return ErrChanged
	}
	return nil
}

// replace writes the text beside the file, and puts it in its place if that still is
// what it was.
func (o Options) replace(path string, was state, text []byte) (err error) {
	temp, err := o.create(path, was.info == nil)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			temp.Close()
			os.Remove(temp.Name())
		}
	}()
	if _, err = temp.Write(text); err != nil {
		return err
	}
	if was.info != nil {
		if err = was.extra.give(temp); err != nil {
			return err
		}
		if err = temp.Chmod(was.info.Mode() & modeKept); err != nil {
			return err
		}
	}
	sync := o.Sync
	if sync == nil {
		sync = (*os.File).Sync
	}
	if err = sync(temp); err != nil {
		return err
	}
	if err = temp.Close(); err != nil {
		return err
	}
	if err = o.same(path, was); err != nil {
		return err
	}
	if err = putInPlace(temp.Name(), path, was.info == nil); err != nil {
		return err
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// putInPlace renames. A file that was made in the meantime is not written over, where the
// file system has names enough to tell.
func putInPlace(temp, path string, fresh bool) error {
	if !fresh {
		return os.Rename(temp, path)
	}
	err := os.Link(temp, path)
	switch {
	case err == nil:
		return os.Remove(temp)
	case errors.Is(err, fs.ErrExist):
		return ErrChanged
	}
	return os.Rename(temp, path)
}

const modeKept = os.ModePerm | os.ModeSetuid | os.ModeSetgid | os.ModeSticky

// create opens a new file beside the one at the path. It is for nobody else's eyes until
// it has the mode of that one; where there is none it has the mode of any new file.
func (o Options) create(path string, fresh bool) (*os.File, error) {
	temp, err := os.CreateTemp(filepath.Dir(path), temporary(path)+"*")
	if err != nil || !fresh {
		return temp, err
	}
	name := temp.Name()
	temp.Close()
	os.Remove(name)
	return os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
}

// temporary is how the name of a text that is not yet in its place begins; digits follow.
func temporary(path string) string { return "." + filepath.Base(path) + ".new-" }

// isTemporary tells whether the name is that of such a text of the file.
func isTemporary(name, path string) bool {
	number, ok := strings.CutPrefix(name, temporary(path))
	return ok && number != "" && strings.Trim(number, "0123456789") == ""
}

// syncFolder makes the rename last. Where folders cannot be synced, as on Windows, there
// is nothing more to do: the file itself is in place.
func syncFolder(path string) {
	if folder, err := os.Open(path); err == nil {
		_ = folder.Sync()
		folder.Close()
	}
}
