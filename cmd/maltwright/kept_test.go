package main

import (
	"fmt"
	"sync"
	"testing"
)

// kept holds what commands said of files that no test changes: a fit of three records
// takes a second, and half a dozen tests look at what comes of it.
var kept sync.Map

// once runs a command of these words the first time that a test asks for it.
func once(t *testing.T, run func() string, words ...any) string {
	t.Helper()
	said, _ := kept.LoadOrStore(fmt.Sprintf("%q", words), sync.OnceValue(run))
	return said.(func() string)()
}
