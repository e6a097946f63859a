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

func TestOnlyAWordThatNoOtherComesNearIsCertain(t *testing.T) {
	for written, want := range map[string]string{"yess": "yes", "unknwn": "unknown", "ne": "", "ye": "", "no": "", "noo": "", "nis": "", "yes7": ""} {
		got, ok := Only(written, []string{"no", "yes", "unknown"})
		assert.Equal(t, want, got, written)
		assert.Equal(t, want != "", ok, written)
	}
	_, ok := Only("boat", []string{"goat", "coat"})
	assert.False(t, ok, "two are as near")
}

func TestFirstOfEqualsWins(t *testing.T) {
	got, _ := Word("bat", []string{"cat", "hat"})
	assert.Equal(t, "cat", got)
}

func TestANameIsKnownByItsParts(t *testing.T) {
	names := []string{"blue tub", "Far field 2026", "Far field 2025", "Loft, spring"}
	for written, want := range map[string][]string{
		"tub": {"blue tub"}, "the blue tub": {"blue tub"}, "Blue-Tub": {"blue tub"}, "far field": {"Far field 2026", "Far field 2025"},
		"loft": {"Loft, spring"}, "red tub": nil, "Far field 2024": nil, "blue tub": nil, "": nil, "…": nil,
	} {
		assert.Equal(t, want, Parts(written, names), written)
	}
}
