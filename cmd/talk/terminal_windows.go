package talk

import (
	"os"
	"sync/atomic"
	"time"
	"unicode/utf16"
	"unicode/utf8"
	"unsafe"

	"golang.org/x/sys/windows"
)

// showing makes an output heed what moves the cursor.
func showing(to *os.File) (restore func(), err error) {
	var was uint32
	h := windows.Handle(to.Fd())
	if err := windows.GetConsoleMode(h, &was); err != nil {
		return nil, err
	}
	if err := windows.SetConsoleMode(h, was|windows.ENABLE_PROCESSED_OUTPUT|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING); err != nil {
		return nil, err
	}
	return func() { _ = windows.SetConsoleMode(h, was) }, nil
}

// resizes has the size looked at now and then: nothing tells of another one here.
func resizes(tell chan os.Signal) (stop func()) {
	often, done := time.NewTicker(time.Second/4), make(chan struct{})
	go func() {
		for {
			select {
			case <-done:
				return
			case <-often.C:
			}
			select {
			case tell <- nil: // it only wakes the one that waits
			default:
			}
		}
	}()
	return func() { often.Stop(); close(done) }
}

// console reads the keys of a console. A read of its file could not be called off, and would give
// letters beyond ASCII in an alphabet of old.
type console struct {
	handle windows.Handle
	ended  atomic.Bool
	half   rune // the first half of a sign that comes in two
}

func reading(from *os.File) (canceller, error) {
	return &console{handle: windows.Handle(from.Fd())}, procReadConsoleInput.Find()
}

var procReadConsoleInput = windows.NewLazySystemDLL("kernel32.dll").NewProc("ReadConsoleInputW")

// record is what a console tells of: an INPUT_RECORD with a KEY_EVENT_RECORD in it.
type record struct {
	kind          uint16
	_             uint16
	down          int32
	repeated      uint16
	virtual, scan uint16
	unit          uint16 // of UTF-16
	heldDown      uint32
}

const keyEvent = 1

// Read waits for keys, and gives them in UTF-8.
func (c *console) Read(buf []byte) (int, error) {
	for {
		if c.ended.Load() {
			return 0, os.ErrClosed
		}
		if event, err := windows.WaitForSingleObject(c.handle, 20); err != nil {
			return 0, err
		} else if event != windows.WAIT_OBJECT_0 {
			continue
		}
		var records [64]record
		var n uint32
		ok, _, err := procReadConsoleInput.Call(uintptr(c.handle), uintptr(unsafe.Pointer(&records[0])), uintptr(len(records)), uintptr(unsafe.Pointer(&n)))
		if ok == 0 {
			return 0, err
		}
		if text := c.text(records[:n]); len(text) > 0 {
			return copy(buf, text), nil
		}
	}
}

// text is what keys that went down have typed.
func (c *console) text(records []record) (out []byte) {
	for _, r := range records {
		unit := rune(r.unit)
		switch {
		case r.kind != keyEvent || r.down == 0 || unit == 0:
		case c.half != 0:
			out, c.half = utf8.AppendRune(out, utf16.DecodeRune(c.half, unit)), 0
		case utf16.IsSurrogate(unit):
			c.half = unit
		default:
			out = utf8.AppendRune(out, unit)
		}
	}
	return out
}

// Cancel ends Read soon.
func (c *console) Cancel() bool {
	c.ended.Store(true)
	return true
}

// Close does nothing: the console belongs to others too.
func (*console) Close() error { return nil }
