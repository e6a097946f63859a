//go:build unix

package main

import (
	"os/exec"
	"syscall"
)

// apart keeps Ctrl-C at the terminal from a program that is started: a browser goes on when the page ends.
func apart(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }
