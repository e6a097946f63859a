package talk

import (
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"

	"golang.org/x/term"
)

// terminal is a terminal that sends each key as it is pressed, without showing it.
type terminal struct {
	out     *os.File
	keys    canceller   // reads
	typed   chan []byte // what was read; closed at the end of the window
	resized chan os.Signal
	ctx     context.Context // ends when somebody ends the program
	stops   []func()
}

// canceller is a reader that can be called off without taking what nobody has read.
type canceller interface {
	io.ReadCloser
	Cancel() bool
}

var errNoTerminal = errors.New("this is no terminal that sends keys one by one")

// openTerminal takes a terminal over.
func openTerminal(ctx context.Context, in io.Reader, out io.Writer) (t *terminal, err error) {
	from, isFile := in.(*os.File)
	to, isToo := out.(*os.File)
	if !isFile || !isToo {
		return nil, errNoTerminal
	}
	t = &terminal{out: to, typed: make(chan []byte, 1), resized: make(chan os.Signal, 1)}
	restore, err := showing(to)
	if err != nil {
		return nil, err
	}
	t.stops = append(t.stops, restore)
	was, err := term.MakeRaw(int(from.Fd()))
	if err != nil {
		t.stop()
		return nil, err
	}
	t.stops = append(t.stops, func() { _ = term.Restore(int(from.Fd()), was) })
	if t.keys, err = reading(from); err != nil {
		t.stop()
		return nil, err
	}
	var stop func()
	t.ctx, stop = signal.NotifyContext(ctx, syscall.SIGTERM)
	t.stops = append(t.stops, stop, resizes(t.resized))
	go t.read()
	return t, nil
}

// read reads until it is called off or the window is closed.
func (t *terminal) read() {
	defer close(t.typed)
	for {
		buf := make([]byte, 1024)
		n, err := t.keys.Read(buf)
		if n > 0 {
			t.typed <- buf[:n]
		}
		if err != nil {
			return
		}
	}
}

// size is that of the window; 0 where it does not say.
func (t *terminal) size() (width, height int) {
	width, height, _ = term.GetSize(int(t.out.Fd()))
	return width, height
}

// close gives the terminal back as it was, and what was typed and not asked for yet. The reader is
// waited for: one that is left behind would take a key from whoever reads next.
func (t *terminal) close() (typed []byte) {
	if t.keys.Cancel() {
		for more := range t.typed {
			typed = append(typed, more...)
		}
		_ = t.keys.Close()
	}
	t.stop()
	return typed
}

func (t *terminal) stop() {
	for i := len(t.stops) - 1; i >= 0; i-- {
		t.stops[i]()
	}
}
