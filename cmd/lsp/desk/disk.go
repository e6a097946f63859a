package desk

import (
	"io/fs"
	"os"
	"sync"
	"time"

	"maltwright/lang/read"
	"maltwright/lang/regular"
)

// blob is a file as it was read, or why it could not be.
type blob struct {
	bytes []byte
	err   error
	info  fs.FileInfo
	when  time.Time
	once  sync.Once
	doc   *Doc // made once, for whoever asks for the document
}

// same tells whether another reading gave the same.
func (b *blob) same(o *blob) bool {
	if b == o {
		return true
	}
	if b.err != nil || o.err != nil {
		return b.err != nil && o.err != nil && b.err.Error() == o.err.Error()
	}
	return string(b.bytes) == string(o.bytes)
}

const (
	settles   = 2 * time.Second // within which a file may change again without a sign of it in its time
	mostBytes = 64 << 20        // that are kept of files on disk
)

// disk keeps files by their stamps.
type disk struct {
	mu    sync.Mutex
	files map[string]*blob
	bytes int
}

func newDisk() *disk { return &disk{files: map[string]*blob{}} }

func (d *disk) forget(path string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if was := d.files[path]; was != nil {
		d.bytes -= len(was.bytes)
		delete(d.files, path)
	}
}

// file reads a file by its path.
func (d *disk) file(path string) *blob {
	return d.through(path, func() (fs.FileInfo, error) { return os.Stat(path) }, func() (*os.File, error) { return regular.Open(path) })
}

// below reads a file by its path below a folder, and nothing outside of that.
func (d *disk) below(root *os.Root, folder, at string) *blob {
	return d.through(folder+"\x00"+at, func() (fs.FileInfo, error) { return root.Stat(at) }, func() (*os.File, error) { return regular.OpenIn(root, at) })
}

func (d *disk) through(key string, look func() (fs.FileInfo, error), open func() (*os.File, error)) *blob {
	info, err := look()
	if err != nil {
		return &blob{err: err}
	}
	d.mu.Lock()
	was := d.files[key]
	d.mu.Unlock()
	if was != nil && was.fresh(info) {
		return was
	}
	b := opened(open)
	d.put(key, b)
	return b
}

// fresh tells whether a file can only be what was read.
func (b *blob) fresh(now fs.FileInfo) bool {
	return b.err == nil && os.SameFile(b.info, now) && b.info.Size() == now.Size() && b.info.ModTime().Equal(now.ModTime()) && b.when.Sub(now.ModTime()) > settles
}

// put keeps a file, and lets go of all others where they have become too many.
func (d *disk) put(key string, b *blob) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if was := d.files[key]; was != nil {
		d.bytes -= len(was.bytes)
	}
	if d.bytes+len(b.bytes) > mostBytes {
		d.files, d.bytes = map[string]*blob{}, 0
	}
	d.files[key] = b
	d.bytes += len(b.bytes)
}

func opened(open func() (*os.File, error)) *blob {
	b := &blob{when: time.Now()}
	f, err := open()
	if err != nil {
		b.err = err
		return b
	}
	defer f.Close()
	if b.info, b.err = f.Stat(); b.err == nil {
		b.bytes, b.err = read.ReadAll(f)
	}
	return b
}
