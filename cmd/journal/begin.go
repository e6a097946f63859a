package journal

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Beginning is a batch whose record is opened.
type Beginning struct {
	Uses     string // the file of its process, from that of the record
	Batch    string
	Process  string
	Began    time.Time
	Charge   string // the weight as it is written; "" where the record leaves it to the process
	Lot      string // of which grain
	Print    string // the fingerprint of its process
	Revision string // of git that holds it; "" where none does
}

// Text is the record that is opened, laid out. The error is a Refusal: a name in it cannot
// be written.
func (b Beginning) Text() ([]byte, error) {
	pinned := "pinned " + strconv.Quote(b.Print)
	if b.Revision != "" {
		pinned += " from " + strconv.Quote(b.Revision)
	}
	from := ""
	if b.Charge != "" {
		from = fmt.Sprintf("  from %s of \"%s\"\n", b.Charge, b.Lot)
	}
	text := fmt.Sprintf("use \"%s\"\n\nbatch \"%s\" of \"%s\" {\n  began %s\n%s  %s\n}\n", b.Uses, b.Batch, b.Process, b.Began.Format("2006-01-02 15:04"), from, pinned)
	tree, found := syntax.Parse(source.New("record", []byte(text)))
	if len(found) > 0 || strings.ContainsAny(b.Uses+b.Batch+b.Process+b.Lot, "\"\r\n") {
		return nil, Refusal("not begun: a name holds a sign that no text of the language can have")
	}
	return layout.Write(tree), nil
}

// Batches lists the names of the batches in a text.
func Batches(name string, text []byte) (names []string) {
	tree, _ := syntax.Parse(source.New(name, text))
	for _, s := range tree.Top.Statements {
		if vocabulary.Opens(vocabulary.File, s.Verb.Text) != vocabulary.Batch || len(s.Terms) == 0 {
			continue
		}
		if called, ok := s.Terms[0].(syntax.Text); ok {
			names = append(names, called.Value)
		}
	}
	return names
}

// numbered is how batches of a year are called: 26-03.
var numbered = regexp.MustCompile(`^(\d\d)-(\d{1,6})$`)

// Next is the name of the next batch of a year among those that there are: its two last
// digits and a number above all of them.
func Next(names []string, year int) string {
	prefix, most := fmt.Sprintf("%02d", year%100), 0
	for _, name := range names {
		if m := numbered.FindStringSubmatch(strings.TrimSpace(name)); m != nil && m[1] == prefix {
			n, _ := strconv.Atoi(m[2]) // six digits at the most
			most = max(most, n)
		}
	}
	return fmt.Sprintf("%s-%02d", prefix, most+1)
}
