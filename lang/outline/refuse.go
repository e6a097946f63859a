package outline

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// mayBeName refuses what cannot be a name.
func mayBeName(to string) error {
	switch {
	case strings.TrimSpace(to) == "":
		return refuse("a name has at least one letter or sign")
	case strings.TrimSpace(to) != to:
		return refuse("a blank at an end of %q would not be seen: leave it out", to)
	case !utf8.ValidString(to):
		return refuse("this name is no UTF-8 text")
	}
	for _, r := range to {
		switch {
		case strings.ContainsRune("\"“”„", r):
			return refuse("%c ends a name, and cannot stand in one", r)
		case r == '\n' || r == '\r':
			return refuse("a name stands on one line")
		case unicode.IsControl(r) || r != ' ' && unicode.IsSpace(r) || unicode.Is(unicode.Cf, r) && r != joiner:
			return refuse("the hidden character U+%04X cannot stand in a name", r)
		}
	}
	return nil
}

// joiner holds the parts of one emoji together; the language lets it stand.
const joiner = '\u200d'

// allRead refuses where a file does not read that may name the thing.
func (f *Folder) allRead(t thing, _ string) error {
	inHouse := map[string]bool{}
	for _, main := range t.houses {
		for _, p := range f.house(main) {
			if f.file(p) == nil {
				return refuse("%s cannot be read, and is used by %s: the name may stand there too", p, main)
			}
			inHouse[p] = true
		}
	}
	for _, p := range slices.Sorted(maps.Keys(inHouse)) {
		if err := f.reads(p); err != nil {
			return err
		}
	}
	for _, p := range f.all {
		if one := f.file(p); one != nil && !inHouse[p] && one.mayUse() && strings.Contains(string(one.tree.File.Bytes()), t.text) {
			if err := f.reads(p); err != nil {
				return err
			}
		}
	}
	return nil
}

// mayUse tells whether a file may use others than it is known to: where that does not read.
func (one *file) mayUse() bool {
	return len(one.tree.Top.Statements) == 0 || slices.ContainsFunc(one.tree.Top.Statements, func(s *syntax.Statement) bool {
		return s.Broken && vocabulary.Includes(s.Verb.Text)
	})
}

// reads refuses where a file does not read.
func (f *Folder) reads(at string) error {
	found := f.file(at).found
	worst := slices.IndexFunc(found, func(x finding.Finding) bool { return x.Severity >= finding.Fault })
	if worst < 0 {
		return nil
	}
	return refuse("%s does not read: put it right first, since the name may stand there too: %s", where(at, found[worst].Place), found[worst].Message)
}

// where says at which line of a file something stands.
func where(at string, p source.Place) string {
	if p.File == nil {
		return at
	}
	return fmt.Sprintf("%s, line %d,", at, p.File.Position(p.Start, source.Characters).Line)
}

// noClash refuses a name by which the same kind of thing is known already, or is asked for.
func (f *Folder) noClash(t thing, to string) error {
	looked := map[string]bool{}
	for _, main := range t.houses {
		for _, p := range f.house(main) {
			if looked[p] {
				continue
			}
			looked[p] = true
			for _, n := range f.file(p).names {
				switch {
				case n.Text != to || !n.May(t.kind):
				case n.Defines:
					return refuse("another %s is already called %q: %s", t.kind, to, strings.TrimRight(where(p, n.Place), ","))
				default:
					return refuse("%s names %q already, and would then mean this %s", where(p, n.Place), to, t.kind)
				}
			}
		}
	}
	if t.kind != vocabulary.Batch {
		return nil
	}
	for _, p := range f.all { // records of a folder are told apart by their names
		if path.Dir(p) == path.Dir(t.files[0]) && f.defined([]string{p}, vocabulary.Batch, to) {
			return refuse("another batch is already called %q: %s", to, p)
		}
	}
	return nil
}

// oneMeaning refuses where a statement takes things of several kinds, and two of them are called so or
// would be.
func (f *Folder) oneMeaning(t thing, to string) error {
	for _, p := range t.files {
		for _, n := range f.file(p).names {
			if len(n.Or) == 0 || !f.meant(p, n, t) {
				continue
			}
			if kinds := f.kinds(p, n); len(kinds) > 1 {
				return f.ambiguous(kinds, t.text)
			}
			n.Text = to
			if kinds := f.kinds(p, n); len(kinds) > 0 {
				return refuse("a %s is called %q already, and %s would not say which of them is meant", kinds[0], to, strings.TrimRight(where(p, n.Place), ","))
			}
		}
	}
	return nil
}

func (f *Folder) ambiguous(kinds []vocabulary.Block, text string) error {
	return refuse("a %s and a %s are called %q, and a record does not say which of them is meant: rename them by hand", kinds[0], kinds[1], text)
}
