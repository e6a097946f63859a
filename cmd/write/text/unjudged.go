package text

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
)

// mostNamed is how many processes are named for which a rule could not be judged;
// of more only the number is told.
const mostNamed = 3

// Unjudged writes what could not be judged, for a reader: a paragraph for each rule
// and reason, with the processes it is true of.
func Unjudged(w io.Writer, list []finding.NotJudged, o Options) error {
	type key struct{ rule, reason string }
	var order []key
	where := map[key][]string{}
	for _, n := range list {
		k := key{n.Rule, n.Reason}
		if where[k] == nil {
			order = append(order, k)
		}
		name := inspection.Named(o.Folder, n.File)
		if n.Process != "" {
			name = fmt.Sprintf("%q of %s", n.Process, name)
		}
		where[k] = append(where[k], name)
	}
	for _, k := range order {
		of := where[k]
		said := strings.Join(of, ", ")
		if len(of) > mostNamed {
			said = fmt.Sprintf("%s and %d more", strings.Join(of[:mostNamed], ", "), len(of)-mostNamed)
		}
		text := fmt.Sprintf("not judged: %s, because %s (%s)", k.rule, k.reason, said)
		for i, line := range words.Wrap(words.Safe(text), o.width()-len(hanging)) {
			if i > 0 {
				line = hanging + line
			}
			if _, err := fmt.Fprintln(w, line); err != nil {
				return err
			}
		}
	}
	return nil
}

// UnjudgedCount says in a line how many rules could not judge, and which.
func UnjudgedCount(w io.Writer, list []finding.NotJudged, o Options) error {
	var rules []string
	for _, n := range list {
		if !slices.Contains(rules, n.Rule) {
			rules = append(rules, n.Rule)
		}
	}
	if len(rules) == 0 {
		return nil
	}
	s := &Sheet{Options: o}
	s.hanging("not judged", fmt.Sprintf("%s, %s (--not-judged)", words.Plural(len(rules), "rule"), words.List(rules)))
	_, err := io.WriteString(w, s.String())
	return err
}

// hanging stands in front of the further lines of a paragraph.
const hanging = "    "
