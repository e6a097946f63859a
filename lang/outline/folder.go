package outline

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Texts are the files of a folder and of those below it, by their paths from there, with / between
// the parts.
type Texts interface {
	Paths() []string // of the files of the language
	// Tree is a file as statements, with what is found of them; the error is why it cannot be read.
	Tree(path string) (*syntax.Tree, []finding.Finding, error)
}

// Folder is a folder of files among which names are looked for. It reads each file once, and is for one
// question: its files do not change. It is not for several goroutines.
type Folder struct {
	texts Texts
	files map[string]*file
	all   []string            // the files of the language, sorted
	in    map[string][]string // by the path of a file, the files in whose houses it is; nil until it is asked for
	means map[meaning][]vocabulary.Block
}

// meaning is a name in a file, of which it is asked what it may mean.
type meaning struct {
	path, text string
	kind       vocabulary.Block
}

// file is what is known of one file.
type file struct {
	path  string
	tree  *syntax.Tree
	found []finding.Finding // of its statements
	names []Name
	uses  []string // paths of the files that it names itself
	house []string // of the files of its house: itself, and all that it uses
}

// In makes a folder of texts.
func In(texts Texts) *Folder {
	return &Folder{texts: texts, files: map[string]*file{}, all: slices.Sorted(slices.Values(texts.Paths())), means: map[meaning][]vocabulary.Block{}}
}

// file reads a file, once; nil where it cannot be read.
func (f *Folder) file(at string) *file {
	if have, ok := f.files[at]; ok {
		return have
	}
	tree, found, err := f.texts.Tree(at)
	if err != nil {
		f.files[at] = nil
		return nil
	}
	one := &file{path: at, tree: tree, found: found, names: Names(tree)}
	for _, l := range Links(tree) {
		if to, ok := l.From(at); ok {
			one.uses = append(one.uses, to)
		}
	}
	f.files[at] = one
	return one
}

// house lists the files of the house of a file: itself first, and what it uses, as it is read.
func (f *Folder) house(at string) []string {
	main := f.file(at)
	if main == nil {
		return nil
	}
	if main.house != nil {
		return main.house
	}
	seen := []string{at} // few, since a house has few files
	for i := 0; i < len(seen) && len(seen) <= read.MaxFiles; i++ {
		one := f.file(seen[i])
		if one == nil {
			continue
		}
		for _, to := range one.uses {
			if within(path.Dir(at), to) && !slices.Contains(seen, to) {
				seen = append(seen, to)
			}
		}
	}
	main.house = seen
	return seen
}

// within tells whether a file lies in a folder or below it. What a file uses lies no further out.
func within(dir, file string) bool { return dir == "." || strings.HasPrefix(file, dir+"/") }

// houses lists the files in whose houses a file is: those of the folder, and itself.
func (f *Folder) houses(at string) []string {
	if f.in == nil {
		f.in = map[string][]string{}
		for _, main := range f.all {
			for _, p := range f.house(main) {
				f.in[p] = append(f.in[p], main)
			}
		}
	}
	if _, ok := slices.BinarySearch(f.all, at); !ok { // one that lies beside
		return append(slices.Clip(f.in[at]), at)
	}
	return f.in[at]
}

// Occurrence is a name, and the file in which it stands.
type Occurrence struct {
	Path string
	Name
}

// At gives the name that stands at a place of a file; its quotes belong to it.
func (f *Folder) At(at string, offset int) (Name, bool) {
	one := f.file(at)
	if one == nil {
		return Name{}, false
	}
	for _, n := range one.names {
		if n.Place.Start <= offset && offset <= n.Place.End {
			return n, true
		}
	}
	return Name{}, false
}

// thing is what a name means: a name, what is called so, and the files in which it is meant.
type thing struct {
	kind   vocabulary.Block
	text   string
	files  []string // in which it is named
	houses []string // files in whose houses it is
}

