package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/nearest"
	"maltwright/lang/sorted"
)

// processFiles lists the process files of a folder, by their names.
func (w World) processFiles(below string) []string {
	names, _ := folder.Beside(w.at(below)) // of one that cannot be read there are none
	return names
}

// beside gives the one file that is meant by a name that no file has: its ending is missing,
// or its letters are not as small or as great.
func (w World) beside(path string) (string, bool) {
	at, name := filepath.Split(strings.TrimRight(path, " ,;"))
	var meant []string
	for _, have := range w.processFiles(at) {
		if strings.EqualFold(have, name) || strings.EqualFold(have, name+extension) {
			meant = append(meant, filepath.Join(at, have))
		}
	}
	if name == "" || len(meant) != 1 {
		return "", false
	}
	return meant[0], true
}

// near gives the process file beside a name that no file has that is nearest to it.
func (w World) near(path string) (string, bool) {
	at, name := filepath.Split(path)
	files := w.processFiles(at)
	stems := make([]string, len(files))
	for i, f := range files {
		stems[i] = strings.TrimSuffix(f, extension)
	}
	stem := strings.TrimSuffix(name, filepath.Ext(name))
	if slices.Contains(stems, stem) { // with another ending
		return filepath.Join(at, stem+extension), true
	}
	stem, ok := nearest.Word(stem, stems)
	return filepath.Join(at, stem+extension), ok
}

// sample is a process file to show in what to type: one of this folder, where there is any.
func (w World) sample() string {
	return append(w.processFiles(""), "pale"+extension)[0]
}

// reading says that another file is read than the one that was written.
func (w World) reading(path, instead string) {
	if w.Err != nil {
		w.aside(fmt.Sprintf("there is no file %s; reading %s", words.Safe(path), words.Safe(instead)))
	}
}

// mostShown is how many files are named where one is to be chosen.
const mostShown = 4

// theProcess gives the one file of this folder that holds a process, for a command that was given
// none. Where there are several it says so.
func (w World) theProcess(command string) (string, error) {
	var files, lines []string
	for _, name := range w.processFiles("") {
		in, err := w.file(name, "")
		if err != nil {
			continue
		}
		if house, _, err := in.load(); err == nil && len(house.Processes) > 0 {
			files = append(files, name)
		}
	}
	for _, f := range files[:min(len(files), mostShown)] {
		lines = append(lines, commandLine(command, f))
	}
	switch len(files) {
	case 0:
		return "", usage("%s needs a file with a process, and this folder holds none", command)
	case 1:
		w.aside(fmt.Sprintf("%s of %s, the one process of this folder", command, words.Safe(files[0])))
		return files[0], nil
	}
	if len(files) > len(lines) {
		lines = append(lines, fmt.Sprintf("another of the %d", len(files)))
	}
	return "", usage("%s needs to know which file; type: %s", command, strings.Join(lines, ", or "))
}

// oneFile reads the file that a command takes.
func (w World) oneFile(command, path, root string) (input, error) {
	files, err := w.gather([]string{path}, root)
	switch {
	case err != nil:
		return input{}, err
	case len(files) == 1:
		return files[0], nil
	}
	sorted.Stable(files, func(a, b input) int { return deep(a.name) - deep(b.name) })
	at := slices.IndexFunc(files, func(in input) bool {
		house, _, err := in.load()
		return err == nil && len(house.Processes) > 0
	})
	return input{}, usage("%s is a folder; %s takes one file, such as: %s", path, command, commandLine(command, files[max(at, 0)].name))
}

// deep is how many folders deep a path lies.
func deep(path string) int { return strings.Count(filepath.ToSlash(path), "/") }
