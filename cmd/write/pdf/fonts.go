package pdf

import (
	"compress/flate"
	_ "embed"
	"io"
	"strings"
	"sync"
)

// The fonts are those of golang.org/x/image/font/gofont, packed by flate (RFC 1951), with which they take less than half
// in the program. A test holds them to the module, and makes them anew of it.
var (
	//go:embed go-regular.ttf.flate
	packedRegular string
	//go:embed go-bold.ttf.flate
	packedBold string

	regular = sync.OnceValue(func() []byte { return unpacked(packedRegular) })
	bold    = sync.OnceValue(func() []byte { return unpacked(packedBold) })
)

// unpacked is a font as it was. What is in the program cannot be broken, but by whoever built it.
func unpacked(packed string) []byte {
	font, err := io.ReadAll(flate.NewReader(strings.NewReader(packed)))
	if err != nil {
		panic("a font in the program is broken: " + err.Error())
	}
	return font
}
