package main

import (
	"context"
	"fmt"
	"io"

	"github.com/rogpeppe/go-internal/diff"

	"maltwright/check/mend"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// mend mends the inputs: files in place, standard input to standard output. The
// inputs then hold what is to be checked. The world it gives is the one to report
// to: where standard output holds a mended text, findings go to standard error.
func (c Check) mend(ctx context.Context, w *World, files []input) (*World, error) {
	to := *w
	for i := range files {
		text, err := c.mendOne(ctx, w, files[i])
		if err != nil {
			return w, err
		}
		files[i].text = text
		if files[i].path == "" && !c.DryRun {
			to.Out, to.Terminal = w.Err, false
		}
	}
	return &to, nil
}

// mended mends the text of an input, and touches no disk.
func (c Check) mended(ctx context.Context, in input) (mend.Result, error) {
	var broken error
	out := mend.Text(in.text, func(text []byte) (*source.File, []finding.Finding) {
		again := in
		again.text = text
		r, err := again.check(c.options(ctx))
		if err != nil {
			broken = err
			return source.New(in.name, text), nil
		}
		return r.House.Files[0], r.Findings
	})
	return out, broken
}

// mendOne mends one input and gives its text as it is then.
func (c Check) mendOne(ctx context.Context, w *World, in input) ([]byte, error) {
	out, err := c.mended(ctx, in)
	if err != nil {
		return nil, err
	}
	if in.path != "" && !c.DryRun && out.Changed {
		if in.text, out, err = c.mendInPlace(ctx, w, in, out); err != nil {
			return nil, err
		}
	}
	if out.Unread {
		w.aside(fmt.Sprintf("%s does not read, and is left as it is%s", words.Safe(in.name), forbidden(out.Forbids)))
	}
	if in.path == "" && !c.DryRun {
		if _, err := w.Out.Write(out.Text); err != nil {
			return nil, failed("cannot write: %v", err)
		}
		return out.Text, nil
	}
	if !out.Changed {
		return in.text, nil
	}
	_, err = io.WriteString(c.diffsTo(w), safeLines(string(diff.Diff(in.name, in.text, in.name+" mended", out.Text))))
	if err != nil {
		return nil, failed("cannot write: %v", err)
	}
	if c.DryRun {
		return in.text, nil
	}
	return out.Text, nil
}

// forbidden says which finding stands in the way of mending, and what to do first.
func forbidden(f *finding.Finding) string {
	if f == nil {
		return ""
	}
	line := f.Place.File.Position(f.Place.Start, source.Characters).Line
	return fmt.Sprintf(": line %d must be put right first: %s [%s]; then type it again, and the rest is mended", line, words.Safe(f.Message), f.Rule)
}

// diffsTo is where the diffs go: not among findings that a program reads.
func (c Check) diffsTo(w *World) io.Writer {
	if c.Format == "text" {
		return w.Out
	}
	return w.Err
}

// mendInPlace writes what is mended into the file. A text that has changed since it was
// read is mended in its turn, under the lock. It gives the text that was mended.
func (c Check) mendInPlace(ctx context.Context, w *World, in input, out mend.Result) ([]byte, mend.Result, error) {
	err := w.edit(in.name, in.path, func(old []byte) ([]byte, error) {
		if string(old) == string(in.text) {
			return out.Text, nil
		}
		in.text = old
		var err error
		out, err = c.mended(ctx, in)
		return out.Text, err
	})
	return in.text, out, err
}
