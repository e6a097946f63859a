// Package man writes the pages of the manual, one for the program, one for each command and
// one for the language, from what the program says of itself: the help of the commands and
// the table of the language. They hold no date but that of the version.
package man

import (
	"fmt"
	"strings"
	"time"
)

// Page is a page of the manual.
type Page struct {
	Name    string // maltwright-forecast
	Section int    // 1 for commands, 5 for files
	Text    string // for man to read
}

// File is where a page stands below a folder of manuals: man1/maltwright.1.
func (p Page) File() string { return fmt.Sprintf("man%d/%s.%d", p.Section, p.Name, p.Section) }

// Stamp is what the foot of a page says.
type Stamp struct {
	Version string    // "" leaves it out
	Time    time.Time // of the version; the zero time leaves it out
}

// Mark begins each page: what does not begin so is not of this package.
const Mark = `.\" Written by maltwright man, from what the program says of itself.`

// program is the name that all pages begin with.
const program = "maltwright"

// begun begins a page: its title and its name.
func begun(name string, section int, about string, s Stamp) *roff {
	r := &roff{}
	r.b.WriteString(Mark + "\n")
	date := ""
	if !s.Time.IsZero() {
		date = s.Time.UTC().Format(time.DateOnly)
	}
	r.macro("TH", title(name), fmt.Sprint(section), date, strings.TrimSpace(program+" "+short(s.Version)), program)
	r.macro("nh")      // words and commands stay whole,
	r.macro("ad", "l") // and lines are not stretched
	r.macro("SH", "NAME")
	r.line(escaped(name) + ` \- ` + escaped(small(about)))
	return r
}

// A head has the title twice, with its section, and the name of the program between; a foot has the version, the date and the
// title. So much of a title and of a version fits into 60 columns.
const (
	widestTitle   = 22
	widestVersion = 12
)

// title is the name of a page as its head and foot have it. A long one leaves out the program, which the head names beside it.
func title(name string) string {
	if len(name) > widestTitle {
		name = strings.TrimPrefix(name, program+"-")
	}
	return strings.ToUpper(name)
}

// short is a version as a foot has it: of a long one the three numbers. What else there is of it maltwright version tells.
func short(version string) string {
	if i := strings.IndexAny(version, "-+"); i >= 0 && len(version) > widestVersion {
		return version[:i]
	}
	return version
}

// small is a sentence as man lists it: without a capital and without a full stop.
func small(sentence string) string {
	sentence = strings.TrimSuffix(oneLine(sentence), ".")
	if len(sentence) > 1 && (sentence[1] >= 'a' || sentence[:2] == "A ") {
		sentence = strings.ToLower(sentence[:1]) + sentence[1:]
	}
	return sentence
}

// also writes what to read beside a page, each with its section.
func (r *roff) also(pages ...Page) {
	if len(pages) == 0 {
		return
	}
	r.macro("SH", "SEE ALSO")
	for i, p := range pages {
		comma := ","
		if i == len(pages)-1 {
			comma = ""
		}
		r.line(fmt.Sprintf("%s(%d)%s", bold(p.Name), p.Section, comma))
	}
}
