package read

import (
	"io"
	"os"
	"syscall"

	"maltwright/lang/regular"
	"maltwright/lang/source"
)

// Reader gives the bytes of a file by its path below some folder, with "/" between
// its parts.
type Reader interface {
	Read(path string) ([]byte, error)
}

// Root reads files below one folder and nothing outside it: no parent folder, no
// link that leads out, no device.
type Root struct{ root *os.Root }

// OpenRoot opens the folder. The caller closes it.
func OpenRoot(folder string) (*Root, error) {
	r, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	return &Root{r}, nil
}

// Close releases the folder.
func (r *Root) Close() error { return r.root.Close() }

// Read gives the bytes of a regular file; of one that is too large it gives just
// enough for the size to be noticed.
func (r *Root) Read(path string) ([]byte, error) {
	f, err := regular.OpenIn(r.root, path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return ReadAll(f)
}

// notFolder is what a path through a file gives: loft.malt/x.
const notFolder = syscall.ENOTDIR

// ReadAll reads a process text, and no more than shows that it is too large.
func ReadAll(r io.Reader) ([]byte, error) {
	return io.ReadAll(io.LimitReader(r, source.MaxBytes+1))
}
