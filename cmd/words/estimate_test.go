package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/words"
)

func TestEstimatesHaveTheDigitsThatTheirErrorGivesAMeaning(t *testing.T) {
	for _, c := range []struct {
		value, err float64
		want       string
	}{
		{1.0624, 0.0431, "1.062 0.043"}, {1.0624, 0.131, "1.06 0.13"}, {0.9, 0.00996, "0.900 0.010"}, {1.05, 0.0994, "1.050 0.099"},
		{1.05, 0.0996, "1.05 0.10"}, {-0.684, 0.996, "-0.7 1.0"}, {12, 14.2, "12 14"}, {1, 0, "1.00 0.00"},
	} {
		value, off := words.Estimate(c.value, c.err)
		assert.Equal(t, c.want, value+" "+off)
	}
}

func TestOnlyWhatIsMoreThanNothingHasAPlus(t *testing.T) {
	for number, want := range map[string]string{"0.69": "+0.69", "-0.69": "-0.69", "0.00": "0.00", "10": "+10"} {
		assert.Equal(t, want, words.Signed(number))
	}
}

func TestListsAreJoinedAsInASentence(t *testing.T) {
	for want, list := range map[string][]string{"": nil, "a": {"a"}, "a and b": {"a", "b"}, "a, b and c": {"a", "b", "c"}} {
		assert.Equal(t, want, words.List(list))
	}
	assert.Equal(t, "1 batch", words.Many(1, "batch", "batches"))
	assert.Equal(t, "0 batches", words.Many(0, "batch", "batches"))
}
