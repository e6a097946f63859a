package talk

import (
	"bytes"
	"strings"
	"time"
	"unicode/utf8"
)

// key is a key that was pressed: what it is called, and the text that it types. One that means
// nothing here has neither.
type key struct{ name, text string }

// pasted is the name of a key that is none: a text that was pasted.
const pasted = "paste"

// keyboard makes keys of the bytes that a terminal sends, in whatever pieces they come.
type keyboard struct{ rest []byte }

// take takes bytes and gives the keys that are whole by now.
func (k *keyboard) take(in []byte) []key {
	k.rest = append(k.rest, in...)
	return k.keys(false)
}

// late gives the keys of what was kept back for more that did not come.
func (k *keyboard) late() []key { return k.keys(true) }

func (k *keyboard) keys(late bool) (list []key) {
	for len(k.rest) > 0 {
		next, n := keyOf(k.rest, late)
		if n == 0 {
			break
		}
		k.rest = k.rest[n:]
		if next != (key{}) {
			list = append(list, next)
		}
	}
	if len(k.rest) > mostKept { // of a long paste: its begin, and what may be of its end
		k.rest = append(k.rest[:mostKept-len(pasteEnd)], k.rest[len(k.rest)-len(pasteEnd):]...)
	}
	return list
}

// mostKept is how many bytes are kept of a paste, more than a line may hold.
const mostKept = 16 << 10

// patience is how long to wait for the rest of a key; 0 where none has begun. A terminal sends a
// key in one piece, so that Escape alone is told from a key that begins with it.
func (k *keyboard) patience() time.Duration {
	switch {
	case len(k.rest) == 0:
		return 0
	case bytes.HasPrefix(k.rest, []byte(pasteBegin)):
		return time.Second
	}
	return 50 * time.Millisecond
}

// keyOf is the key that bytes begin with, and of how many; of none while more must come.
func keyOf(in []byte, late bool) (k key, n int) {
	switch c := in[0]; {
	case c == escape:
		return escaped(in, late)
	case c < ' ' || c == 0x7f:
		return key{name: control(c)}, 1
	case !late && !utf8.FullRune(in):
		return key{}, 0
	}
	r, n := utf8.DecodeRune(in)
	if r == utf8.RuneError && n == 1 { // no sign of UTF-8
		return key{}, 1
	}
	return key{name: string(r), text: string(r)}, n
}

const escape = 0x1b

// control is the name of a key that is one byte.
func control(c byte) string {
	switch {
	case c == '\r':
		return "enter"
	case c == '\t':
		return "tab"
	case c == 0x7f:
		return "backspace"
	case c >= 1 && c <= 26:
		return "ctrl+" + string(rune('a'+c-1))
	}
	return ""
}

// escaped is a key that begins with an escape: Escape itself, or one of several bytes.
func escaped(in []byte, late bool) (k key, n int) {
	if len(in) == 1 || in[1] == 0x03 { // Ctrl-C is heard behind everything
		if len(in) == 1 && !late {
			return key{}, 0
		}
		return key{name: "esc"}, 1
	}
	switch in[1] {
	case escape: // with the Alt key, or pressed twice
		return twice(in, late)
	case '[', 'O':
		return sequence(in, late)
	}
	if !late && !utf8.FullRune(in[1:]) {
		return key{}, 0
	}
	_, n = utf8.DecodeRune(in[1:])
	return key{}, 1 + n // with the Alt key, which means nothing here
}

// twice is Escape, unless what follows it is a key of several bytes that goes with the Alt key.
func twice(in []byte, late bool) (k key, n int) {
	switch {
	case len(in) > 2 && (in[2] == '[' || in[2] == 'O'):
		if _, n = sequence(in[1:], late); n > 0 {
			n++
		}
		return key{}, n
	case len(in) == 2 && !late:
		return key{}, 0
	}
	return key{name: "esc"}, 1
}

// named are the keys of several bytes. Terminals differ in them.
var named = map[string]string{
	"[A": "up", "[B": "down", "[C": "right", "[D": "left", "[H": "home", "[F": "end",
	"OA": "up", "OB": "down", "OC": "right", "OD": "left", "OH": "home", "OF": "end", "OM": "enter",
	"[1~": "home", "[7~": "home", "[4~": "end", "[8~": "end", "[3~": "delete", "[Z": "shift+tab",
}

// mostOfOne is how long a sequence may be; what is longer is none.
const mostOfOne = 32

// sequence is a key of several bytes: a head, figures, and one byte that ends it (ECMA-48, 5.4).
func sequence(in []byte, late bool) (k key, n int) {
	for n = 2; n < len(in) && n < mostOfOne && in[n] >= ' ' && in[n] < '@'; n++ {
	}
	switch {
	case n == len(in) && !late:
		return key{}, 0
	case n == len(in) || n == mostOfOne || in[n] < ' ' || in[n] >= 0x7f: // broken off
		return key{}, n
	case in[1] == '[' && in[n] == '[': // a function key of the Linux console: one more byte
		if n+1 == len(in) && !late {
			return key{}, 0
		}
		return key{}, min(n+2, len(in))
	}
	n++
	if string(in[:n]) == pasteBegin {
		return paste(in, late)
	}
	return key{name: named[string(in[1:n])]}, n
}

// What a terminal puts around a text that is pasted.
const (
	pasteBegin = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
)

// paste is a text that was pasted. One whose end does not come ends where it is.
func paste(in []byte, late bool) (k key, n int) {
	text, _, whole := bytes.Cut(in[len(pasteBegin):], []byte(pasteEnd))
	if !whole && !late {
		return key{}, 0
	}
	n = len(pasteBegin) + len(text)
	if whole {
		n += len(pasteEnd)
	}
	return key{pasted, strings.ToValidUTF8(string(text), "")}, n
}
