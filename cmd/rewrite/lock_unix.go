//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package rewrite

import (
	"errors"
	"os"
	"syscall"
)

// asItIs opens what stands at a path itself: no link is followed, no pipe waited for.
const asItIs = syscall.O_NOFOLLOW | syscall.O_NONBLOCK

// holdLock takes the lock of the operating system, or gives errBusy.
func holdLock(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case err == nil:
			return nil
		case errors.Is(err, syscall.EINTR):
		case errors.Is(err, syscall.EWOULDBLOCK):
			return errBusy
		case errors.Is(err, errors.ErrUnsupported), errors.Is(err, syscall.ENOLCK):
			return noLocks
		default:
			return err
		}
	}
}
