package main

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// sumsFile holds the checksums of the other files of a release.
const sumsFile = "SHA256SUMS"

// sums writes the checksums, as sha256sum -c reads them, and says how large each file is.
func (r release) sums() error {
	files, err := os.ReadDir(r.dir) // by their names
	if err != nil {
		return err
	}
	var b strings.Builder
	for _, f := range files {
		data, err := os.ReadFile(filepath.Join(r.dir, f.Name()))
		if err != nil {
			return err
		}
		fmt.Fprintf(&b, "%x  %s\n", sha256.Sum256(data), f.Name())
		fmt.Fprintf(r.say, "%8.2f MB  %s\n", float64(len(data))/1e6, f.Name())
	}
	return os.WriteFile(filepath.Join(r.dir, sumsFile), []byte(b.String()), 0o644)
}
