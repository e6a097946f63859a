package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// How it works
//
// Who begins writes down what is done, as it would be told: soak 8 h, rest 8 h. No line of that
// stands in a process, and each would be a finding. Such a file has one, which shows the frame to
// put around it. Where all lines are statements of one block, that is put around them as they
// are. Else the lines stay as comments, and below them a process is written out of what could be
// read in them (told.go); what they do not say is usual, and a comment says so.

// framed tells of a file that stands in no frame; ok is false where it is no such file.
func framed(f *source.File) (finding.Finding, bool) {
	if f.Size() == 0 || f.Size() > largestFramed {
		return finding.Finding{}, false
	}
	tree, found := syntax.Parse(f)
	if hasFrame(f, tree) {
		return finding.Finding{}, false
	}
	whole := source.Place{File: f, Span: source.Span{Start: f.Start(), End: f.Size()}}
	first := source.Place{File: f, Span: f.FirstLine()}
	if sep := tableOf(f); sep != "" {
		g := noFrame.At(first, fmt.Sprintf("this is a table, with %s between its columns, and a process file is plain text with a statement on each line", sep))
		g.Hint = "write each row as a statement, such as soak 7 h in water at 13 °C; " + newAsks
		return g, true
	}
	uses, rest := apartFromUse(tree)
	if block, ok := blockOf(rest); ok && len(found) == 0 {
		text := putAround(block, f.Text(whole.Span))
		return offerFrame(first, whole, fmt.Sprintf("these statements are not inside a %s", blockWord(block)), text), true
	}
	said := tellingOf(f)
	if uses || said.steps() == 0 {
		return finding.Finding{}, false
	}
	g := offerFrame(first, whole, "this describes a process in plain words: a process is written step by step, in stages", said.file(f))
	if list := said.notUsed(); len(list) > 0 {
		g.Hint += "; of the text were not used: \"" + strings.Join(list, "\", \"") + "\""
		g.Offers[0].Edits[0].New = notUsedLine(list) + g.Offers[0].Edits[0].New
	}
	if len(said.ranges) > 0 {
		g.Hint += "; of these the lower is written: " + strings.Join(said.ranges, ", ")
	}
	if len(said.guessed) > 0 {
		g.Hint += "; the degrees were not said, and these are a guess: " + strings.Join(said.guessed, ", ")
	}
	return g, true
}

// largestFramed is the size of a file that somebody may have begun with: 8 KiB.
const largestFramed = 8 << 10

const newAsks = "or let maltwright new ask, and write the file"

func offerFrame(first, whole source.Place, says, text string) finding.Finding {
	g := noFrame.At(first, says)
	shown := inOneLine(text)
	g.Hint = fmt.Sprintf("put this in the place of the text: %s; %s", shown, newAsks)
	g.Offers = []finding.Offer{{Says: shown, Edits: []finding.Edit{{Place: whole, New: text}}}}
	return g
}

// hasFrame tells whether a statement of the file opens a block that a file may hold, with a name in quotes, or
// brings another file in.
func hasFrame(f *source.File, tree *syntax.Tree) bool {
	words := vocabulary.Words(vocabulary.File)
	for _, s := range tree.Top.Statements {
		if s.Body != nil && slices.Contains(words, strings.ToLower(s.Verb.Text)) {
			return true
		}
	}
	for n := 1; n <= f.Lines(); n++ {
		line := strings.TrimLeft(f.Text(f.Line(n)), " \t>|0123456789.:)")
		word, rest, _ := strings.Cut(line, " ")
		word = strings.ToLower(strings.Trim(word, ":=[]*\"'"))
		if slices.Contains(words, word) && !vocabulary.Includes(word) && strings.ContainsAny(rest, "\"'“„«{[(`") {
			return true
		}
	}
	return false
}

// apartFromUse lists the statements of a file that bring no other file in, and tells whether some do.
func apartFromUse(tree *syntax.Tree) (uses bool, list []*syntax.Statement) {
	for _, s := range tree.Top.Statements {
		if vocabulary.Includes(s.Verb.Text) {
			uses = true
		} else {
			list = append(list, s)
		}
	}
	return uses, list
}

