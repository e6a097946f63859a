//go:build !unix

package main

import "os/exec"

// apart does nothing where a program that is started has a terminal of its own.
func apart(*exec.Cmd) {}
