package finding

import (
	"fmt"
	"strings"

	"maltwright/lang/source"
)

// Page is what there is to read of the rule, in Markdown: what explain shows.
func (r Rule) Page() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\nUsually a **%s**: %s.\n", r.Name, r.Severity, r.Title)
	for _, p := range []struct{ head, text string }{
		{"Why", r.Why}, {"What to do", r.Do}, {"What it cannot see", r.Limits},
	} {
		if p.text != "" {
			fmt.Fprintf(&b, "\n## %s\n\n%s.\n", p.head, capital(strings.TrimSuffix(p.text, ".")))
		}
	}
	for _, p := range []struct{ head, text string }{{"Not so", r.Bad}, {"But so", r.Good}} {
		if p.text != "" {
			fmt.Fprintf(&b, "\n## %s\n\n```\n%s\n```\n", p.head, seen(p.text))
		}
	}
	return b.String()
}

// seen writes an example so that each of its characters can be seen.
func seen(text string) string {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	for i := range lines {
		lines[i] = source.Safe(lines[i])
	}
	return strings.Join(lines, "\n")
}

// capital begins a sentence, unless its first word is code or a name that is written small.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
