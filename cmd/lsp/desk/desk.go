// Package desk holds what an editor has open, over the files on disk.
//
// # How it works
//
// A Desk takes what the editor says: documents that are opened, changed and closed, and
// folders. Whoever answers a question asks it for a View first: all of it at that moment,
// which stays as it was whatever is typed meanwhile. In a View an open buffer stands over the
// file of its path, also where another file uses it; a file that is not open is read from disk
// once a View.
//
// What was found in a file is kept by its text and the texts of all that it uses: a new View
// in which these are the same gives what was found before. Files on disk are read again where
// their stamp has changed, or is so young that it could hide a change.
//
// A document is named by its path: absolute for a file; for a buffer that never was a file its
// address, as untitled:Untitled-1. What such a buffer uses lies in the first folder.
package desk

import (
	"maps"
	"path/filepath"
	"slices"
	"sync"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Desk is what is open. Its methods may be called from several goroutines at once.
type Desk struct {
	mu      sync.Mutex
	columns source.Encoding
	open    map[string]*Doc // replaced, never changed: a View holds it
	folders []string        // absolute; the same
	opened  int             // how often something was
	disk    *disk
	kept    *kept
}

// New gives an empty desk that counts columns in UTF-16 units.
func New() *Desk {
	return &Desk{columns: source.UTF16, open: map[string]*Doc{}, disk: newDisk(), kept: newKept()}
}

// Doc is a document as it stands in a View. It does not change.
type Doc struct {
	Path    string       // absolute, or the address of a buffer that is no file
	URI     string       // as the editor wrote it, where it is open
	Version int32        // as the editor counts; 0 where it is not open
	Open    bool         // the text is that of a buffer
	File    *source.File // its name is a path also of a buffer without one, so that what it uses is found
	Begun   *Base        // the file as it was when the buffer was last the same as it; nil where there was none

	opening int            // counts how often something was opened: a buffer that is closed and opened again is another
	past    []*source.File // as it was before the last changes: a save may have written one of these
	real    string         // the path without links, of one that is open
	parse   sync.Once
	tree    *syntax.Tree
	found   []finding.Finding // of its statements
}

// Base is a text that buffer and file once were.
type Base struct {
	Text  []byte
	Guess bool // the buffer was opened as another text than its file, which has all of it and more
}

// Tree is the document as statements, parsed once. It stands also where much of it is broken.
func (d *Doc) Tree() *syntax.Tree {
	tree, _ := d.Statements()
	return tree
}

// Statements is Tree with what is found where the text is no statements.
func (d *Doc) Statements() (*syntax.Tree, []finding.Finding) {
	d.parse.Do(func() { d.tree, d.found = syntax.Parse(d.File) })
	return d.tree, d.found
}

// Text is the whole text.
func (d *Doc) Text() []byte { return d.File.Bytes() }

// Count sets what columns count, as was agreed with the editor.
func (d *Desk) Count(enc source.Encoding) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.columns = enc
}

// Columns is what columns count.
func (d *Desk) Columns() source.Encoding {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.columns
}

// SetFolders sets the folders that the editor has open.
func (d *Desk) SetFolders(folders []string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.folders = nil
	for _, f := range folders {
		d.folders = add(d.folders, f)
	}
	d.rename()
}

// ChangeFolders adds folders and takes some away.
func (d *Desk) ChangeFolders(added, removed []string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	list := slices.DeleteFunc(slices.Clone(d.folders), func(f string) bool { return slices.Contains(removed, f) })
	for _, f := range added {
		list = add(list, f)
	}
	d.folders = list
	d.rename()
}

// rename names the buffers that are no files anew: what they use lies in another folder now. It has the lock.
func (d *Desk) rename() {
	for path, doc := range d.open {
		if name := d.nameOf(path); name != doc.File.Name() {
			d.put(doc.as(source.New(name, doc.Text())))
		}
	}
}

func add(list []string, folder string) []string {
	folder = filepath.Clean(folder)
	if slices.Contains(list, folder) {
		return list
	}
	return append(list, folder)
}

