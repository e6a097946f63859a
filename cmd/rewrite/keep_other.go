//go:build !unix && !windows

package rewrite

import "os"

// ownership cannot be told here.
type ownership struct{}

func ownershipOf(*os.File, os.FileInfo) (ownership, int, error) { return ownership{}, 1, nil }

func (ownership) give(*os.File) error { return nil }
