package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
)

// staged makes a folder that is there whole or not at all: it is filled under another name, which tells that it is not
// finished, and takes its own when all went well. Scratch is gone afterwards in any case.
func staged(out string, fill func(dir, scratch string) error) (err error) {
	out, err = filepath.Abs(out)
	if err != nil {
		return err
	}
	if _, err := os.Lstat(out); err == nil {
		return usage{fmt.Errorf("%s is there already; name another folder, or remove it", out)}
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); errors.Is(err, syscall.ENOTDIR) {
		return usage{fmt.Errorf("%s cannot be made: a part of its path is a file; name another folder", out)}
	} else if err != nil {
		return err
	}
	dir, err := os.MkdirTemp(filepath.Dir(out), filepath.Base(out)+".unfinished-")
	if err != nil {
		return err
	}
	scratch, err := os.MkdirTemp("", "release-")
	if err != nil {
		return errors.Join(err, os.Remove(dir))
	}
	defer func() {
		err = errors.Join(err, os.RemoveAll(scratch))
		if err != nil {
			err = errors.Join(err, os.RemoveAll(dir))
		}
	}()
	if err := fill(dir, scratch); err != nil {
		return err
	}
	if err := os.Chmod(dir, 0o755); err != nil { // a folder for one process is for its user alone
		return err
	}
	return os.Rename(dir, out)
}
