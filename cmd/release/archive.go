package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// entry is a file of an archive or of a package.
type entry struct {
	name string // with strokes, below the folder of the archive
	mode fs.FileMode
	data []byte
}

// sorted gives entries by their names, so that an archive does not tell in which order they were found.
func sorted(list []entry) []entry {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b entry) int { return strings.Compare(a.name, b.name) })
	return list
}

// archive writes the archive of a program: a zip for Windows, which opens it without another program, and a tar for the others.
func (r release) archive(p program, list []entry) error {
	top := "maltwright-" + r.commit.version + "-" + p.target.named()
	write, suffix := tarred, ".tar.gz"
	if p.target.system == "windows" {
		write, suffix = zipped, ".zip"
	}
	file, err := os.Create(filepath.Join(r.dir, top+suffix))
	if err != nil {
		return err
	}
	defer file.Close() // a second time does nothing
	if err := write(file, top, sorted(list), r.commit.time); err != nil {
		return err
	}
	return file.Close()
}

// tarred writes a tar, made small by gzip, whose files are nobody's in particular.
func tarred(to io.Writer, top string, list []entry, when time.Time) error {
	small, _ := gzip.NewWriterLevel(to, gzip.BestCompression) // the level is one that there is
	t := tar.NewWriter(small)
	for _, e := range list {
		h := &tar.Header{Typeflag: tar.TypeReg, Name: path.Join(top, e.name), Mode: int64(e.mode.Perm()), Size: int64(len(e.data)), ModTime: when.Truncate(time.Second), Uname: "root", Gname: "root"}
		if err := t.WriteHeader(h); err != nil {
			return err
		}
		if _, err := t.Write(e.data); err != nil {
			return err
		}
	}
	if err := t.Close(); err != nil {
		return err
	}
	return small.Close()
}

// zipped writes a zip.
func zipped(to io.Writer, top string, list []entry, when time.Time) error {
	z := zip.NewWriter(to)
	for _, e := range list {
		h := &zip.FileHeader{Name: path.Join(top, e.name), Method: zip.Deflate, Modified: when.UTC()}
		h.SetMode(e.mode.Perm())
		w, err := z.CreateHeader(h)
		if err != nil {
			return err
		}
		if _, err := w.Write(e.data); err != nil {
			return err
		}
	}
	return z.Close()
}
