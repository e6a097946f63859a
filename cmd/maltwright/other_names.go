package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// otherNames are what the names of files end with that editors and word processors give a text.
var otherNames = []string{".txt", ".text", ".rtf", ".doc", ".docx", ".odt", ".md", ".pdf", ".html"}

// none says that a folder holds no process file; of one that some editor has named otherwise
// it says which.
func (w World) none(path string) error {
	said := fmt.Sprintf("%s: no file ending in %s below this folder", path, extension)
	entries, err := os.ReadDir(w.at(path))
	if err != nil {
		return failed("%s", said)
	}
	for _, e := range entries {
		name := e.Name()
		ends := strings.ToLower(filepath.Ext(name))
		for _, other := range otherNames {
			if e.Type().IsRegular() && ends == other {
				bare := strings.TrimSuffix(strings.TrimSuffix(name, filepath.Ext(name)), extension)
				return failed("%s; if %s is one, save it as plain text (UTF-8) and name it %s%s", said, name, bare, extension)
			}
		}
	}
	return failed("%s", said)
}