// thingOf finds what a name of a file means. It is the same in each house that shares a file with another in which
// it is named.
func (f *Folder) thingOf(at string, n Name) thing {
	t := thing{kind: n.Kind, text: n.Text}
	if kinds := f.kinds(at, n); len(kinds) > 0 {
		t.kind = kinds[0]
	}
	files, houses := map[string]bool{at: true}, map[string]bool{}
	for todo := []string{at}; len(todo) > 0; todo = todo[1:] {
		for _, main := range f.houses(todo[0]) {
			if houses[main] {
				continue
			}
			houses[main] = true
			for _, p := range f.house(main) {
				if one := f.file(p); one != nil && !files[p] && slices.ContainsFunc(one.names, t.named) {
					files[p], todo = true, append(todo, p)
				}
			}
		}
	}
	t.files, t.houses = slices.Sorted(maps.Keys(files)), slices.Sorted(maps.Keys(houses))
	return t
}

// named tells whether a name may be that of the thing.
func (t thing) named(n Name) bool { return n.Text == t.text && n.May(t.kind) }

// kinds are those of the things that a name may mean in the houses of its file: of more than one only
// where things of several kinds are called so, and it may mean either.
func (f *Folder) kinds(at string, n Name) []vocabulary.Block {
	if len(n.Or) == 0 {
		return []vocabulary.Block{n.Kind}
	}
	key := meaning{at, n.Text, n.Kind}
	kinds, known := f.means[key]
	if known {
		return kinds
	}
	for _, main := range f.houses(at) {
		for _, kind := range append([]vocabulary.Block{n.Kind}, n.Or...) {
			if !slices.Contains(kinds, kind) && f.defined(f.house(main), kind, n.Text) {
				kinds = append(kinds, kind)
			}
		}
	}
	f.means[key] = kinds
	return kinds
}

// defined tells whether files define something of a kind by a name.
func (f *Folder) defined(files []string, kind vocabulary.Block, text string) bool {
	return slices.ContainsFunc(files, func(p string) bool {
		one := f.file(p)
		return one != nil && slices.ContainsFunc(one.names, func(n Name) bool { return n.Defines && n.Kind == kind && n.Text == text })
	})
}

// Same lists every place of the folder at which the thing is named that a name of a file means, by file and
// place. A name that may mean things of several kinds is in the list of each.
func (f *Folder) Same(at string, n Name) []Occurrence {
	var list []Occurrence
	t := f.thingOf(at, n)
	for _, p := range t.files {
		for _, n := range f.file(p).names {
			if f.meant(p, n, t) {
				list = append(list, Occurrence{p, n})
			}
		}
	}
	return list
}

// meant tells whether a name of a file is that of a thing: of one that may mean several kinds of thing, whether
// the thing is of those that are called so there.
func (f *Folder) meant(at string, n Name, t thing) bool {
	return t.named(n) && (len(n.Or) == 0 || slices.Contains(f.kinds(at, n), t.kind) || !f.definedAnywhere(t))
}

func (f *Folder) definedAnywhere(t thing) bool { return f.defined(t.files, t.kind, t.text) }

// Definitions lists where that is defined which a name of a file means.
func (f *Folder) Definitions(at string, n Name) []Occurrence {
	var list []Occurrence
	for _, kind := range f.kinds(at, n) {
		of := n
		of.Kind, of.Or = kind, nil
		for _, o := range f.Same(at, of) {
			if o.Defines {
				list = append(list, o)
			}
		}
	}
	return list
}

// Read gives the text of a file: a folder can be read as a house is.
func (f *Folder) Read(at string) ([]byte, error) {
	one := f.file(path.Clean(at))
	if one == nil {
		return nil, fs.ErrNotExist
	}
	return one.tree.File.Bytes(), nil
}

// Tree gives a file as statements, nil where it cannot be read.
func (f *Folder) Tree(at string) *syntax.Tree {
	if one := f.file(at); one != nil {
		return one.tree
	}
	return nil
}
