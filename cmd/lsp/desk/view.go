package desk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// View is all as it stood at a moment. It may be used from several goroutines at once.
type View struct {
	desk    *Desk
	open    map[string]*Doc
	folders []string
	columns source.Encoding

	mu    sync.Mutex
	files map[string]*blob // of disk, each read once
	docs  map[string]*Doc
}

// Doc gives a document by its path: the open buffer, or else the file on disk.
func (v *View) Doc(path string) (*Doc, error) {
	if doc := v.open[path]; doc != nil {
		return doc, nil
	}
	if !filepath.IsAbs(path) {
		return nil, fs.ErrNotExist
	}
	if doc := v.linked(path); doc != nil {
		return doc, nil
	}
	b := v.file(path)
	if b.err != nil {
		return nil, b.err
	}
	b.once.Do(func() { b.doc = &Doc{Path: path, File: source.New(path, b.bytes)} })
	return b.doc, nil
}

// At gives the document of an address.
func (v *View) At(uri string) (*Doc, error) { return v.Doc(Path(uri)) }

// Opened lists what is open, in the order of the paths.
func (v *View) Opened() []*Doc {
	list := make([]*Doc, 0, len(v.open))
	for _, doc := range v.open {
		list = append(list, doc)
	}
	slices.SortFunc(list, func(a, b *Doc) int { return strings.Compare(a.Path, b.Path) })
	return list
}

// OnDisk is the text of the file of a document, whether it is open or not.
func (v *View) OnDisk(path string) ([]byte, error) {
	if !filepath.IsAbs(path) {
		return nil, fs.ErrNotExist
	}
	b := v.file(path)
	return b.bytes, b.err
}

// linked is the open buffer of a file that is reached by another path.
func (v *View) linked(path string) *Doc {
	if len(v.open) == 0 {
		return nil
	}
	to := real(path)
	for _, doc := range v.open {
		if doc.real == to && doc.real != "" {
			return doc
		}
	}
	return nil
}

func (v *View) file(path string) *blob {
	return v.once(path, func() *blob { return v.desk.disk.file(path) })
}

func (v *View) once(key string, read func() *blob) *blob {
	v.mu.Lock()
	defer v.mu.Unlock()
	b := v.files[key]
	if b == nil {
		b = read()
		v.files[key] = b
	}
	return b
}

// Reader reads what a file of the folder uses: open buffers, and else files below the folder. What
// leads out of the folder is refused, as check refuses it.
func (v *View) Reader(dir string) read.Reader { return &reader{view: v, dir: dir} }

type reader struct {
	view *View
	dir  string
	note func(at string, b *blob) // hears what was read; nil for nobody
}

// Read gives the text of a file by its path below the folder.
func (r *reader) Read(at string) ([]byte, error) {
	b := r.view.below(r.dir, at)
	if r.note != nil {
		r.note(at, b)
	}
	return b.bytes, b.err
}

func (v *View) below(dir, at string) *blob {
	path := filepath.Join(dir, filepath.FromSlash(at))
	if doc := v.open[path]; doc != nil {
		return doc.blob()
	}
	b := v.once(dir+"\x00"+at, func() *blob {
		root, err := os.OpenRoot(dir)
		if err != nil {
			return &blob{err: err}
		}
		defer root.Close()
		return v.desk.disk.below(root, dir, at)
	})
	if b.err == nil {
		if doc := v.linked(path); doc != nil {
			return doc.blob()
		}
	}
	return b
}

func (d *Doc) blob() *blob { return &blob{bytes: d.Text()} }

// Dir is the folder of a document: where what it uses lies.
func (d *Doc) Dir() string { return filepath.Dir(d.File.Name()) }

// Folder lists the process files that lie in a folder, and those that are open and not written yet.
func (v *View) Folder(dir string) []string {
	var list []string
	entries, _ := os.ReadDir(dir) // of a folder that cannot be read the open files count
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), folder.Extension) && !e.IsDir() {
			list = append(list, filepath.Join(dir, e.Name()))
		}
	}
	for path, doc := range v.open {
		if filepath.IsAbs(path) && filepath.Dir(path) == dir && doc.ours() && !slices.Contains(list, path) {
			list = append(list, path)
		}
	}
	slices.Sort(list)
	return list
}

func (d *Doc) ours() bool { return strings.HasSuffix(d.Path, folder.Extension) }

// Folders are those that the editor has open.
func (v *View) Folders() []string { return v.folders }

// mostFiles of all folders are listed.
const mostFiles = 5000

// Workspace lists the process files below all folders, and what is open. Hidden folders are not entered.
func (v *View) Workspace() []string {
	var list []string
	for _, root := range v.folders {
		_ = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				if d != nil && d.IsDir() {
					return fs.SkipDir
				}
				return nil
			case d.IsDir() && path != root && strings.HasPrefix(d.Name(), "."):
				return fs.SkipDir
			case !d.IsDir() && strings.HasSuffix(path, folder.Extension):
				list = append(list, path)
			}
			if len(list) >= mostFiles {
				return fs.SkipAll
			}
			return nil
		})
	}
	for path := range v.open {
		list = append(list, path)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// Offset is the place of a position in a document.
func (v *View) Offset(f *source.File, p wire.Position) int { return Offset(f, p, v.columns) }

// Range is the range of a span in a document.
func (v *View) Range(f *source.File, s source.Span) wire.Range { return RangeOf(f, s, v.columns) }

// Span is the span of a range in a document.
func (v *View) Span(f *source.File, r wire.Range) source.Span {
	from := v.Offset(f, r.Start)
	return source.Span{Start: from, End: max(from, v.Offset(f, r.End))}
}

// PathOf is the path of the document that a file of a house is.
func (v *View) PathOf(f *source.File) string {
	name := f.Name()
	if filepath.IsAbs(name) && v.open[name] != nil {
		return name
	}
	for path, doc := range v.open {
		if doc.File.Name() == name {
			return path
		}
	}
	return name
}

// URIOf is the address of a file of a house: the one by which the editor calls it, where it is open.
func (v *View) URIOf(f *source.File) string { return v.URI(v.PathOf(f)) }

// URI is the address of a path.
func (v *View) URI(path string) string {
	if doc := v.open[path]; doc != nil && doc.URI != "" {
		return doc.URI
	}
	return URI(path)
}

// Location is a place for the editor.
func (v *View) Location(p source.Place) wire.Location {
	return wire.Location{URI: v.URIOf(p.File), Range: v.Range(p.File, p.Span)}
}

// Missing tells whether a document could not be had because it is not there.
func Missing(err error) bool { return errors.Is(err, fs.ErrNotExist) }
