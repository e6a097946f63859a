package fill

import (
	"fmt"
	"reflect"
	"strings"
)

// escape is how a value is written so that it stays text at the place where it stands.
type escape int

const (
	asText    escape = iota // among elements; HTML as it stands
	asRawText               // in a title or a field of text
	asValue                 // in a value in double quotes
	asAddress               // the beginning of an address: none that runs anything
	asSources               // addresses of a picture, which commas part
	asPath                  // further on in an address
	asQuery                 // behind the ? or # of an address
	asStyle                 // in a style sheet: one plain word or number; CSS as it stands
)

// defanged stands where something was to be filled in that cannot be made safe.
const defanged = "ZgotmplZ"

// signs are all that HTML could take for its own.
var signs = strings.NewReplacer("\x00", "\uFFFD", `"`, "&#34;", "&", "&amp;", "'", "&#39;", "+", "&#43;", "<", "&lt;", ">", "&gt;")

func (e escape) of(v reflect.Value) (string, error) {
	text, err := said(v)
	if err != nil {
		return "", err
	}
	switch e {
	case asText:
		if v.IsValid() && v.Type() == reflect.TypeFor[HTML]() {
			return text, nil
		}
	case asStyle:
		return style(v, text), nil
	case asAddress:
		text = coded(harmless(text), true)
	case asSources:
		text = sources(text)
	case asPath:
		text = coded(text, true)
	case asQuery:
		text = coded(text, false)
	}
	return signs.Replace(text), nil
}

// said is a value in words.
func said(v reflect.Value) (string, error) {
	for v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	switch {
	case !v.IsValid():
		return "", nil
	case v.Kind() == reflect.String:
		return v.String(), nil
	case v.CanInt():
		return fmt.Sprint(v.Int()), nil
	case v.CanFloat():
		return fmt.Sprint(v.Float()), nil
	}
	return "", fmt.Errorf("a page cannot show a %s", v.Type())
}

// style lets pass what means one thing alone in every place of a style sheet.
func style(v reflect.Value, text string) string {
	if v.IsValid() && v.Type() == reflect.TypeFor[CSS]() {
		return text
	}
	other := func(c rune) bool { return c > 127 || !isName(byte(c)) && c != '.' && c != '%' }
	if strings.ContainsFunc(text, other) || strings.Contains(text, "--") {
		return defanged
	}
	return text
}

// harmless gives an address as it is where it leads to a page or a letter, and not to a script.
func harmless(address string) string {
	scheme, _, has := strings.Cut(address, ":")
	if !has || strings.Contains(scheme, "/") {
		return address
	}
	for _, s := range []string{"http", "https", "mailto"} {
		if strings.EqualFold(scheme, s) {
			return address
		}
	}
	return "#" + defanged
}

// spaces are those of HTML.
const spaces = "\t\n\f\r "

// sources are addresses of the same picture, each with what it is for in letters and digits.
func sources(list string) string {
	parts := strings.Split(list, ",")
	for i, part := range parts {
		bare := strings.TrimLeft(part, spaces)
		address := bare
		if end := strings.IndexAny(bare, spaces); end >= 0 {
			address = bare[:end]
		}
		more := strings.TrimPrefix(bare, address)
		odd := func(c rune) bool { return c > 127 || c == '-' || !isName(byte(c)) && !strings.ContainsRune(spaces, c) }
		if harmless(address) != address || strings.ContainsFunc(more, odd) {
			parts[i] = "#" + defanged
			continue
		}
		parts[i] = strings.TrimSuffix(part, bare) + coded(address, true) + more
	}
	return strings.Join(parts, ",")
}

// coded writes a part of an address by RFC 3986, section 2. A whole one keeps its delimiters, and what is written so already.
func coded(text string, whole bool) string {
	var b strings.Builder
	for i := range len(text) {
		c := text[i]
		switch {
		case isName(c), strings.IndexByte("._~", c) >= 0,
			whole && strings.IndexByte("!#$&*+,/:;=?@[]", c) >= 0,
			whole && c == '%' && i+2 < len(text) && isHex(text[i+1]) && isHex(text[i+2]):
			b.WriteByte(c)
		default:
			fmt.Fprintf(&b, "%%%02x", c)
		}
	}
	return b.String()
}

func isHex(c byte) bool { return strings.IndexByte("0123456789abcdefABCDEF", c) >= 0 }
