package main

import (
	"fmt"
	"sync"
	"testing"
)

// kept holds answers about files that no test changes: a fit of three records takes
// seconds, and half a dozen tests look at what comes of it.
var kept sync.Map

// once asks a question of these words the first time that a test wants its answer.
func once[T any](t *testing.T, ask func() T, words ...any) T {
	t.Helper()
	said, _ := kept.LoadOrStore(fmt.Sprintf("%q", words), sync.OnceValue(ask))
	return said.(func() T)()
}
