package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
)

// Version prints the version.
type Version struct{}

// Help is the longer help of the command.
func (Version) Help() string {
	return "Prints the version the program was built from, and with which Go."
}

// Run prints it.
func (Version) Run(w *World) error {
	fmt.Fprintf(w.Out, "maltwright %s, built with %s for %s/%s\n", version(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return nil
}

// version is the module's version, or the revision it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			return "at revision " + s.Value[:min(12, len(s.Value))]
		}
	}
	return "built from a working copy"
}
