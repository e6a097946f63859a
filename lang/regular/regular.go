// Package regular opens regular files and nothing else. A folder, a pipe or a device is
// refused, and none is ever waited for: what stands at a path is looked at before it is
// opened, so that no device is touched, and again once it is open, since it may have
// been put in another's place in between; and it is opened in a way that does not wait.
package regular

import (
	"errors"
	"io/fs"
	"os"
)

// Errors beside those of the file system.
var (
	ErrNotRegular = errors.New("not a regular file")
	ErrFolder     = errors.New("a folder")
)

// Open opens a file to be read.
func Open(path string) (*os.File, error) { return OpenFile(path, os.O_RDONLY) }

// OpenFile opens a file that is there: flag is os.O_RDONLY or os.O_RDWR.
func OpenFile(path string, flag int) (*os.File, error) {
	return lookAndOpen(func() (fs.FileInfo, error) { return os.Stat(path) },
		func() (*os.File, error) { return os.OpenFile(path, flag|noWait, 0) })
}

// OpenIn opens a file below a folder to be read.
func OpenIn(root *os.Root, path string) (*os.File, error) {
	return lookAndOpen(func() (fs.FileInfo, error) { return root.Stat(path) },
		func() (*os.File, error) { return root.OpenFile(path, os.O_RDONLY|noWait, 0) })
}

func lookAndOpen(look func() (fs.FileInfo, error), open func() (*os.File, error)) (*os.File, error) {
	info, err := look()
	if err == nil {
		err = kind(info)
	}
	if err != nil {
		return nil, err
	}
	f, err := open()
	if err != nil {
		return nil, err
	}
	if info, err = f.Stat(); err == nil {
		err = kind(info)
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

func kind(info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return ErrFolder
	case !info.Mode().IsRegular():
		return ErrNotRegular
	}
	return nil
}
