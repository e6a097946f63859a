package rewrite

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// asItIs opens what stands at a path itself: no link is followed.
const asItIs = windows.O_FILE_FLAG_OPEN_REPARSE_POINT

// holdLock takes the lock of the operating system, or gives errBusy.
func holdLock(f *os.File) error {
	const flags = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err := windows.LockFileEx(windows.Handle(f.Fd()), flags, 0, ^uint32(0), ^uint32(0), new(windows.Overlapped))
	switch {
	case errors.Is(err, windows.ERROR_LOCK_VIOLATION), errors.Is(err, windows.ERROR_IO_PENDING):
		return errBusy
	case errors.Is(err, errors.ErrUnsupported):
		return noLocks
	}
	return err
}
