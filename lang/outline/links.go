package outline

import (
	"io/fs"
	"path"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Link is a file that a text names.
type Link struct {
	Place  source.Place // without its quotes
	Target string       // as it is written: from the folder of the file, with / between its parts
}

// Links lists the files that a file uses, in the order in which it names them.
func Links(t *syntax.Tree) []Link {
	var list []Link
	for _, s := range t.Top.Statements {
		if s.Broken || !vocabulary.Includes(s.Verb.Text) || len(s.Terms) != 1 {
			continue
		}
		if text, ok := s.Terms[0].(syntax.Text); ok && text.Value != "" {
			list = append(list, Link{source.Place{File: t.File, Span: text.Inner(t.File)}, text.Value})
		}
	}
	return list
}

// From gives the path of the file that a link of another file leads to, from the same folder as the path of that; ok is false
// where it leads out of it, or is no plain path.
func (l Link) From(file string) (to string, ok bool) {
	to = path.Join(path.Dir(file), l.Target)
	return to, fs.ValidPath(to) && !path.IsAbs(l.Target) && !strings.ContainsAny(l.Target, `\:`)
}
