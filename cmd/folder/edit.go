package folder

import (
	"errors"
	"io/fs"

	"maltwright/cmd/rewrite"
)

// Edit puts what change makes of the text of a file in its place, under the lock of the file. The
// text that change gets may be another than was read before. An error of change is given back as
// it is; what keeps the file from being written is a Busy or a Failed.
func Edit(o rewrite.Options, name, path string, change func(old []byte) ([]byte, error)) error {
	var own error
	err := rewrite.Edit(path, o, func(old []byte) (out []byte, _ error) {
		out, own = change(old)
		return out, own
	})
	var busy rewrite.Busy
	switch {
	case own != nil:
		return own
	case errors.As(err, &busy):
		return &Busy{name, err}
	case err != nil:
		return &Failed{name, notWritten(err), err}
	}
	return nil
}

func notWritten(err error) string {
	var refusal rewrite.Refusal
	switch {
	case errors.As(err, &refusal):
		return refusal.Error()
	case errors.Is(err, fs.ErrPermission):
		return "nothing may be written in its folder"
	}
	return Plain(err)
}

// Plain is an error of the file system without the call and the path.
func Plain(err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "it may not be read"
	case errors.As(err, &path):
		return path.Err.Error()
	}
	return err.Error()
}
