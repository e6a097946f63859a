package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Note appends one reading to the record of a batch.
type Note struct {
	File    string   `arg:"" name:"file" help:"The file with the batch."`
	Reading []string `arg:"" help:"The reading, as a line of the batch: weighed 7.48 kg."`
	At      string   `placeholder:"TIME" help:"When it was read, as 14:00 or \"2026-03-06 14:00\"; otherwise now. A time alone follows the line above."`
	Batch   string   `placeholder:"NAME" help:"Which batch, where the file holds several."`
	DryRun  bool     `help:"Check the reading and print its line; write nothing."`
	Root    string   `placeholder:"FOLDER" help:"Folder that use may read; otherwise that of the file."`
}

// Help is the longer help of the command.
func (Note) Help() string {
	return `The reading is checked first, also beside the process and the rest of the record: one
that does not read, or cannot be, is told in a line, and the file stays as it is. One
that is doubtful is written, and told. Nothing else in the file is touched. Who notes
while another command writes the file waits for it, up to half a minute, and at
every moment the old or the new file is there, whole.

Examples:

  maltwright note batch.malt weighed 7.48 kg after soak 1
  maltwright note batch.malt counted chit 84 of 100
  maltwright note batch.malt counted acrospire 2 6 22 55 13 2 --at 08:00
  maltwright note batch.malt felt rub chalky
  maltwright note batch.malt read bed 17.2 °C --at "2026-03-10 21:00"
  maltwright note batch.malt turned
  maltwright note batch.malt weighed 4.92 kg clean malt --dry-run
  maltwright note batch.malt changed soak 3 to 5 h because "left for work"

Exit code: 0 written; 1 the reading or the file does not read, or cannot be; 2 the
command line cannot be understood, or the file holds no such batch; 3 the file
cannot be read or written.`
}

// Run checks the reading and writes it. Now is asked again under the lock, so that of
// two who wait for each other the later line has the later time.
func (c Note) Run(w *World) error {
	doubts, err := c.judged(w) // before a lock is put beside the file, for it takes a while
	if err != nil {
		return err
	}
	in, err := w.file(c.File, c.Root)
	if err != nil {
		return err
	}
	said := ""
	note := func(text []byte) ([]byte, error) {
		line, err := c.line(time.Now())
		if err != nil {
			return nil, err
		}
		in.text = text
		n, err := c.appended(in, line)
		if err != nil {
			return nil, err
		}
		wrote := words.OneLine(string(n.text[n.at.Start:n.at.End]))
		said = fmt.Sprintf("%s: %s", words.Safe(n.batch), words.Safe(wrote))
		return n.text, nil
	}
	if c.DryRun {
		_, err = note(in.text)
	} else {
		err = w.edit(c.File, in.path, note)
	}
	if err != nil {
		return err
	}
	fmt.Fprintln(w.Out, said)
	tellDoubts(w, doubts)
	return nil
}

// line reads the words of the reading as one statement, and gives it its time.
func (c Note) line(now time.Time) (*syntax.Statement, error) {
	text := c.words()
	s, err := statement(text)
	if err != nil {
		return nil, err
	}
	row, ok := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text)
	if !ok {
		hint := "known: " + strings.Join(vocabulary.Words(vocabulary.Batch), ", ")
		if meant, ok := vocabulary.Meant(vocabulary.Batch, s.Verb.Text); ok {
			hint = fmt.Sprintf("did you mean %s?", meant)
		}
		return nil, usage("%q is not a word of a batch; %s", s.Verb.Text, hint)
	}
	at, takes := row.Timed()
	timed := takes && slices.ContainsFunc(s.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == at.Word })
	switch {
	case c.At != "" && timed:
		return nil, usage("the reading says its time, and so does --at")
	case c.At != "" && !takes:
		return nil, usage("%s has no time, but --at gives one", s.Verb.Text)
	case c.At != "":
		return statement(text + " " + at.Word + " " + c.At)
	case takes && !timed:
		return statement(text + " " + at.Word + " " + now.Format("2006-01-02 15:04"))
	}
	return s, nil
}

// words joins the arguments. The shell took the quotes off a reason, which is put
// in them again.
func (c Note) words() string {
	i := slices.Index(c.Reading, vocabulary.ClauseBecause)
	if i < 0 || i+1 >= len(c.Reading) || strings.HasPrefix(c.Reading[i+1], `"`) {
		return strings.Join(c.Reading, " ")
	}
	why := strings.Join(c.Reading[i+1:], " ")
	return strings.Join(c.Reading[:i+1], " ") + " " + strconv.Quote(why)
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
	return nil, usage("a reading is one line of a batch, such as: weighed 7.48 kg")
}

// refused is the outcome of a reading that does not read or cannot be.
func refused(f finding.Finding) error {
	text := f.Message
	if f.Hint != "" {
		text += "; " + f.Hint
	}
	return failure{ExitFindings, fmt.Errorf("not noted: %s [%s]", text, f.Rule)}
}

// noted is a file with the line in it.
type noted struct {
	text  []byte
	at    source.Span // where the line stands
	batch string      // its name
	house *model.House
	found []finding.Finding
}

// appended gives the file with the line in it.
func (c Note) appended(in input, line *syntax.Statement) (n noted, err error) {
	tree, found := syntax.Parse(source.New(in.name, in.text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return n, failure{ExitFindings, fmt.Errorf("not noted: %s does not read; see maltwright check %[1]s", in.name)}
	}
	home, name, err := c.home(tree)
	if err != nil {
		return n, err
	}
	n.batch = name
	n.text, n.at = layout.Append(tree, home, line, vocabulary.Batch)
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return n, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	n.house, n.found = read.Load(in.name, n.text, in.dir, root)
	for _, f := range n.found {
		if f.Severity >= finding.Fault && f.Place.File == n.house.Files[0] && n.at.Start <= f.Place.Start && f.Place.Start <= n.at.End {
			return n, refused(f)
		}
	}
	for _, b := range n.house.Batches {
		for _, x := range b.Readings {
			if x.Place().File == n.house.Files[0] && n.at.Start <= x.Place().Start && x.Place().Start < n.at.End && time.Until(x.When().Time) > clockSlack {
				return n, failure{ExitFindings, fmt.Errorf("not noted: %s lies ahead of this computer's clock, and no line could follow it until then; look at the date", x.When().Format("2006-01-02 15:04"))}
			}
		}
	}
	return n, nil
}

// clockSlack is how far ahead of this computer's clock a reading may lie: its clock or
// its zone may be off.
const clockSlack = 24 * time.Hour

// home finds the batch that is meant.
func (c Note) home(t *syntax.Tree) (*syntax.Statement, string, error) {
	var names []string
	var home *syntax.Statement
	var last string
	for _, s := range t.Top.Statements {
		if vocabulary.Opens(vocabulary.File, s.Verb.Text) != vocabulary.Batch || s.Body == nil || len(s.Terms) == 0 {
			continue
		}
		name, ok := s.Terms[0].(syntax.Text)
		if !ok || c.Batch != "" && name.Value != c.Batch {
			continue
		}
		names, home, last = append(names, strconv.Quote(name.Value)), s, name.Value
	}
	switch {
	case len(names) == 1:
		return home, last, nil
	case len(names) > 1:
		return nil, "", usage("%s holds %d batches; say which with --batch: %s", c.File, len(names), strings.Join(names, ", "))
	case c.Batch != "":
		return nil, "", usage("%s holds no batch called %q", c.File, c.Batch)
	}
	return nil, "", usage("%s holds no batch; begin one with: batch \"its name\" of \"the process\" { began 2026-03-06 07:00 }", c.File)
}
