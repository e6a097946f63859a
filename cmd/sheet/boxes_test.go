package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/words"
)

// Where weights are written in pounds and ounces every box asks for both, however even the
// weight comes out that is expected.
func TestABoxOfAWeightAsksForPoundsAndOunces(t *testing.T) {
	m := maker{p: sample.Process(t, "../check/testdata/units/pounds.malt")}
	m.h = words.Of(m.p)
	for lb := 1.0; lb < 60; lb += 1.0 / 64 {
		assert.Equal(t, "lb oz", m.unit(answer.Kilograms(lb*0.45359237)), "%v lb", lb)
	}
}