// tableOf is what stands between the columns of a table, "" where the file is none.
func tableOf(f *source.File) string {
	for _, sep := range []struct{ sign, is string }{{"\t", "tabs"}, {";", "semicolons"}, {"|", "bars"}, {",", "commas"}} {
		rows, columns := 0, 0
		for n := 1; n <= f.Lines(); n++ {
			line := strings.TrimSpace(f.Text(f.Line(n)))
			if line == "" {
				continue
			}
			k := strings.Count(line, sep.sign)
			if k == 0 || rows > 0 && k != columns || strings.Contains(line, sep.sign+" ") && strings.Contains(",;", sep.sign) {
				rows = 0
				break
			}
			rows, columns = rows+1, k
		}
		if rows > 1 {
			return sep.is
		}
	}
	return ""
}

// blockOf is the one block in which all statements of a file stand.
func blockOf(list []*syntax.Statement) (vocabulary.Block, bool) {
	if len(list) == 0 {
		return vocabulary.None, false
	}
	for _, b := range []vocabulary.Block{vocabulary.Process, vocabulary.Steep, vocabulary.Germinate, vocabulary.Kiln, vocabulary.Wither,
		vocabulary.Batch, vocabulary.Grain, vocabulary.Site, vocabulary.Vessel, vocabulary.Floor, vocabulary.KilnFacts, vocabulary.Scale} {
		if !slices.ContainsFunc(list, func(s *syntax.Statement) bool { _, ok := vocabulary.Lookup(b, s.Verb.Text); return !ok }) {
			return b, true
		}
	}
	return vocabulary.None, false
}

// heads are what a block is opened with, where nothing is known of its names.
var heads = map[vocabulary.Block][]string{
	vocabulary.Process:   {`process "My malt" {`},
	vocabulary.Steep:     {`process "My malt" {`, `steep in "my bucket" {`},
	vocabulary.Germinate: {`process "My malt" {`, `germinate on "my tray" {`},
	vocabulary.Kiln:      {`process "My malt" {`, `kiln in "my oven" {`},
	vocabulary.Wither:    {`process "My malt" {`, `wither on "my tray" {`},
	vocabulary.Batch:     {`batch "1" of "My malt" {`},
	vocabulary.Grain:     {`grain "my barley" {`},
	vocabulary.Site:      {`site "my house" {`},
	vocabulary.Vessel:    {`vessel "my bucket" {`},
	vocabulary.Floor:     {`floor "my tray" {`},
	vocabulary.KilnFacts: {`kiln "my oven" {`},
	vocabulary.Scale:     {`scale "kitchen" {`},
}

func blockWord(b vocabulary.Block) string {
	word, _, _ := strings.Cut(heads[b][len(heads[b])-1], " ")
	return word
}

// putAround puts the heads of a block, and its braces, around a text.
func putAround(b vocabulary.Block, text string) string {
	var out strings.Builder
	lines := strings.Split(strings.TrimRight(strings.ReplaceAll(text, "\r\n", "\n"), "\n \t"), "\n")
	for first := 0; first < len(lines); first++ { // what brings other files in stays in front
		if word, _, _ := strings.Cut(lines[first], " "); vocabulary.Includes(word) {
			out.WriteString(strings.Join(lines[:first+1], "\n") + "\n")
			lines, first = lines[first+1:], -1
		}
	}
	for i, head := range heads[b] {
		out.WriteString(strings.Repeat("  ", i) + head + "\n")
	}
	in := strings.Repeat("  ", len(heads[b]))
	for _, line := range lines {
		if line = strings.TrimRight(line, " \t"); line != "" {
			line = in + line
		}
		out.WriteString(line + "\n")
	}
	for i := len(heads[b]) - 1; i >= 0; i-- {
		out.WriteString(strings.Repeat("  ", i) + "}\n")
	}
	return out.String()
}

// notUsedLine is the comment that says what of a text is in none of the lines below it.
func notUsedLine(list []string) string {
	return "# Not used below: " + strings.Join(list, "; ") + "\n"
}

// inOneLine writes a text on one line, without its comments.
func inOneLine(text string) string {
	var out strings.Builder
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(strings.TrimSpace(line), " #")
		if line == "" || line[0] == '#' {
			continue
		}
		if s := out.String(); s != "" && !strings.HasSuffix(s, "{") && line != "}" {
			out.WriteString(";")
		}
		if out.Len() > 0 {
			out.WriteString(" ")
		}
		out.WriteString(strings.TrimSpace(line))
	}
	return out.String()
}

// noFrame is of a file whose lines stand in no process.
var noFrame = finding.Rule{Name: "no-frame", Severity: finding.Fault,
	Title: "the statements of the file are not inside a process",
	Why:   "a process says which malt is made from which grain; its stages hold the steps",
	Do:    `put process "its name" { in front of it, its stages in that, and } behind`}
