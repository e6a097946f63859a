// Package fingerprint tells whether a process is still the one that it was: it reduces
// the text of a process, with all that it uses of the house, to twelve signs.
//
// # How it works
//
// Of the files of a house those statements are kept that the process is made by
// (uses.go): the process, the lot, site, vessels, floors and kilns that it names, the
// limits of the house, and what was learnt of the house and of what it names. What only
// keeps account, such as the deliveries of a lot, is left out, and so are comments,
// acceptances, and what people are told of a lot and no forecast goes by, such as whether it
// was dressed. What is kept is written plainly (layout.Plain), each definition for
// itself, in an order that does not depend on the file it stands in; the fingerprint is
// the beginning of the SHA-256 of that.
package fingerprint

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Signs is how many hexadecimal digits a fingerprint has.
const Signs = 12

// Of gives the fingerprint of a process as it is read.
func Of(p *model.Process) string { return signs(trees(p, false)) }

// Is tells whether a fingerprint is that of a process as it is read. Those that were written when
// what people are told of a lot counted too hold while that stands as it did.
func Is(p *model.Process, print string) bool {
	return print == Of(p) || print == signs(Trees(p))
}

// Anew gives the fingerprint of a process that was another before, in the way in which one of that before
// was written; it is false for one that was not of that.
func Anew(print string, before, now *model.Process) (string, bool) {
	switch print {
	case Of(before):
		return Of(now), true
	case signs(Trees(before)):
		return signs(Trees(now)), true
	}
	return "", false
}

func signs(trees []*syntax.Tree) string {
	sum := sha256.Sum256([]byte(text(trees)))
	return hex.EncodeToString(sum[:])[:Signs]
}

// Trees gives the statements by which a process is made, a tree for each file of its
// house that has some, and what people are told of the lots.
func Trees(p *model.Process) []*syntax.Tree { return trees(p, true) }

func trees(p *model.Process, told bool) []*syntax.Tree {
	if p.House == nil {
		return nil
	}
	u := &uses{names: map[name]bool{}, told: told}
	for _, f := range p.House.Files {
		tree, _ := syntax.Parse(f)
		u.trees = append(u.trees, tree)
	}
	u.process(p)
	return u.kept()
}

// text is what the fingerprint is of. Limits stay in their order, for of two the last one
// holds; definitions are put in that of their text.
func text(trees []*syntax.Tree) string {
	var named, ordered []string
	for _, t := range trees {
		for _, s := range t.Top.Statements {
			one := asBefore(string(layout.Plain(&syntax.Tree{File: t.File, Top: syntax.Block{Statements: []*syntax.Statement{s}}})))
			if vocabulary.Opens(vocabulary.File, s.Verb.Text) == vocabulary.Limits {
				ordered = append(ordered, one)
			} else {
				named = append(named, one)
			}
		}
	}
	slices.Sort(named)
	return strings.Join(append(named, ordered...), "\n")
}

// before has words that the language had when records were pinned first.
var before = strings.NewReplacer(" kernels", " corns", "kernel-weight ", "corn-weight ")

// asBefore writes plain text in the words that the language had when records were pinned
// first, so that they stay pinned to the same process. What stands in quotes is a name.
func asBefore(plain string) string {
	parts := strings.Split(plain, `"`)
	for i := 0; i < len(parts); i += 2 {
		parts[i] = before.Replace(parts[i])
	}
	return strings.Join(parts, `"`)
}

// at tells whether a statement of a file is the one that stands at a place.
func at(f *source.File, s *syntax.Statement, p source.Place) bool {
	return p.File == f && p.Start == s.Start
}
