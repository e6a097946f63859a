package outline

import (
	"fmt"
	"slices"
	"strings"

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
	if err := f.readsSo(t, to, edits); err != nil {
		return nil, err
	}
	return edits, nil
}

// blanks writes the blanks that programs put in names as the language reads them.
var blanks = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")

var escaped = strings.NewReplacer(`\`, `\\`)

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

// changed gives the files that edits change, as they would be. The edits of a file stand in order.
func (f *Folder) changed(edits []Edit) map[string][]byte {
	out, done := map[string][]byte{}, map[string]int{} // done is how far the old text is taken over
	for _, e := range edits {
		text := f.file(e.Path).tree.File.Bytes()
		out[e.Path] = append(append(out[e.Path], text[done[e.Path]:e.Place.Start]...), e.New...)
		done[e.Path] = e.Place.End
	}
	for p, at := range done {
		out[p] = append(out[p], f.file(p).tree.File.Bytes()[at:]...)
	}
	return out
}
