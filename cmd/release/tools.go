package main

import (
	"context"
	"fmt"
	"path"
	"path/filepath"
	"strings"
)

// The tools of others, each at a version: what they write may differ from one to the next.
const (
	packager = "github.com/goreleaser/nfpm/v2/cmd/nfpm@v2.45.2"
	lister   = "github.com/CycloneDX/cyclonedx-gomod/cmd/cyclonedx-gomod@v1.10.0"
)

// tools are the paths of the built tools.
type tools struct{ packager, lister string }

// install builds the tools, once for all targets, and so that their own bytes tell of no folder: a list of parts
// has the checksum of the tool that made it.
func (r release) install(ctx context.Context) (tools, error) {
	bin := filepath.Join(r.scratch, "bin")
	fmt.Fprintln(r.say, "tools of others are built; that takes a minute or two the first time")
	_, err := output(ctx, r.scratch, []string{"GOBIN=" + bin, "GOFLAGS=", "GOWORK=off", "CGO_ENABLED=0"}, "go", "install", "-trimpath", "-buildvcs=false", packager)
	if err == nil {
		_, err = output(ctx, r.scratch, []string{"GOBIN=" + bin, "GOFLAGS=", "GOWORK=off", "CGO_ENABLED=0"}, "go", "install", "-trimpath", "-buildvcs=false", lister)
	}
	return tools{filepath.Join(bin, toolName(packager)), filepath.Join(bin, toolName(lister))}, err
}

// toolName is the name of the program of a tool.
func toolName(tool string) string {
	at, _, _ := strings.Cut(tool, "@")
	name := path.Base(at)
	if here().system == "windows" {
		name += ".exe"
	}
	return name
}
