package wire

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
)

// MaxContent is the size above which a message is skipped: 16 MiB, four times that of the
// largest file. MaxHeader is the longest line of a header.
const (
	MaxContent = 16 << 20
	MaxHeader  = 4 << 10
)

// A Fault is a frame that cannot be used. What follows it can, unless Lost.
type Fault struct {
	Says string
	Lost bool // where the next frame begins is not known
}

func (f *Fault) Error() string { return f.Says }

// Reader takes frames off a stream.
type Reader struct{ in *bufio.Reader }

// NewReader reads frames from a stream.
func NewReader(r io.Reader) *Reader { return &Reader{bufio.NewReaderSize(r, MaxHeader)} }

// Read gives the content of the next frame. At the end of the stream it gives io.EOF, within
// a frame io.ErrUnexpectedEOF, and a *Fault where a frame cannot be used. Content that is
// too large is read over.
func (r *Reader) Read() ([]byte, error) {
	size, err := r.header()
	if err != nil {
		return nil, err
	}
	if size > MaxContent {
		if _, err := io.CopyN(io.Discard, r.in, int64(size)); err != nil {
			return nil, ended(err)
		}
		return nil, &Fault{Says: fmt.Sprintf("a message of %d bytes is more than the %d that are read", size, MaxContent)}
	}
	content := make([]byte, size)
	if _, err := io.ReadFull(r.in, content); err != nil {
		return nil, ended(err)
	}
	return content, nil
}

func ended(err error) error {
	if errors.Is(err, io.EOF) {
		return io.ErrUnexpectedEOF
	}
	return err
}

// header reads the lines in front of the content, and gives its length.
func (r *Reader) header() (int, error) {
	size, first := -1, true
	for {
		line, err := r.in.ReadSlice('\n')
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			return 0, &Fault{Says: "a line of a header has no end", Lost: true}
		case errors.Is(err, io.EOF) && first && len(line) == 0:
			return 0, io.EOF
		case err != nil:
			return 0, ended(err)
		}
		text := strings.TrimRight(string(line), "\r\n")
		if text == "" {
			if first {
				continue // an empty line between two frames hurts nobody
			}
			break
		}
		first = false
		name, value, ok := strings.Cut(text, ":")
		if !ok {
			return 0, &Fault{Says: fmt.Sprintf("%.80q is no line of a header, which is a name, a colon and a value", text), Lost: true}
		}
		if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			continue // the type of the content is always the same
		}
		size, err = strconv.Atoi(strings.TrimSpace(value))
		if err != nil || size < 0 {
			return 0, &Fault{Says: fmt.Sprintf("%.80q is no length of a content in bytes", value), Lost: true}
		}
	}
	if size < 0 {
		return 0, &Fault{Says: "a header says no Content-Length", Lost: true}
	}
	return size, nil
}

// Writer puts frames on a stream, each whole; several goroutines may write.
type Writer struct {
	mu  sync.Mutex
	out io.Writer
}

// NewWriter writes frames to a stream.
func NewWriter(w io.Writer) *Writer { return &Writer{out: w} }

// Write writes one frame.
func (w *Writer) Write(content []byte) error {
	frame := make([]byte, 0, len(content)+32)
	frame = fmt.Appendf(frame, "Content-Length: %d\r\n\r\n", len(content))
	w.mu.Lock()
	defer w.mu.Unlock()
	_, err := w.out.Write(append(frame, content...))
	return err
}
