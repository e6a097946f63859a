package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"time"
)

// stamped is set by the linker where the program is built for others (cmd/release): the version, the commit and the time of
// that in seconds of 1970, with blanks between. A program that is built by go alone asks what go has noted.
var stamped string

// Version prints the version.
type Version struct{}

// Help is the longer help of the command.
func (Version) Help() string {
	return "Prints which version this is, from which commit, and how it was built."
}

// Run prints it.
func (Version) Run(w *World) error {
	b := built()
	fmt.Fprintf(w.Out, "maltwright %s\n", version())
	if b.commit != "" {
		fmt.Fprintf(w.Out, "commit %s%s\n", b.commit, b.dated())
	}
	fmt.Fprintf(w.Out, "built with %s for %s%s\n", runtime.Version(), b.target(), b.how())
	return nil
}

// build is how the program was made; what nobody knows is empty.
type build struct {
	version, commit string
	time            time.Time // of the commit
	changed         bool      // from files that are in no commit
	settings        map[string]string
}

// built tells how the program was made.
func built() (b build) {
	b.settings = map[string]string{}
	info, ok := debug.ReadBuildInfo()
	if ok {
		for _, s := range info.Settings {
			b.settings[s.Key] = s.Value
		}
		if v := info.Main.Version; v != "(devel)" {
			b.version = strings.TrimPrefix(v, "v")
		}
	}
	b.commit, b.changed = b.settings["vcs.revision"], b.settings["vcs.modified"] == "true"
	b.time, _ = time.Parse(time.RFC3339, b.settings["vcs.time"])
	if f := strings.Fields(stamped); len(f) == 3 {
		seconds, _ := strconv.ParseInt(f[2], 10, 64)
		b.version, b.commit, b.time = f[0], f[1], time.Unix(seconds, 0)
		b.changed = strings.HasSuffix(b.version, "+changed")
	}
	return b
}

// version is the version of the program, or what is known in its place.
func version() string {
	b := built()
	switch {
	case b.version != "":
		return b.version
	case b.commit != "":
		return "at commit " + b.commit[:min(12, len(b.commit))]
	}
	return "built from a working copy"
}

func (b build) dated() string {
	text := ""
	if !b.time.IsZero() {
		text = " of " + b.time.UTC().Format(time.DateOnly)
	}
	if b.changed {
		text += ", with changes that are in no commit"
	}
	return text
}

// target is the system and the processor, with the least one of its kind where that is said.
func (b build) target() string {
	target := runtime.GOOS + "/" + runtime.GOARCH
	if arm := b.settings["GOARM"]; arm != "" {
		target += " version " + arm
	}
	return target
}

// how tells the settings that make a difference to others.
func (b build) how() string {
	text := ""
	if cgo := b.settings["CGO_ENABLED"]; cgo != "" {
		text += ", CGO_ENABLED=" + cgo
	}
	if b.settings["-trimpath"] == "true" {
		text += ", -trimpath"
	}
	if len(strings.Fields(stamped)) == 3 {
		text += ", by cmd/release"
	}
	return text
}
