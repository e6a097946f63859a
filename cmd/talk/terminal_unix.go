//go:build unix

package talk

import (
	"os"
	"os/signal"
	"syscall"

	"github.com/muesli/cancelreader"
)

// reading is the reader of keys.
func reading(from *os.File) (canceller, error) { return cancelreader.NewReader(from) }

// showing makes an output heed what moves the cursor: here they all do.
func showing(*os.File) (restore func(), err error) { return func() {}, nil }

// resizes tells when the window has another size.
func resizes(tell chan os.Signal) (stop func()) {
	signal.Notify(tell, syscall.SIGWINCH)
	return func() { signal.Stop(tell) }
}
