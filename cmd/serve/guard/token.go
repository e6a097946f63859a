package guard

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base32"
	"strings"
)

// Token is what a link knows: 128 bits of chance, as 26 capital letters and digits. The zero value opens nothing.
type Token string

var letters = base32.StdEncoding.WithPadding(base32.NoPadding)

// NewToken draws a token.
func NewToken() Token {
	var bits [16]byte
	_, _ = rand.Read(bits[:]) // it does not fail: the program ends where there is no chance
	return Token(letters.EncodeToString(bits[:]))
}

// Whole tells whether it is a token as NewToken draws them.
func (t Token) Whole() bool {
	bits, err := letters.DecodeString(string(t))
	return err == nil && len(bits) == 16
}

// is compares in a time that tells nothing of how much was right.
func (t Token) is(said string) bool {
	if t == "" {
		return false
	}
	own, other := sha256.Sum256([]byte(t)), sha256.Sum256([]byte(strings.ToUpper(said)))
	return subtle.ConstantTimeCompare(own[:], other[:]) == 1
}

// way is the path in front of the token of a link. It is in capitals, as the token is, so that a QR code holds the link in
// fewer squares.
const way = "/K/"

// Link is the address that opens the page for whoever has a token: scheme and host as in http://127.0.0.1:8080.
func Link(base string, t Token) string { return base + way + string(t) }

// CalendarLink is the address of the calendar, for a program that shows one.
func CalendarLink(base string, t Token) string {
	return base + calendarPath + "?" + keyOf + "=" + string(t)
}

// calendarPath is what the token of the calendar opens.
const calendarPath = "/due.ics"

// keyOf names the token of the calendar in its address.
const keyOf = "key"
