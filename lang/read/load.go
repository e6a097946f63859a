// Package read builds the typed process out of the statement tree: names are resolved,
// quantities get their dimension, and what makes no sense is reported.
//
// A statement is read by its row in the vocabulary (reader.go), handed to the builder
// of that row (build_*.go), and the whole is looked at afterwards (sense*.go). A
// statement that makes no sense is left out; everything else is still built, so that
// one slip does not hide the next.
package read

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/regular"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// MaxFiles is how many files one process may use, and MaxTotal how many bytes all of
// them may have together.
const (
	MaxFiles = 64
	MaxTotal = 2 * source.MaxBytes
)

// Load reads the file main and what it uses. The text of main is given, since it
// may come from standard input; the others are read through r, by their path
// relative to the folder of main, which is dir below the root that r reads ("." if
// they are the same). It always gives a house, with whatever could be understood.
//
// Where people's signs stand for words of the language, the house is that of the text as it is,
// and what was found is that of the text with the signs put right, so that one slip is told once.
func Load(name string, text []byte, dir string, r Reader) (*model.House, []finding.Finding) {
	main := source.New(name, text)
	house, found := loadText(main, dir, r)
	if len(found) == 0 && !syntax.Numbered(main) {
		return house, nil
	}
	if slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Rule == syntax.NotText && f.Place.File == main }) {
		return house, found // what it holds is no text, or not in the letters of one
	}
	if f, ok := framed(main); ok {
		return &model.House{Files: house.Files[:1]}, []finding.Finding{f}
	}
	if m, ok := syntax.Signs(main); ok {
		again, more := loadText(m.File, dir, r)
		found = signed(m, house, again, more)
	}
	return house, found
}

func loadText(main *source.File, dir string, r Reader) (*model.House, []finding.Finding) {
	name := main.Name()
	l := &loader{reader: r, house: &model.House{}, seen: map[string]*source.File{}, total: main.Size(), base: dir, shown: strings.TrimSuffix(name, path.Base(toSlash(name)))}
	l.file(main, path.Join(dir, path.Base(toSlash(name))), nil)
	b := &builder{house: l.house, main: main, lost: l.lost, unread: map[any]bool{}, beds: map[*model.Vessel][]*filled{}, grownIn: map[*model.Vessel]bool{}, siteNamed: map[*model.Process]bool{}, written: map[model.Stage]source.Place{}, trials: map[trialText][]finding.Finding{}}
	b.recall, _ = r.(Recaller)
	b.misread = slices.ContainsFunc(l.found, func(f finding.Finding) bool { return f.Severity >= fault && f.Place.File == main })
	b.home = homeOf(l.trees)
	b.home.text = l.found
	for _, t := range l.trees {
		b.file(t)
	}
	b.finish()
	found := append(b.found, l.found...) // of what both tell, the first is told: it says what to write
	for _, f := range l.house.Files {
		found = conflicted(f, found)
	}
	return l.house, finding.Sort(found)
}

