package rewrite

import (
	"os"
	"path/filepath"
)

// Sweep takes away what a killed run left beside a file that need not be written, unless
// somebody is writing it.
func Sweep(path string) {
	if info, err := os.Lstat(lockName(path)); err != nil || !info.Mode().IsRegular() {
		return // whoever was killed had the lock
	}
	if release, err := tryLock(lockName(path)); err == nil {
		sweep(path)
		release()
	}
}

// sweep takes away the texts that killed runs did not get to rename. The lock is held,
// so nobody is writing one.
func sweep(path string) {
	folder, err := os.Open(filepath.Dir(path))
	if err != nil {
		return // what is left behind holds up nobody
	}
	defer folder.Close()
	names, _ := folder.Readdirnames(-1)
	for _, name := range names {
		if !isTemporary(name, path) {
			continue
		}
		full := filepath.Join(filepath.Dir(path), name)
		if info, err := os.Lstat(full); err == nil && info.Mode().IsRegular() {
			os.Remove(full)
		}
	}
}
