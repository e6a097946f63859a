package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"github.com/rogpeppe/go-internal/diff"

	"maltwright/check/mend"
	"maltwright/check/report"
	"maltwright/cmd/rewrite"
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

// mendOne mends one input and gives its text as it is then.
func (c Check) mendOne(ctx context.Context, w *World, in input) ([]byte, error) {
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
	if broken != nil {
		return nil, broken
	}
	if out.Unread {
		fmt.Fprintf(w.Err, "maltwright: %s does not read, and is left as it is\n", report.Safe(in.name))
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
	if !c.DryRun {
		if err := rewrite.File(in.path, in.text, out.Text); err != nil {
			return nil, failed("%s: %s", in.name, mendError(err))
		}
	}
	_, err := io.WriteString(c.diffsTo(w), safeLines(string(diff.Diff(in.name, in.text, in.name+" mended", out.Text))))
	if err != nil {
		return nil, failed("cannot write: %v", err)
	}
	if c.DryRun {
		return in.text, nil
	}
	return out.Text, nil
}

// diffsTo is where the diffs go: not among findings that a program reads.
func (c Check) diffsTo(w *World) io.Writer {
	if c.Format == "text" {
		return w.Out
	}
	return w.Err
}

func mendError(err error) string {
	if errors.Is(err, fs.ErrPermission) {
		return "it, or its folder, may not be written"
	}
	return rewriteError(err)
}
