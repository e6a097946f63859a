package arrows

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestTheProgramKeepsOnlyMethodsThatAreCalled: where one function asks for a method by a name that is made while it
// runs, the linker keeps every exported method of every type, some four megabytes of them. text/template does, and much of
// what reads structs of any type; docs/dependencies.md tells of it.
func TestTheProgramKeepsOnlyMethodsThatAreCalled(t *testing.T) {
	build := exec.Command("go", "build", "-ldflags=-dumpdep", "-o", filepath.Join(t.TempDir(), "program"), "./cmd/maltwright")
	build.Dir = "../.."
	out, err := build.CombinedOutput()
	require.NoError(t, err)
	lines := strings.Split(string(out), "\n")
	require.Greater(t, len(lines), 10_000, "the linker says what keeps what")
	for _, line := range lines { // by -> what
		if by, _, found := strings.Cut(line, " <ReflectMethod>"); found {
			assert.Fail(t, "methods are asked for by name", by)
		}
	}
}
