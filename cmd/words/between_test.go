package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/words"
)

func TestARangeHasAUnitThatBothEndsHaveOnce(t *testing.T) {
	for want, ends := range map[string][2]string{
		"43.2–44.5 %":           {"43.2 %", "44.5 %"},
		"4.5 %":                 {"4.5 %", "4.5 %"},
		"7 d 8–19 h":            {"7 d 8 h", "7 d 19 h"},
		"7 d 8 h–8 d 8 h":       {"7 d 8 h", "8 d 8 h"},
		"8 lb 6.6–9.9 oz":       {"8 lb 6.6 oz", "8 lb 9.9 oz"},
		"30–31 Oct":             {"30 Oct", "31 Oct"},
		"45 min–1 h 5 min":      {"45 min", "1 h 5 min"},
		"2 d 2 h–3 d 7 h":       {"2 d 2 h", "3 d 7 h"},
		"8 lb 6.6 oz–9 lb 1 oz": {"8 lb 6.6 oz", "9 lb 1 oz"},
		"0.29–0.41":             {"0.29", "0.41"},
		"gummy–chalky":          {"gummy", "chalky"},
		"now–never":             {"now", "never"},
		"5 h":                   {"", "5 h"},
	} {
		assert.Equal(t, want, words.Between(ends[0], ends[1]))
	}
}
