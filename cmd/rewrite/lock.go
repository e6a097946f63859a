package rewrite

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// The lock of a file is an empty hidden file beside it, locked by the operating system,
// which lets go of it when a program ends however it ends: a lock file that a kill left
// behind holds up nobody. It is taken away when the lock is released. It is opened
// without following links, and what is no lock of this program is not touched.

// errBusy says that another holds the lock, or that it went away while it was taken.
var errBusy = errors.New("busy")

// lockName is the path of the lock of a file.
func lockName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
}

const (
	shortestWait = 2 * time.Millisecond
	longestWait  = 50 * time.Millisecond
)

// lock waits until nobody else holds the lock of a file, takes it and gives what
// releases it.
func (o Options) lock(path string) (release func(), err error) {
	say, quit := orElse(o.Say, defaultSay), orElse(o.GiveUp, defaultQuit)
	began, told := time.Now(), false
	for wait := shortestWait; ; wait = min(2*wait, longestWait) {
		release, err := tryLock(lockName(path))
		if !errors.Is(err, errBusy) {
			return release, err
		}
		waited := time.Since(began)
		if waited >= quit {
			return nil, Busy(fmt.Sprintf("another maltwright is writing it, and was not done after %s; end that one if it hangs or is stopped, and try again", plainTime(quit)))
		}
		if waited >= say && !told && o.Waiting != nil {
			o.Waiting()
			told = true
		}
		time.Sleep(wait)
	}
}

func orElse(d, usual time.Duration) time.Duration {
	if d == 0 {
		return usual
	}
	return d
}

func plainTime(d time.Duration) string {
	if d < time.Second {
		return fmt.Sprintf("%d ms", d.Milliseconds())
	}
	return fmt.Sprintf("%.0f s", d.Seconds())
}

// tryLock takes a lock that nobody holds; otherwise it gives errBusy.
func tryLock(name string) (release func(), err error) {
	f, err := openLock(name)
	if err != nil {
		return nil, err
	}
	if err = holdLock(f); err == nil && !stillThere(f, name) {
		err = errBusy // its last holder took it away in the meantime
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return func() { unlock(f, name) }, nil
}

// openLock opens the lock file, or makes it.
func openLock(name string) (*os.File, error) {
	info, err := os.Lstat(name)
	if err == nil {
		if err := isLock(info, name); err != nil {
			return nil, err
		}
	}
	f, err := openPlain(name, err != nil)
	switch {
	case err == nil:
	case errors.Is(err, fs.ErrNotExist) && info != nil, errors.Is(err, fs.ErrExist):
		return nil, errBusy // it came or went in between
	default:
		if info, now := os.Lstat(name); now == nil { // say what is there, rather than the error it gave
			if is := isLock(info, name); is != nil {
				return nil, is
			}
			if errors.Is(err, fs.ErrPermission) {
				return nil, Refusal(filepath.Base(name) + " beside it is the lock of somebody else, and may not be opened; if nobody is writing the file, have it taken away")
			}
		}
		return nil, err
	}
	if info, err = f.Stat(); err == nil {
		err = isLock(info, name)
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// openPlain opens the lock file for writing, which some file systems want of those who
// lock, or for reading where it is another's.
func openPlain(name string, fresh bool) (*os.File, error) {
	if fresh {
		return os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL|asItIs, 0o666)
	}
	f, err := os.OpenFile(name, os.O_RDWR|asItIs, 0)
	if errors.Is(err, fs.ErrPermission) {
		f, err = os.OpenFile(name, os.O_RDONLY|asItIs, 0)
	}
	return f, err
}

// isLock tells what else stands where a lock should be.
func isLock(info fs.FileInfo, name string) error {
	what := ""
	switch {
	case info.Mode()&os.ModeSymlink != 0:
		what = "a link"
	case info.IsDir():
		what = "a folder"
	case !info.Mode().IsRegular():
		what = "no regular file"
	case info.Size() > 0:
		what = "not empty"
	default:
		return nil
	}
	return Refusal(fmt.Sprintf("%s beside it is %s, and so no lock of maltwright; look what it is, take it away, and try again", filepath.Base(name), what))
}

// stillThere tells whether the file that was locked is the one that others find.
func stillThere(f *os.File, name string) bool {
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
func unlock(f *os.File, name string) {
	if runtime.GOOS == "windows" {
		f.Close()
		os.Remove(name)
		return
	}
	if stillThere(f, name) {
		os.Remove(name)
	}
	f.Close()
}
