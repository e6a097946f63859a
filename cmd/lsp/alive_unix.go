//go:build unix

package lsp

import (
	"errors"
	"syscall"
)

// lives tells whether a process is there.
func lives(process int) bool { return !errors.Is(syscall.Kill(process, 0), syscall.ESRCH) }
