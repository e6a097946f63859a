package desk

import (
	"net/url"
	"path"
	"path/filepath"
	"runtime"
	"strings"
)

// Path is the path of the file that an address names: of file:///home/k/pale%20malt.malt it is
// /home/k/pale malt.malt, on Windows of file:///c%3A/malt C:\malt. An address of another kind is
// given back as it is, since it names a buffer and no file.
func Path(uri string) string { return pathOn(uri, runtime.GOOS == "windows") }

func pathOn(uri string, windows bool) string {
	const scheme = "file:"
	if len(uri) <= len(scheme) || !strings.EqualFold(uri[:len(scheme)], scheme) || uri[len(scheme)] != '/' {
		return uri
	}
	rest, host := uri[len(scheme)+1:], ""
	if strings.HasPrefix(rest, "/") { // what stands before the path, mostly nothing, may be left out: RFC 8089, appendix B
		host, rest, _ = strings.Cut(rest[1:], "/")
	}
	name, err := url.PathUnescape("/" + rest)
	if err != nil {
		name = "/" + rest // a % that is no escape is of the name
	}
	if !windows {
		return path.Clean(name)
	}
	if len(name) >= 3 && name[2] == ':' { // /c:/malt
		name = strings.ToUpper(name[1:2]) + name[2:]
	}
	if host != "" && !strings.EqualFold(host, "localhost") {
		name = "//" + host + name
	}
	return backslashes(name)
}

func backslashes(name string) string {
	lead := ""
	if strings.HasPrefix(name, "//") {
		lead = "/"
	}
	return strings.ReplaceAll(lead+path.Clean(name), "/", `\`)
}

// URI is the address of a path, or of a buffer that is no file its own.
func URI(name string) string { return uriOn(name, runtime.GOOS == "windows") }

func uriOn(name string, windows bool) string {
	if windows {
		name = strings.ReplaceAll(name, `\`, "/")
		switch {
		case strings.HasPrefix(name, "//"):
			host, rest, _ := strings.Cut(name[2:], "/")
			return "file://" + host + escaped("/"+rest)
		case len(name) >= 2 && name[1] == ':':
			return "file:///" + strings.ToLower(name[:1]) + "%3A" + escaped(name[2:])
		}
		return name
	}
	if !strings.HasPrefix(name, "/") {
		return name
	}
	return "file://" + escaped(name)
}

// escaped escapes every byte of a path but letters, digits and -._~/, as editors do.
func escaped(name string) string {
	const hex = "0123456789ABCDEF"
	var b strings.Builder
	for i := range len(name) {
		c := name[i]
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', strings.IndexByte("-._~/", c) >= 0:
			b.WriteByte(c)
		default:
			b.WriteByte('%')
			b.WriteByte(hex[c>>4])
			b.WriteByte(hex[c&15])
		}
	}
	return b.String()
}

// plainName is the name of a file that stands for a buffer that is none.
func plainName(uri string) string {
	return strings.Map(func(r rune) rune {
		if r == '/' || r == '\\' || r == ':' {
			return '-'
		}
		return r
	}, uri)
}

// real is a path without links, or as it is where it cannot be told.
func real(path string) string {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		return to
	}
	return path
}
