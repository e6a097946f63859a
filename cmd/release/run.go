package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// output runs a program in a folder and gives what it writes. Its error has the last lines of what the program complained of.
func output(ctx context.Context, dir string, env []string, name string, args ...string) (string, error) {
	c := exec.CommandContext(ctx, name, args...)
	c.Dir, c.Env = dir, append(os.Environ(), env...)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		return "", fmt.Errorf("%s %s: %w%s", filepath.Base(name), args[0], err, prefixed("\n", lastLines(errs.String(), 12)))
	}
	return out.String(), nil
}

func lastLines(text string, n int) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return strings.Join(lines[max(0, len(lines)-n):], "\n")
}

// moduleRoot is the folder of this module.
func moduleRoot(ctx context.Context) (string, error) {
	out, err := output(ctx, "", nil, "go", "list", "-m", "-f", "{{.Path}} {{.Dir}}")
	if err != nil {
		return "", err
	}
	path, dir, _ := strings.Cut(strings.TrimSpace(out), " ")
	if path != module {
		return "", fmt.Errorf("this is the module %s; run it in a checkout of %s", path, module)
	}
	return dir, nil
}

const module = "maltwright"
