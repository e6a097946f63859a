package main

import (
	"context"
	"path/filepath"
)

// parts writes what a program is made of, for programs that look for known faults: a list of CycloneDX, with the version and the
// checksum of each module, and without a number or a time of its own.
func (r release) parts(ctx context.Context, t tools, p program) error {
	to := filepath.Join(r.dir, "maltwright-"+r.commit.version+"-"+p.target.named()+".cdx.json")
	_, err := output(ctx, r.scratch, nil, t.lister, "bin", "-json", "-noserial", "-notimestamp", "-std", "-version", "v"+r.commit.version, "-output", to, p.path)
	return err
}
