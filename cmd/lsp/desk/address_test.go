package desk

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestAddressesArePaths(t *testing.T) {
	for _, c := range []struct {
		uri     string
		windows bool
		path    string
	}{
		{"file:///home/k/pale.malt", false, "/home/k/pale.malt"},
		{"file:///home/k/pale%20malt%23.malt", false, "/home/k/pale malt#.malt"},
		{"file:///home/k/50%25.malt", false, "/home/k/50%.malt"},
		{"file:///home/k/50%.malt", false, "/home/k/50%.malt"},
		{"file:///home/k/m%C3%A4lz.malt", false, "/home/k/mälz.malt"},
		{"file:///home/k/mälz.malt", false, "/home/k/mälz.malt"},
		{"file://localhost/home/k/a.malt", false, "/home/k/a.malt"},
		{"file:/home/k/a%20b.malt", false, "/home/k/a b.malt"},
		{"FILE:///home/k/a.malt", false, "/home/k/a.malt"},
		{"file:/C:/malt/a.malt", true, `C:\malt\a.malt`},
		{"file:a.malt", false, "file:a.malt"},
		{"file:", false, "file:"},
		{"file:///home/k/../l/a.malt", false, "/home/l/a.malt"},
		{"file:///c%3A/malt/a.malt", true, `C:\malt\a.malt`},
		{"file:///C:/malt/a%20b.malt", true, `C:\malt\a b.malt`},
		{"file://server/share/a.malt", true, `\\server\share\a.malt`},
		{"untitled:Untitled-1", false, "untitled:Untitled-1"},
		{"git:/home/k/pale.malt?x", false, "git:/home/k/pale.malt?x"},
	} {
		assert.Equal(t, c.path, pathOn(c.uri, c.windows), c.uri)
	}
}

func TestPathsAreAddresses(t *testing.T) {
	for _, c := range []struct {
		path    string
		windows bool
		uri     string
	}{
		{"/home/k/pale malt#?.malt", false, "file:///home/k/pale%20malt%23%3F.malt"},
		{"/home/k/mälz%.malt", false, "file:///home/k/m%C3%A4lz%25.malt"},
		{`C:\malt\a b.malt`, true, "file:///c%3A/malt/a%20b.malt"},
		{`\\server\share\a.malt`, true, "file://server/share/a.malt"},
		{"untitled:Untitled-1", false, "untitled:Untitled-1"},
	} {
		assert.Equal(t, c.uri, uriOn(c.path, c.windows), c.path)
	}
}

func TestAPathIsGivenBackByItsAddress(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := "/a" + rapid.StringMatching(`[^/\x00]{1,20}`).Draw(t, "name")
		assert.Equal(t, path, pathOn(uriOn(path, false), false))
	})
}
