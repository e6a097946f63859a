package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWrapBreaksBetweenWords(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, Wrap("one two three", 7))
	assert.Equal(t, []string{"a", "verylongword", "b"}, Wrap("a verylongword b", 5))
	assert.Equal(t, []string{"大麦", "大麦"}, Wrap("大麦 大麦", 6))
	assert.Equal(t, []string{""}, Wrap("", 10))
	assert.Equal(t, []string{"after", "6 d 22 h,", "all"}, Wrap("after 6 d 22 h, all", 9), "a length of time is not parted")
	assert.Equal(t, []string{"1 h 30 min", "5 lb 4 oz", "5 kg", "6 kg"}, Wrap("1 h 30 min 5 lb 4 oz 5 kg 6 kg", 6))
}
