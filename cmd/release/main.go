// Command release makes of a commit what is handed to people who have no Go: programs of every
// target, each in an archive with its papers, packages of Debian and of RPM, lists of parts, the extension
// of an editor, and the checksums of all.
//
//	go run ./cmd/release --out /tmp/release
//	go run ./cmd/release --out /tmp/release --only linux/amd64 --archives
//
// How it works: the commit gives the version and every time that is written (commit.go); the program of
// this computer writes manual and completions (papers.go); each target is built with the one list of flags
// (build.go), packed with sorted entries of fixed owners (archive.go), and handed to tools of others for what
// they know better (packages.go, parts.go, extension.go). All of it is made in a folder beside the one that
// is asked for, which takes its name when it is whole. The same commit and the same Go give the same bytes.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"github.com/alecthomas/kong"
)

// asked is the command line.
type asked struct {
	Out        string   `required:"" placeholder:"FOLDER" help:"Where to put the release; nothing may be there yet."`
	Only       []string `placeholder:"TARGET" help:"These targets alone, such as linux/amd64."`
	Changed    bool     `help:"Also from files that are in no commit; the version says so."`
	Archives   bool     `help:"Archives and their checksums alone: no packages, lists of parts and extension, which need tools of others."`
	Maintainer string   `default:"the maltwright authors" help:"Who stands in the packages as the one to turn to: Name <address>."`
}

func main() {
	var line asked
	kong.Parse(&line, kong.Name("release"), kong.Description("Makes programs, archives and packages of a commit."), kong.Exit(func(code int) {
		if code != 0 { // kong has a code of its own for a command line that it does not understand
			code = exitUsage
		}
		os.Exit(code)
	}))
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	err := line.run(ctx, os.Stdout)
	if ctx.Err() != nil {
		err = errors.New("interrupted; nothing is left")
	}
	stop()
	if err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		if errors.As(err, &usage{}) {
			os.Exit(exitUsage)
		}
		os.Exit(1)
	}
}

// exitUsage is the exit code of a command line that cannot be understood, as maltwright has it.
const exitUsage = 2

// usage is what is wrong with the command line.
type usage struct{ error }

// run makes a release, and says what it does.
func (a asked) run(ctx context.Context, say io.Writer) error {
	targets, err := chosen(a.Only)
	if err != nil {
		return usage{err}
	}
	root, err := moduleRoot(ctx)
	if err != nil {
		return err
	}
	c, err := commitOf(ctx, root, a.Changed)
	if err != nil {
		return err
	}
	fmt.Fprintf(say, "maltwright %s, of %s\n", c.version, c.time.Format("2006-01-02 15:04:05 UTC"))
	return staged(a.Out, func(dir, scratch string) error {
		r := release{root: root, dir: dir, scratch: scratch, commit: c, maintainer: a.Maintainer, say: say}
		return r.make(ctx, targets, a.Archives)
	})
}

// release is one that is being made.
type release struct {
	root       string // of the module
	dir        string // where its files go
	scratch    string // for what is no part of it
	commit     commit
	maintainer string
	say        io.Writer
}

// make makes all files of a release.
func (r release) make(ctx context.Context, targets []target, archivesAlone bool) error {
	papers, err := r.papers(ctx)
	if err != nil {
		return err
	}
	var tools tools
	if !archivesAlone {
		if tools, err = r.install(ctx); err != nil {
			return err
		}
	}
	for _, t := range targets {
		p, err := r.program(ctx, t)
		if err != nil {
			return err
		}
		files, err := papers.with(p)
		if err != nil {
			return err
		}
		if err := r.archive(p, files); err != nil {
			return err
		}
		if archivesAlone {
			continue
		}
		if err := r.packages(ctx, tools, p, files); err != nil {
			return err
		}
		if err := r.parts(ctx, tools, p); err != nil {
			return err
		}
	}
	if !archivesAlone {
		if err := r.extension(ctx); err != nil {
			return err
		}
	}
	return r.sums()
}
