package nearest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFindsTheWordThatWasMeant(t *testing.T) {
	verbs := []string{"soak", "rest", "repeat", "hold", "turn", "germinate", "dry", "cure"}
	for written, want := range map[string]string{
		"saok": "soak", "soack": "soak", "rst": "rest", "germinat": "germinate", "germinaet": "germinate",
		"drey": "dry", "cur": "cure", "repaet": "repeat",
		"kiln": "", "xyzzy": "", "soak": "", "": "",
	} {
		got, ok := Word(written, verbs)
		assert.Equal(t, want, got, written)
		assert.Equal(t, want != "", ok, written)
	}
}

func TestFirstOfEqualsWins(t *testing.T) {
	got, _ := Word("bat", []string{"cat", "hat"})
	assert.Equal(t, "cat", got)
}