// Open takes a document that was opened, under the address by which the editor calls it.
func (d *Desk) Open(uri string, version int32, text string) {
	path := Path(uri)
	doc := &Doc{Path: path, URI: uri, Version: version, Open: true}
	if filepath.IsAbs(path) {
		doc.real = real(path)
		if b := d.disk.file(path); b.err == nil {
			doc.Begun = begun([]byte(text), b.bytes)
		}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.opened++
	doc.opening = d.opened
	doc.File = source.New(d.nameOf(path), []byte(text))
	d.put(doc)
}

// Change makes changes of a document, one after the other, and tells whether it is open.
func (d *Desk) Change(uri string, version int32, changes []wire.TextDocumentContentChangeEvent) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	was := d.open[Path(uri)]
	if was == nil {
		return false
	}
	file := was.File
	for _, c := range changes {
		file = changed(file, c, d.columns)
	}
	is := was.as(file)
	is.Version, is.past = version, was.before()
	d.put(is)
	return true
}

const (
	mostPast = 16      // texts of a buffer that are kept
	mostKeep = 1 << 18 // bytes above which none is
)

// before lists the texts before the next change.
func (d *Doc) before() []*source.File {
	if d.File.Size() > mostKeep {
		return nil
	}
	return append(slices.Clone(d.past[max(0, len(d.past)-mostPast+1):]), d.File)
}

// Saved takes note that a document was written. Whoever goes on typing meanwhile has another text than
// was: the file is then one of those before.
func (d *Desk) Saved(uri string) {
	path := Path(uri)
	d.disk.forget(path)
	b := d.disk.file(path)
	var base *Base
	if doc := d.Now().open[path]; doc != nil && b.err == nil {
		for _, f := range doc.past {
			if evened(f.Bytes()) == evened(b.bytes) {
				base = &Base{Text: f.Bytes()}
			}
		}
		if evened(doc.Text()) == evened(b.bytes) {
			base = nil
		}
	}
	d.rebase(path, base)
}

// Rebase takes note of the text on disk that a buffer is now a change of.
func (d *Desk) Rebase(path string, text []byte) { d.rebase(path, &Base{Text: text}) }

func (d *Desk) rebase(path string, base *Base) {
	d.mu.Lock()
	defer d.mu.Unlock()
	was := d.open[path]
	if was == nil {
		return
	}
	if base == nil {
		base = &Base{Text: was.File.Bytes()}
	}
	is := was.as(was.File)
	is.Begun = base
	d.put(is)
}

// Close takes a document away that was open.
func (d *Desk) Close(uri string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.open = maps.Clone(d.open)
	delete(d.open, Path(uri))
}

// as is the same buffer with another text.
func (d *Doc) as(file *source.File) *Doc {
	return &Doc{Path: d.Path, URI: d.URI, Version: d.Version, Open: true, File: file, Begun: d.Begun, opening: d.opening, real: d.real}
}

// IsOpen tells whether the buffer of a document is open now, whatever was typed in it since. One that was
// closed and opened again meanwhile is another: its versions are counted anew.
func (d *Desk) IsOpen(doc *Doc) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.open[doc.Path]
	return now != nil && now.opening == doc.opening
}

// IsLast tells whether nothing was typed in the buffer of a document since.
func (d *Desk) IsLast(doc *Doc) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.open[doc.Path]
	return now != nil && now.opening == doc.opening && now.Version == doc.Version
}

// put has the lock.
func (d *Desk) put(doc *Doc) {
	d.open = maps.Clone(d.open)
	d.open[doc.Path] = doc
}

// nameOf is the name of the file of a document: of a buffer that is no file a path in the first
// folder, so that what it uses is looked for there.
func (d *Desk) nameOf(path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	name := plainName(path)
	if len(d.folders) == 0 {
		return name
	}
	return filepath.Join(d.folders[0], name)
}

// Now gives a view of all as it stands.
func (d *Desk) Now() *View {
	d.mu.Lock()
	defer d.mu.Unlock()
	return &View{desk: d, open: d.open, folders: d.folders, columns: d.columns, files: map[string]*blob{}, docs: map[string]*Doc{}}
}