func toSlash(name string) string { return strings.ReplaceAll(name, `\`, "/") }

type loader struct {
	reader Reader
	house  *model.House
	base   string // folder of the main file, below the root
	shown  string // the same as the user wrote it, with its slash
	seen   map[string]*source.File
	trees  []*syntax.Tree
	found  []finding.Finding
	total  int  // bytes of all files
	lost   bool // a used file is not there
}

// file parses one file after those that it uses, so that definitions come first.
func (l *loader) file(f *source.File, at string, chain []string) {
	l.seen[at] = f
	l.house.Files = append(l.house.Files, f)
	tree, found := syntax.Parse(f)
	l.found = append(append(l.found, found...), unsettled(tree)...)
	for _, s := range tree.Top.Statements {
		switch {
		case !vocabulary.Includes(s.Verb.Text):
		case s.Broken:
			l.lost = true
		default:
			l.use(f, s, at, append(chain, at))
		}
	}
	l.trees = append(l.trees, tree)
}

// use brings in the file that a use statement names.
func (l *loader) use(f *source.File, s *syntax.Statement, at string, chain []string) {
	text, ok := onlyText(s.Terms)
	if !ok {
		l.lost = true
		return // the builder reports the form
	}
	place := source.Place{File: f, Span: text.Span}
	target := path.Join(path.Dir(at), text.Value)
	if why := outside(text.Value, target); why != "" {
		f := useOutside.At(place, fmt.Sprintf(`"%s" %s`, text.Value, why))
		if plain := toSlash(text.Value); plain != text.Value && outside(plain, path.Join(path.Dir(at), plain)) == "" {
			f.Hint = fmt.Sprintf("write %q", plain)
		}
		l.lose(f)
		return
	}
	if i := indexOf(chain, target); i >= 0 {
		names := append(append([]string(nil), chain[i:]...), target)
		for k := range names {
			names[k] = path.Base(names[k])
		}
		l.note(useCircle.At(place, "these files use each other in a circle: "+strings.Join(names, " uses ")))
		return
	}
	if l.seen[target] != nil {
		return
	}
	if len(l.seen) >= MaxFiles {
		l.lose(useTooMany.At(place, fmt.Sprintf("more than %d files are used", MaxFiles)))
		return
	}
	if l.total > MaxTotal {
		l.lost = true // said of the first that was too much
		return
	}
	l.read(place, text.Value, target, chain)
}

func onlyText(terms []syntax.Term) (t syntax.Text, ok bool) {
	if len(terms) == 1 {
		t, ok = terms[0].(syntax.Text)
	}
	return t, ok
}

func (l *loader) read(place source.Place, written, target string, chain []string) {
	bytes, err := l.reader.Read(target)
	if err != nil {
		finding := useMissing.At(place, fmt.Sprintf("%q %s", written, readError(err)))
		if len(chain) > 1 {
			finding.Why = "used by way of " + strings.Join(chain, ", ")
		}
		if end := path.Ext(place.File.Name()); end != "" && path.Ext(target) == "" {
			if _, err := l.reader.Read(target + end); err == nil { // it lies beside, and its end was left out
				finding.Write(place, strconv.Quote(written+end))
			}
		}
		l.lose(finding)
		return
	}
	if l.total += len(bytes); l.total > MaxTotal { // nothing more is read from here on
		l.lose(useTooMany.At(place, fmt.Sprintf("with %q the files have more than %d MiB together", written, MaxTotal>>20)))
		return
	}
	name := target
	if rel, ok := strings.CutPrefix(target, l.base+"/"); ok && l.base != "." {
		name = rel
	}
	l.file(source.New(l.shown+name, bytes), target, chain)
}

func (l *loader) note(f finding.Finding) { l.found = append(l.found, f) }

// lose notes that a file cannot be brought in, and with it names that others use.
func (l *loader) lose(f finding.Finding) {
	l.lost = true
	l.note(f)
}

// outside says why a path is refused, or "". The target is where it leads, below
// the root.
func outside(p, target string) string {
	switch {
	case p == "":
		return "names no file"
	case strings.ContainsAny(p, `\:`):
		return "is no plain path: write folders with /"
	case path.IsAbs(p):
		return "is an absolute path"
	case !fs.ValidPath(target):
		return "leads out of the folder of the process"
	}
	return ""
}

func readError(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist) || errors.Is(err, notFolder):
		return "is not there"
	case errors.Is(err, regular.ErrFolder):
		return "is a folder"
	case errors.Is(err, regular.ErrNotRegular):
		return "is no regular file"
	case errors.Is(err, fs.ErrPermission):
		return "may not be read"
	case strings.Contains(err.Error(), "escapes"):
		return "leads out of the folder of the process"
	}
	return "cannot be read: " + err.Error()
}

func indexOf(list []string, s string) int {
	for i, have := range list {
		if have == s {
			return i
		}
	}
	return -1
}
