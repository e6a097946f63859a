// Package rewrite puts a new text in the place of a file, so that at every moment
// either the old or the new one is there, whole.
package rewrite

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// ErrLink says that the path is a link: what it points at may lie anywhere, and is
// not touched.
var ErrLink = errors.New("it is a link; give the file itself")

// ErrChanged says that the file is not as it was read.
var ErrChanged = errors.New("it was changed by somebody else in the meantime")

// File replaces the text of a regular file that still holds old. The new text is
// written to a temporary file beside it, which gets the file's mode, is synced and
// renamed over it; on any error the file is as it was and the temporary file is gone.
func File(path string, old, text []byte) (err error) {
	info, err := os.Lstat(path)
	if err != nil {
		return err
	}
	switch {
	case info.Mode()&os.ModeSymlink != 0:
		return ErrLink
	case !info.Mode().IsRegular():
		return fmt.Errorf("it is not a regular file")
	}
	now, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if string(now) != string(old) {
		return ErrChanged
	}
	temp, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".new-")
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
	if err = temp.Chmod(info.Mode().Perm()); err != nil {
		return err
	}
	if err = temp.Sync(); err != nil {
		return err
	}
	if err = temp.Close(); err != nil {
		return err
	}
	if err = os.Rename(temp.Name(), path); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(path))
}

// syncFolder makes the rename last. Where folders cannot be synced, as on Windows,
// there is nothing more to do.
func syncFolder(path string) error {
	folder, err := os.Open(path)
	if err != nil {
		return nil // the file itself is in place
	}
	defer folder.Close()
	_ = folder.Sync()
	return nil
}
