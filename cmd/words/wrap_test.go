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
}
