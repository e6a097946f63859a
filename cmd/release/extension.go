package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// extensionFolder is where the extension of VS Code is kept, and packer the script in it that packs it: it is told where
// to write and which version.
const (
	extensionFolder = "docs/editors/vscode"
	packer          = "package.js"
)

// extension packs the extension of VS Code, where there are the tools of JavaScript to do so. Without them a release is
// made all the same, and says aloud what it lacks.
func (r release) extension(ctx context.Context) error {
	from := filepath.Join(r.root, filepath.FromSlash(extensionFolder))
	if lack := lackOf(from); lack != nil {
		fmt.Fprintln(r.say, "the extension of VS Code is left out:", lack)
		return nil
	}
	modules := filepath.Join(r.scratch, "extension")
	if err := os.MkdirAll(modules, 0o755); err != nil {
		return err
	}
	for _, name := range []string{"package.json", "package-lock.json"} {
		text, err := os.ReadFile(filepath.Join(from, name))
		if errors.Is(err, os.ErrNotExist) {
			continue
		} else if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(modules, name), text, 0o644); err != nil {
			return err
		}
	}
	if _, err := output(ctx, modules, nil, "npm", "install", "--silent", "--no-audit", "--no-fund", "--ignore-scripts"); err != nil {
		return err
	}
	to := filepath.Join(r.dir, "maltwright-"+r.commit.version+"-vscode.vsix")
	env := []string{"MALTWRIGHT_VSCODE=" + modules, fmt.Sprintf("SOURCE_DATE_EPOCH=%d", r.commit.time.Unix())}
	_, err := output(ctx, from, env, "node", packer, to, r.commit.version)
	return err
}

// lackOf says what there is not to pack the extension with.
func lackOf(folder string) error {
	if _, err := os.Stat(filepath.Join(folder, packer)); err != nil {
		return errors.New(extensionFolder + "/" + packer + " is not there")
	}
	for _, tool := range []string{"node", "npm"} {
		if _, err := exec.LookPath(tool); err != nil {
			return errors.New(tool + " is not installed")
		}
	}
	return nil
}
