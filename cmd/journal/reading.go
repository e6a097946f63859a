// Package journal writes a reading into the record of a batch: it reads the words as a
// line of the record, puts the line in its place, and judges it beside the process and
// the rest of the record. It touches no file: who calls it writes what it gives.
package journal

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"maltwright/lang/calendar"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Misuse is the error of words that are no reading, or of a file that holds no such
// batch.
type Misuse string

func (e Misuse) Error() string { return string(e) }

func misuse(format string, args ...any) error { return Misuse(fmt.Sprintf(format, args...)) }

// Refusal is the error of a reading that reads and cannot be noted.
type Refusal string

func (e Refusal) Error() string { return string(e) }

// refused is the outcome of a finding that stands against a reading.
func refused(f finding.Finding) error {
	text := f.Message
	if f.Hint != "" {
		text += "; " + f.Hint
	}
	return Refusal(fmt.Sprintf("not noted: %s [%s]", text, f.Rule))
}

// Reading is a reading as it was typed.
type Reading struct {
	Words []string
	At    string         // its time, as people say it; "" where the words say it or it is now
	Many  bool           // it is one of many, and At is for those which say no time
	Order calendar.Order // of the day and the month in it
}

// line reads the words as one statement, and gives it its time: of now, or as it was in the line
// that it takes the place of.
func (r Reading) line(now time.Time, was *syntax.Statement) (typed, error) {
	x, err := r.typed(now)
	if err != nil {
		return x, err
	}
	row, ok := vocabulary.Lookup(vocabulary.Batch, x.Verb.Text)
	if !ok {
		hint := "known: " + strings.Join(vocabulary.Words(vocabulary.Batch), ", ")
		if other, ok := vocabulary.OtherWord(vocabulary.Batch, x.Verb.Text); ok && other.Means != "" {
			hint = fmt.Sprintf("did you mean %s?", other.Means)
		} else if meant, ok := vocabulary.Meant(vocabulary.Batch, x.Verb.Text); ok {
			hint = fmt.Sprintf("did you mean %s?", meant)
		}
		return x, misuse("%q is not a word of a batch; %s", x.Verb.Text, hint)
	}
	at, takes := row.Timed()
	timed := takes && slices.ContainsFunc(x.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == at.Word })
	switch {
	case r.At != "" && r.Many && (timed || !takes):
		return x, nil
	case r.At != "" && timed:
		return x, misuse("the reading says its time, and so does --at")
	case r.At != "" && !takes:
		return x, misuse("%s has no time, but --at gives one", x.Verb.Text)
	case r.At != "":
		when, err := r.when(now)
		if err != nil {
			return x, err
		}
		return typedAs(x.text + " " + at.Word + " " + when)
	case !takes || timed:
		return x, nil
	}
	when := now.Format(stampLayout)
	if was != nil {
		m, ok := stampOf(was)
		switch {
		case ok:
			when = m.text()
		case !at.Required:
			return x, nil
		}
	}
	return typedAs(x.text + " " + at.Word + " " + when)
}

// when writes the time of the reading as a record has it. What the language reads stands as it is;
// fri 18:00 and 2 h ago get their date.
func (r Reading) when(now time.Time) (string, error) {
	if s, err := statement(turned + " " + vocabulary.ClauseAt + " " + r.At); err == nil {
		if _, ok := stampOf(s); ok {
			return r.At, nil
		}
	}
	return r.said("--at", r.At, now)
}

// said reads a time as people say it, and writes it as a record has it. Flag is what it stands behind.
func (r Reading) said(flag, text string, now time.Time) (string, error) {
	list, err := calendar.Reader{Now: now, Back: true, Order: r.Order}.Read(text)
	var says *calendar.Error
	switch {
	case errors.As(err, &says):
		return "", misuse("%s %q%s", flag, text, says.Says)
	case err != nil:
		return "", misuse("%s %q: %v", flag, text, err)
	}
	var past []string
	for _, m := range list {
		if !m.At.After(now.Add(calendar.Slack)) {
			past = append(past, m.At.In(now.Location()).Format(stampLayout))
		}
	}
	switch {
	case len(past) == 0:
		past = []string{"yesterday " + list[0].At.Format("15:04")}
		fallthrough
	case len(past) < len(list):
		return "", misuse("%s %q: that time has not come yet, for it is %s; if it was read before, write %s", flag, text, now.Format("Mon 15:04"), strings.Join(past, " or "))
	case len(past) > 1:
		return "", misuse("%s %q may be %s; write the one that is meant", flag, text, strings.Join(past, " or "))
	}
	return past[0], nil
}

// typed is a line as it was typed, with its text.
type typed struct {
	*syntax.Statement
	text string
}

func typedAs(text string) (typed, error) {
	s, err := statement(text)
	return typed{s, text}, err
}

const stampLayout = "2006-01-02 15:04"

// joined joins the words. A shell took the quotes off names and texts, which are put in
// them again. What the shell gave as one with blanks in it is one; of single words a name
// goes to the next clause, and a reason or a remark to the end.
func (r Reading) joined() string {
	r.Words = spelt(r.Words)
	row := &vocabulary.Row{}
	if len(r.Words) > 0 {
		if known, ok := vocabulary.Lookup(vocabulary.Batch, r.Words[0]); ok {
			row = known
		}
	}
	var out []string
	for i := 0; i < len(r.Words); i++ {
		word := r.Words[i]
		if out = append(out, word); i+1 == len(r.Words) || !bare(row, i, word, r.Words[i+1]) {
			continue
		}
		end, whole := i+2, i == 0 || word == vocabulary.ClauseBecause
		for end < len(r.Words) && !strings.Contains(r.Words[i+1], " ") && (whole || !opens(row, r.Words[end])) {
			end++
		}
		out = append(out, strconv.Quote(strings.Join(r.Words[i+1:end], " ")))
		i = end - 1
	}
	return strings.Join(out, " ")
}

// bare tells whether a word, the i-th, wants a text, and what follows is none.
func bare(row *vocabulary.Row, i int, word, next string) bool {
	slots := row.Slots
	if c, ok := row.Clause(word); i > 0 && ok {
		slots = c.Slots
	} else if i > 0 {
		slots = nil
	}
	wants := word == vocabulary.ClauseBecause || len(slots) > 0 && (slots[0].Kind == vocabulary.Name || slots[0].Kind == vocabulary.Text)
	return wants && !strings.HasPrefix(next, `"`) && !strings.HasPrefix(next, "“")
}

func opens(row *vocabulary.Row, word string) bool {
	_, ok := row.Clause(word)
	return ok
}

// statement reads a text as one statement of one line.
func statement(text string) (*syntax.Statement, error) {
	tree, found := syntax.Parse(source.New("the reading", []byte(text)))
	switch list := tree.Top.Statements; {
	case len(found) > 0:
		return nil, refused(found[0])
	case len(list) == 1 && list[0].Body == nil && !list[0].Broken && list[0].Trail == nil && len(list[0].Lead)+len(tree.Top.Tail) == 0:
		return list[0], nil
	}
	return nil, misuse("a reading is one line of a batch, such as: weighed 7.48 kg")
}
