package golden

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// deaf is a test that keeps what it is told.
type deaf struct {
	testing.TB
	told string
}

func (d *deaf) Helper() {}

func (d *deaf) Errorf(format string, args ...any) { d.told += fmt.Sprintf(format, args...) }

func TestOnlyTheLinesThatDifferAreShown(t *testing.T) {
	lines := strings.Split(strings.Repeat("as it was\n", 200), "\n")
	want := strings.Join(lines, "\n")
	lines[100] = "as it is"
	d := &deaf{TB: t}
	assert.False(t, Same(d, "testdata/x.txt", want, strings.Join(lines, "\n")))
	assert.Contains(t, d.told, "testdata/x.txt; MALTWRIGHT_UPDATE=1 writes it anew")
	assert.Contains(t, d.told, "\n+as it is\n")
	assert.Less(t, strings.Count(d.told, "\n"), 15)

	d = &deaf{TB: t}
	assert.True(t, Same(d, "testdata/x.txt", want, want))
	assert.Empty(t, d.told)
}
