package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/words"
)

func TestTheVerdictSaysWhatWasNotBetter(t *testing.T) {
	assert.Contains(t, words.Verdict([]string{"weight"}, nil), "in all of these")
	assert.Contains(t, words.Verdict(nil, []string{"weight"}), "came no nearer")
	assert.Equal(t, "What the others taught came nearer than the model as it stands in weight and acrospire, but not in temperature.",
		words.Verdict([]string{"weight", "acrospire"}, []string{"temperature"}))
	assert.Contains(t, words.Verdict(nil, nil), "Nothing")
}
