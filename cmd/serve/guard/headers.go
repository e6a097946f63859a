package guard

import (
	"crypto/sha256"
	"encoding/base64"
	"maps"
	"net/http"
	"strings"
)

// policy is what a page may do: show its own style, script, pictures and sound, ask its own server, send its own forms, and
// nothing else. It can be put into no frame.
var policy = map[string]string{
	"default-src":     "'none'",
	"style-src":       "'self'",
	"script-src":      "'self'",
	"img-src":         "'self' data:", // an empty picture keeps browsers from asking for an icon
	"connect-src":     "'self'",
	"form-action":     "'self'",
	"frame-ancestors": "'none'",
	"base-uri":        "'none'",
}

var order = []string{"default-src", "style-src", "script-src", "img-src", "connect-src", "form-action", "frame-ancestors", "base-uri"}

// fixed are the headers of every answer. With a Referrer-Policy of no-referrer a browser sends "Origin: null" with the forms of a page on a name that
// is not loopback, and they are refused as those of elsewhere: so it is same-origin.
var fixed = map[string]string{
	"X-Content-Type-Options":       "nosniff",
	"X-Frame-Options":              "DENY",
	"Referrer-Policy":              "same-origin",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Cache-Control":                "no-store",
	"Permissions-Policy":           "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), usb=()",
}

func setHeaders(h http.Header) {
	for name, value := range fixed {
		h.Set(name, value)
	}
	h.Set("Content-Security-Policy", joined(policy))
}

func joined(policy map[string]string) string {
	var parts []string
	for _, of := range order {
		parts = append(parts, of+" "+policy[of])
	}
	return strings.Join(parts, "; ")
}

// AllowStyle lets an answer that is a document of its own, such as a chart or a report, carry a style sheet in itself: this one, to the letter, and
// no other.
func AllowStyle(h http.Header, style string) {
	sum := sha256.Sum256([]byte(style))
	with := maps.Clone(policy)
	with["style-src"] += " 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	h.Set("Content-Security-Policy", joined(with))
}
