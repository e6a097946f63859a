package man

import (
	"fmt"
	"strings"
)

// roff collects the lines of a page, in the macros that every man reads.
type roff struct {
	b     strings.Builder
	fresh bool // nothing stands below the heading yet, and no gap is needed
}

// macro writes a request with its arguments, each one word of it.
func (r *roff) macro(name string, args ...string) {
	r.b.WriteString("." + name)
	for _, a := range args {
		if a = escaped(a); a == "" || strings.Contains(a, " ") {
			a = `"` + a + `"`
		}
		r.b.WriteString(" " + a)
	}
	r.b.WriteString("\n")
	r.fresh = name == "SH" || name == "SS"
}

// gap parts a paragraph from what stands above it.
func (r *roff) gap() {
	if !r.fresh {
		r.macro("PP")
	}
}

// line writes a line of text that is escaped already.
func (r *roff) line(text string) {
	if strings.HasPrefix(text, ".") {
		text = `\&` + text
	}
	r.b.WriteString(text + "\n")
	r.fresh = false
}

// prose writes a paragraph of plain text.
func (r *roff) prose(text string) {
	r.gap()
	r.line(escaped(oneLine(text)))
}

// item writes a term and, further in by so many columns, what is said of it; "" is as far as man has it.
func (r *roff) item(term, text, columns string) {
	if columns == "" {
		r.macro("TP")
	} else {
		r.macro("TP", columns)
	}
	r.line(term)
	r.line(escaped(oneLine(text)))
}

// literal writes lines as they are, each on its own.
func (r *roff) literal(lines []string) {
	r.gap()
	r.macro("RS", "2")
	r.macro("nf")
	for _, l := range lines {
		r.line(escaped(l))
	}
	r.macro("fi")
	r.macro("RE")
}

// bold and italic are for terms.
func bold(text string) string   { return `\fB` + escaped(text) + `\fR` }
func italic(text string) string { return `\fI` + escaped(text) + `\fR` }

// signs are those that man would take for something else, or print as another sign than
// the one to type.
var signs = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, `"`, `\(dq`, "^", `\(ha`, "~", `\(ti`, "`", `\(ga`)

// escaped is plain text as man reads it, in ASCII: whatever else there is stands by its number, which is
// printed as well as the terminal can.
func escaped(text string) string {
	var b strings.Builder
	for _, c := range signs.Replace(text) {
		if c < 0x80 {
			b.WriteRune(c)
		} else {
			fmt.Fprintf(&b, `\[u%04X]`, c)
		}
	}
	return b.String()
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
