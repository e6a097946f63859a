package lsp

import "os"

// lives tells whether a process is there.
func lives(process int) bool {
	p, err := os.FindProcess(process) // opens it, which fails where it has ended and nobody holds it
	if err != nil {
		return false
	}
	_ = p.Release() // what was opened is there
	return true
}
