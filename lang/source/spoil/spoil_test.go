package spoil

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const sample = "site \"Loft 7\" {\n  air 8 to 14 °C\n}\nprocess \"p\" {\n  soak 7 h in water at 13 °C\n  awake 06:30\n}\n"

func TestPiecesAreShortAndLoseNothingButLongLines(t *testing.T) {
	long := strings.Repeat("x", 50) + "\n"
	pieces := Pieces(sample+long, 40)
	assert.Equal(t, sample, strings.Join(pieces, ""))
	assert.Greater(t, len(pieces), 2)
	for _, p := range pieces {
		assert.LessOrEqual(t, len(p), 40)
	}
}

func TestNumbersChangesFiguresAndNothingElse(t *testing.T) {
	for seed := range uint64(200) {
		got := Numbers(Random(seed), sample)
		assert.Equal(t, number.ReplaceAllString(sample, "${1}N$3"), number.ReplaceAllString(got, "${1}N$3"))
		assert.Contains(t, got, "Loft 7")
		assert.Contains(t, got, "06:30")
	}
	assert.NotEqual(t, sample, Numbers(Random(3), sample))
}

func TestTheSameSeedBreaksTheSame(t *testing.T) {
	seen := map[string]bool{}
	for seed := range uint64(200) {
		got := Text(Random(seed), sample, Words(sample))
		assert.Equal(t, got, Text(Random(seed), sample, Words(sample)))
		seen[got] = true
	}
	assert.Greater(t, len(seen), 150)
}
