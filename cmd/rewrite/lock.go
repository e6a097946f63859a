package rewrite

import (
	"os"
	"path/filepath"
	"runtime"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// Lock waits until nobody else holds the lock of a file, takes it and gives what
// releases it. The lock is an empty hidden file beside the file, locked by the
// operating system, which lets go of it when a program ends however it ends: a lock
// file that was left behind by a kill holds up nobody. It is taken away when the
// lock is released.
//
// Only those who ask for the lock are kept out; that a file was changed by another
// program File notices.
func Lock(path string) (release func(), err error) {
	name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
	for {
		f, err := lockedfile.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o666)
		if err != nil {
			return nil, err
		}
		if stillThere(f, name) {
			return func() { unlock(f, name) }, nil
		}
		f.Close() // its last holder took it away while this program waited for it
	}
}

// stillThere tells whether the file that was locked is the one that others find.
func stillThere(f *lockedfile.File, name string) bool {
	mine, err := f.Stat()
	if err != nil {
		return false
	}
	theirs, err := os.Lstat(name)
	return err == nil && os.SameFile(mine, theirs)
}

// unlock takes the lock file away while it is still held, so that nobody can have
// locked it. Windows takes no open file away; there it is tried afterwards, and
// fails, as it should, where somebody has opened it again.
func unlock(f *lockedfile.File, name string) {
	if runtime.GOOS == "windows" {
		f.Close()
		os.Remove(name)
		return
	}
	os.Remove(name)
	f.Close()
}
