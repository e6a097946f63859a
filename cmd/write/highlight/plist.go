package highlight

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// PropertyList gives the grammar of TextMate as a property list, which is the form that editors
// read that take no JSON.
func PropertyList() []byte {
	var grammar any
	if err := json.Unmarshal(TextMate(), &grammar); err != nil {
		panic(err) // it was just written
	}
	var out bytes.Buffer
	out.WriteString(xml.Header + `<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">` + "\n" + `<plist version="1.0">` + "\n")
	property(&out, grammar, 0)
	out.WriteString("</plist>\n")
	return out.Bytes()
}

// property writes one value, so many deep.
func property(out *bytes.Buffer, value any, depth int) {
	indent := strings.Repeat("  ", depth)
	switch v := value.(type) {
	case string:
		out.WriteString(indent + element("string", v))
	case []any:
		out.WriteString(indent + "<array>\n")
		for _, x := range v {
			property(out, x, depth+1)
		}
		out.WriteString(indent + "</array>\n")
	case map[string]any:
		out.WriteString(indent + "<dict>\n")
		for _, key := range slices.Sorted(maps.Keys(v)) {
			out.WriteString(indent + "  " + element("key", key))
			property(out, v[key], depth+1)
		}
		out.WriteString(indent + "</dict>\n")
	}
}

func element(name, text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a builder takes all
	return fmt.Sprintf("<%s>%s</%s>\n", name, b.String(), name)
}
