package main

import (
	"context"
	"debug/buildinfo"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
)

// Every program is built by these flags, and by no others: without paths of this computer, without what go finds of git
// by itself (the stamp says it), without symbols and without an identity of the build.
//
// They make it small too. What reckons keeps its speed: in sim, gonum, the mathematics, sorting and the runtime short functions are
// written out where they are called, as ever. Elsewhere a call stays a call: nobody waits for a text that is read or written. And
// pages over TLS are served without HTTP/2, which nobody needs for a few of them.
var flags = slices.Concat([]string{"-trimpath", "-buildvcs=false", "-tags=nethttpomithttp2"}, keptCalls())

const linkerFlags = "-s -w -buildid= -funcalign="

// aligned is where a function of a processor may begin: at a multiple of so many bytes. The processors of amd64 do not mind
// where, and save what stands empty between functions; those of ARM read whole words.
func (t target) aligned() string {
	if t.processor == "amd64" {
		return "1"
	}
	return "16"
}

// keptCalls are the flags of the compiler. The last pattern that fits a package counts.
func keptCalls() []string {
	out := []string{"-gcflags=all=-l"}
	for _, quick := range []string{"maltwright/sim/...", "gonum.org/...", "math/...", "runtime/...", "internal/...", "slices", "sort", "sync/..."} {
		out = append(out, "-gcflags="+quick+"=")
	}
	return out
}

// mostBytes is how large a program may be. Those of Windows and macOS hold tables for the system that those of Linux need not.
func (t target) mostBytes() int64 {
	if t.system == "linux" {
		return 20_000_000
	}
	return 21_000_000
}

// program is one that was built.
type program struct {
	target target
	path   string // of the executable
	size   int64
	notice []byte // the licences of all that is in it
}

// program builds for a target, and looks whether it has what it should and is as small as it should.
func (r release) program(ctx context.Context, t target) (program, error) {
	p := program{target: t, path: filepath.Join(r.scratch, t.named(), t.executable())}
	if err := r.build(ctx, t, p.path); err != nil {
		return p, err
	}
	info, err := os.Stat(p.path)
	if err != nil {
		return p, err
	}
	p.size = info.Size()
	fmt.Fprintf(r.say, "%-14s %5.1f MB\n", t, float64(p.size)/1e6)
	if most := t.mostBytes(); p.size > most {
		return p, fmt.Errorf("the program of %s has %.1f MB, and is to have at most %.0f", t, float64(p.size)/1e6, float64(most)/1e6)
	}
	if p.notice, err = notice(ctx, r.root, t); err != nil {
		return p, err
	}
	return p, nil
}

// build builds the program of a target.
func (r release) build(ctx context.Context, t target, path string) error {
	args := slices.Concat([]string{"build"}, flags, []string{"-ldflags", linkerFlags + t.aligned() + " -X 'main.stamped=" + r.commit.stamp() + "'", "-o", path, "./cmd/maltwright"})
	if _, err := output(ctx, r.root, t.env(), "go", args...); err != nil {
		return err
	}
	built, err := buildinfo.ReadFile(path)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	for _, s := range built.Settings { // an environment or a toolchain that is not heeded would go unseen
		if want, ok := map[string]string{"GOOS": t.system, "GOARCH": t.processor, "CGO_ENABLED": "0", "-trimpath": "true"}[s.Key]; ok && s.Value != want {
			return fmt.Errorf("the program of %s was built with %s=%s", t, s.Key, s.Value)
		}
	}
	return nil
}

// here is the target of this computer.
func here() target { return target{system: runtime.GOOS, processor: runtime.GOARCH} }
