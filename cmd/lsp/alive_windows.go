package lsp

import (
	"errors"

	"golang.org/x/sys/windows"
)

// lives tells whether a process is there. One that may not be looked at is.
func lives(process int) bool {
	h, err := windows.OpenProcess(windows.SYNCHRONIZE, false, uint32(process))
	if err != nil {
		return errors.Is(err, windows.ERROR_ACCESS_DENIED)
	}
	defer func() { _ = windows.CloseHandle(h) }()
	event, err := windows.WaitForSingleObject(h, 0)
	return err != nil || event == uint32(windows.WAIT_TIMEOUT)
}
