package folder

import (
	"bytes"
	"path"
	"path/filepath"
	"strings"

	"maltwright/cmd/recall"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// Extension is how the name of a process file ends.
const Extension = ".malt"

// File is a process file as it was read.
type File struct {
	Name string // as findings show it
	Path string // absolute; "" for what has none
	Text []byte
	Root string // the folder that use may read
	Dir  string // the folder of the file below the root, with /
}

// open opens the folder that use may read. The caller closes it.
func (f File) open() (*read.Root, error) {
	root, err := read.OpenRoot(f.Root)
	if err != nil {
		return nil, &Failed{f.Root, Plain(err), err}
	}
	return root, nil
}

// Load reads the file as far as its meaning.
func (f File) Load() (*model.House, []finding.Finding, error) {
	root, err := f.open()
	if err != nil {
		return nil, nil, err
	}
	defer root.Close()
	h, found := read.Load(f.Name, f.Text, f.Dir, f.Past(root, nil))
	return h, found, nil
}

// Past is a reader of the root of the file that reads the past too.
func (f File) Past(root read.Reader, known recall.Known) read.Reader {
	return recall.Reader{Reader: root, Root: f.Root, Known: known, Below: func(s *source.File) string { return f.Below(root, s) }}
}

// Below gives the path of a file below the root from which it was read, or "" where it has
// none. A used file is shown by its path below the folder of the first if it lies there, and
// otherwise by that below the root.
func (f File) Below(r read.Reader, s *source.File) string {
	if s.Name() == f.Name {
		if f.Path == "" {
			return ""
		}
		return path.Join(f.Dir, path.Base(filepath.ToSlash(f.Name)))
	}
	folder, _ := path.Split(filepath.ToSlash(f.Name))
	name := strings.TrimPrefix(filepath.ToSlash(s.Name()), folder)
	for _, at := range []string{path.Join(f.Dir, name), name} {
		if text, err := r.Read(at); err == nil && bytes.Equal(text, s.Bytes()) {
			return at
		}
	}
	return name
}
