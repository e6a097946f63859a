package main

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// commit is what a release is made of.
type commit struct {
	hash    string
	time    time.Time // in UTC; the time of all that is written
	version string    // 1.2.3, or 0.0.0-TIME.gCOMMIT where no tag names one
}

// tagged is a tag that names a version.
var tagged = regexp.MustCompile(`^v(\d+\.\d+\.\d+(?:-[0-9A-Za-z.-]+)?)$`)

// commitOf asks git what is checked out below a folder. It refuses files that are in no commit, unless those are wanted.
func commitOf(ctx context.Context, root string, changedToo bool) (c commit, err error) {
	if _, err := exec.LookPath("git"); err != nil {
		return c, errors.New("git is not installed: a release is made of a commit, which git must tell")
	}
	head, err := output(ctx, root, nil, "git", "show", "--no-patch", "--format=%H %ct", "HEAD")
	if err != nil {
		return c, fmt.Errorf("a release is made of a commit, and git knows of none here: %w", err)
	}
	hash, seconds, _ := strings.Cut(strings.TrimSpace(head), " ")
	when, err := strconv.ParseInt(seconds, 10, 64)
	if err != nil {
		return c, fmt.Errorf("git tells no time of the commit: %q", head)
	}
	c = commit{hash: hash, time: time.Unix(when, 0).UTC()}
	c.version = untagged(c)
	if tag, err := output(ctx, root, nil, "git", "describe", "--tags", "--exact-match", "--match", "v[0-9]*"); err == nil {
		m := tagged.FindStringSubmatch(strings.TrimSpace(tag))
		if m == nil {
			return c, fmt.Errorf("the tag %s is no version; they look like v1.2.3", strings.TrimSpace(tag))
		}
		c.version = m[1]
	}
	changed, err := output(ctx, root, nil, "git", "status", "--porcelain")
	if err != nil {
		return c, err
	}
	if changed == "" {
		return c, nil
	}
	if !changedToo {
		lines := strings.Split(strings.TrimRight(changed, "\n"), "\n")
		return c, fmt.Errorf("%d of the files here are in no commit, such as %s; commit or remove them, or say --changed", len(lines), lines[0][3:])
	}
	c.version += "+changed"
	return c, nil
}

// untagged is the version of a commit that no tag names: before any other, by its time.
func untagged(c commit) string {
	return fmt.Sprintf("0.0.0-%s.g%.12s", c.time.Format("20060102150405"), c.hash)
}

// stamp is what a program is told of its own version: cmd/maltwright/version.go.
func (c commit) stamp() string {
	return fmt.Sprintf("%s %s %d", c.version, c.hash, c.time.Unix())
}
