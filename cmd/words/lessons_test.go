package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/words"
)

func TestTheVerdictSaysWhatWasNotBetter(t *testing.T) {
	assert.Contains(t, words.Verdict([]string{"weight"}, nil), "in all of these")
	assert.Contains(t, words.Verdict(nil, []string{"weight"}), "in none of these")
	assert.Equal(t, "The forecast learnt from the other batches was nearer than the plain model in weight and acrospire, but not in temperature.",
		words.Verdict([]string{"weight", "acrospire"}, []string{"temperature"}))
	assert.Contains(t, words.Verdict(nil, nil), "do not allow")
}
