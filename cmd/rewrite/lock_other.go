//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd || windows)

package rewrite

import "os"

const asItIs = 0

// holdLock gives an error: a lock that outlives its holder would be worse.
func holdLock(*os.File) error { return noLocks }
