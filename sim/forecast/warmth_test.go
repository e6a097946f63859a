package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatABedStaysAboveTakesHours(t *testing.T) {
	var w warmth
	w.add(18.5, 20*3600)
	w.add(31.9, 2*3600)
	assert.Equal(t, 18.0, w.stayed(), "two hours are a spike")
	w.add(30.2, 1800)
	w.add(90, 1800)
	assert.Equal(t, 30.0, w.stayed(), "three hours in all, at 30 °C and above")
	w.add(-0.5, 9*3600)
	assert.Equal(t, 30.0, w.stayed(), "what freezes is not warm")
}
