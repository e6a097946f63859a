//go:build unix

package regular

import "syscall"

// noWait lets the opening of a pipe that nobody writes to come back at once.
const noWait = syscall.O_NONBLOCK
