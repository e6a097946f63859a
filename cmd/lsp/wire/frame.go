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

// A Fault is a frame that cannot be used. What follows it can: behind a header that is none
// the next frame begins where a Content-Length stands.
type Fault struct{ Says string }

func (f *Fault) Error() string { return f.Says }

// Reader takes frames off a stream.
type Reader struct {
	in   *bufio.Reader
	lost bool // where the next frame begins is not known
}

// NewReader reads frames from a stream.
func NewReader(r io.Reader) *Reader { return &Reader{in: bufio.NewReaderSize(r, MaxHeader)} }

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
		return nil, &Fault{fmt.Sprintf("a message of %d bytes is more than the %d that are read", size, MaxContent)}
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

const length = "content-length"

// header reads the lines in front of the content, and gives its length.
func (r *Reader) header() (int, error) {
	size := -1
	for first := true; ; first = false {
		text, err := r.line(first)
		switch {
		case err != nil:
			return 0, err
		case text == "" && size < 0:
			return 0, r.bad("a header says no Content-Length")
		case text == "":
			return size, nil
		}
		name, value, ok := strings.Cut(text, ":")
		switch {
		case !ok || strings.ContainsAny(name, "\"{}[] "):
			return 0, r.bad("%.80q is no line of a header, which is a name, a colon and a value", text)
		case !strings.EqualFold(name, length):
			continue // the type of the content is always the same
		}
		if size, err = strconv.Atoi(strings.TrimSpace(value)); err != nil || size < 0 {
			return 0, r.bad("%.80q is no length of a content in bytes", value)
		}
	}
}

func (r *Reader) bad(format string, args ...any) error {
	r.lost = true
	return &Fault{fmt.Sprintf(format, args...)}
}

// line reads a line of a header. In front of the first one empty lines are passed over, and whatever
// else stands there where the last header was none.
func (r *Reader) line(first bool) (string, error) {
	for {
		line, err := r.in.ReadSlice('\n')
		whole := err == nil
		switch {
		case errors.Is(err, bufio.ErrBufferFull) && !r.lost:
			return "", r.bad("a line of a header is longer than %d bytes", MaxHeader)
		case errors.Is(err, io.EOF) && first && (len(line) == 0 || r.lost):
			return "", io.EOF
		case err != nil && !errors.Is(err, bufio.ErrBufferFull):
			return "", ended(err)
		}
		text := strings.TrimRight(string(line), "\r\n")
		if r.lost {
			at := strings.LastIndex(strings.ToLower(text), length+":")
			if at < 0 || !whole {
				continue
			}
			r.lost = false
			return text[at:], nil
		}
		if text != "" || !first {
			return text, nil
		}
	}
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
