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
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Refusal is why something is not given another name: a sentence without a full stop.
type Refusal string

// Error is the sentence.
func (r Refusal) Error() string { return string(r) }

func refuse(format string, args ...any) error { return Refusal(fmt.Sprintf(format, args...)) }

// Edit is a change of the text of a file.
type Edit struct {
	Path string
	finding.Edit
}

// Past tells whether the revision to which a batch of a file is pinned holds the text that its signs are of. The
// batch was read by itself, from the folder of the file.
type Past func(file string, b *model.Batch) bool

// Renamable gives the name at a place of a file; the error is a Refusal where there is none.
func (f *Folder) Renamable(at string, offset int) (Name, error) {
	n, ok := f.At(at, offset)
	if !ok {
		return n, refuse("no name stands here: %s can be given another", kindList())
	}
	if len(f.Definitions(at, n)) == 0 {
		return n, refuse("no file here defines %s %q, so it is not known what else means it", n.Kind, n.Text)
	}
	return n, nil
}

// kindList names what has a name.
func kindList() string {
	var list []string
	for _, word := range vocabulary.Words(vocabulary.File) {
		if kind, ok := Definer(word); ok {
			list = append(list, string(kind))
		}
	}
	last := len(list) - 1
	return "the name of a " + strings.Join(list[:last], ", ") + " or " + list[last]
}

// Rename gives that another name which is named at a place of a file: in every file of the folder
// that means the same thing. The edits stand by file and place. The error is a Refusal, and then nothing
// is to be changed.
//
// A record that is pinned to its process stays so: what is renamed may be of the text that its signs are of, and
// then the signs are written anew where they held before. Those with a revision that holds their text, by past,
// stay as they are, since the text there keeps its old names; past may be nil.
func (f *Folder) Rename(at string, offset int, to string, past Past) ([]Edit, error) {
	n, err := f.Renamable(at, offset)
	if err != nil {
		return nil, err
	}
	to = blanks.Replace(to)
	if to == n.Text {
		return nil, nil
	}
	if err := mayBeName(to); err != nil {
		return nil, err
	}
	if kinds := f.kinds(at, n); len(kinds) > 1 {
		return nil, f.ambiguous(kinds, n.Text)
	}
	t := f.thingOf(at, n)
	for _, check := range []func(thing, string) error{f.allRead, f.noClash, f.oneMeaning} {
		if err := check(t, to); err != nil {
			return nil, err
		}
	}
	var edits []Edit
	for _, o := range f.Same(at, n) {
		edits = append(edits, Edit{o.Path, finding.Edit{Place: source.Place{File: o.Place.File, Span: o.Inner}, New: escaped.Replace(to)}})
	}
	signs, err := f.pins(t, to, edits, past)
	if err != nil {
		return nil, err
	}
	edits = append(edits, signs...)
	slices.SortFunc(edits, func(a, b Edit) int {
		if a.Path != b.Path {
			return strings.Compare(a.Path, b.Path)
		}
		return a.Place.Start - b.Place.Start
	})
	return edits, f.readsSo(t, to, edits)
}

// blanks writes the blanks that programs put in names as the language reads them.
var blanks = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")

var escaped = strings.NewReplacer(`\`, `\\`)

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
		if one := f.file(p); one != nil && !inHouse[p] && strings.Contains(string(one.tree.File.Bytes()), t.text) {
			if err := f.reads(p); err != nil {
				return err
			}
		}
	}
	return nil
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

// readsSo refuses where a changed file would not be read with the new name in the places of the old one, and
// all else as it was. It cannot be, as far as is known.
func (f *Folder) readsSo(t thing, to string, edits []Edit) error {
	for p, text := range f.changed(edits) {
		old := f.file(p)
		tree, found := syntax.Parse(source.New(old.tree.File.Name(), text))
		worst, any := finding.Worst(found)
		names := Names(tree)
		same := len(names) == len(old.names) && !(any && worst >= finding.Fault)
		for i := 0; same && i < len(names); i++ {
			was, is := old.names[i], names[i]
			if f.meant(p, was, t) {
				was.Text = to
			}
			same = was.Text == is.Text && was.Kind == is.Kind && was.Defines == is.Defines
		}
		if !same {
			return refuse("%s would be read otherwise with the name %q", p, to)
		}
	}
	return nil
}

// changed gives the files that edits change, as they would be.
func (f *Folder) changed(edits []Edit) map[string][]byte {
	out := map[string][]byte{}
	for i := len(edits) - 1; i >= 0; i-- { // from the end, so that the places before stay
		e := edits[i]
		text, ok := out[e.Path]
		if !ok {
			text = slices.Clone(f.file(e.Path).tree.File.Bytes())
		}
		out[e.Path] = slices.Concat(text[:e.Place.Start], []byte(e.New), text[e.Place.End:])
	}
	return out
}
