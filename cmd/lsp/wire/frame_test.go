package wire

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func frame(content string) string {
	return fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(content), content)
}

func TestFramesAreReadWhateverPiecesTheyComeIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOf(rapid.String()).Draw(t, "contents")
		var b bytes.Buffer
		w := NewWriter(&b)
		for _, c := range want {
			require.NoError(t, w.Write([]byte(c)))
		}
		r := NewReader(iotest.OneByteReader(&b))
		for _, c := range want {
			got, err := r.Read()
			require.NoError(t, err)
			assert.Equal(t, c, string(got))
		}
		_, err := r.Read()
		assert.Equal(t, io.EOF, err)
	})
}

func TestHeadersMayHaveMoreLines(t *testing.T) {
	r := NewReader(strings.NewReader("\r\ncontent-type: application/vscode-jsonrpc; charset=utf-8\r\nCONTENT-LENGTH:  2 \r\n\r\n{}Content-Length: 1\n\n7"))
	for _, want := range []string{"{}", "7"} {
		got, err := r.Read()
		require.NoError(t, err)
		assert.Equal(t, want, string(got))
	}
}

func TestFramesThatCannotBeUsed(t *testing.T) {
	none := &Fault{}
	for text, want := range map[string]error{
		"":                                       io.EOF,
		"Content-Length: 5\r\n\r\nab":            io.ErrUnexpectedEOF,
		"Content-Length: 5\r\n":                  io.ErrUnexpectedEOF,
		"Content-Length: 99999999\r\n\r\nab":     io.ErrUnexpectedEOF,
		"Content-Length: x\r\n\r\nab":            none,
		"Content-Length: -1\r\n\r\nab":           none,
		"Content-Length: 1e3\r\n\r\nab":          none,
		"Content-Type: x\r\n\r\nab":              none,
		"{\"jsonrpc\": 1}\n":                     none,
		"GET / HTTP/1.1\r\n\r\n":                 none,
		"X: " + strings.Repeat("a", 2*MaxHeader): none,
	} {
		var fault *Fault
		if errors.As(want, &fault) {
			r := NewReader(strings.NewReader(text + frame("{}")))
			_, err := r.Read()
			assert.ErrorAs(t, err, &fault, "%.40q", text)
			content, err := r.Read()
			assert.NoError(t, err, "what follows is read: %.40q", text)
			assert.Equal(t, "{}", string(content), "%.40q", text)
			continue
		}
		_, err := NewReader(strings.NewReader(text)).Read()
		assert.ErrorIs(t, err, want, "%.40q", text)
	}
}

func TestContentThatIsTooLargeIsReadOver(t *testing.T) {
	large := strings.Repeat("x", MaxContent+1)
	r := NewReader(strings.NewReader(frame(large) + frame("{}")))
	_, err := r.Read()
	var fault *Fault
	require.ErrorAs(t, err, &fault)
	got, err := r.Read()
	require.NoError(t, err)
	assert.Equal(t, "{}", string(got))
}

func TestMessagesThatAreNone(t *testing.T) {
	for text, code := range map[string]int{
		"{": ParseError, "": ParseError, "[]": InvalidRequest, "7": InvalidRequest, "null": InvalidRequest,
		`{"jsonrpc":"1.0","method":"x"}`:           InvalidRequest,
		`{"jsonrpc":"2.0"}`:                        InvalidRequest,
		`{"jsonrpc":"2.0","id":{},"method":"x"}`:   InvalidRequest,
		`{"jsonrpc":"2.0","id":true,"method":"x"}`: InvalidRequest,
		`{"jsonrpc":"2.0","id":1,"method":7}`:      InvalidRequest,
	} {
		_, err := Parse([]byte(text))
		var bad *Error
		if assert.ErrorAs(t, err, &bad, text) {
			assert.Equal(t, code, bad.Code, text)
		}
	}
}

func TestAnIDIsGivenBackAsItCame(t *testing.T) {
	for _, id := range []string{`1`, `-7`, `"a b"`, `"1"`, `1.5`} {
		m, err := Parse([]byte(`{"jsonrpc":"2.0","id":` + id + `,"method":"x"}`))
		require.NoError(t, err, id)
		out, err := Encode(Message{Version: Version, ID: m.ID})
		require.NoError(t, err)
		assert.Equal(t, `{"jsonrpc":"2.0","id":`+id+`}`, string(out))
	}
	m, err := Parse([]byte(`{"jsonrpc":"2.0","id":null,"method":"x"}`))
	require.NoError(t, err)
	assert.Nil(t, m.ID)
	out, err := Encode(Message{Version: Version, ID: new(ID), Error: &Error{Code: ParseError}})
	require.NoError(t, err)
	assert.Contains(t, string(out), `"id":null`)
}

func FuzzFrames(f *testing.F) {
	for _, text := range []string{frame("{}"), "Content-Length: 3\n\n{}", frame(`{"jsonrpc":"2.0","id":1,"method":"x"}`) + frame("")} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(_ *testing.T, text []byte) {
		r := NewReader(bytes.NewReader(text))
		for range 1 + len(text) {
			content, err := r.Read()
			var fault *Fault
			if err != nil && !errors.As(err, &fault) {
				return
			}
			_, _ = Parse(content)
		}
	})
}
