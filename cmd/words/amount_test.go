package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
)

func TestABandTellsItsEndsAndWhatCame(t *testing.T) {
	metric, fahrenheit := House{}, House{}
	fahrenheit.Fahrenheit = true
	cure := &answer.Temperature{Place: "air-on", From: 84, To: 84}
	rise := &answer.Temperature{Place: "air-on", From: 46, To: 60}
	came := answer.Celsius(43.7)
	assert.Equal(t, "air-on 84", metric.Band(cure))
	assert.Equal(t, "air-on 46–60", metric.Band(rise))
	assert.Equal(t, "malt 93 to -1.1", metric.Band(&answer.Temperature{Place: "malt", From: 93, To: -1.1}), "a dash beside a sign is no range")
	assert.Equal(t, "air -5 to 2", metric.Band(&answer.Temperature{Place: "air", From: -5, To: 2}))
	assert.Equal(t, "air-on 84", metric.Given(cure, nil, 14))
	assert.Equal(t, "air-on 84 (44)", metric.Given(cure, &came, 14))
	assert.Equal(t, "46–60 (44)", metric.Given(rise, &came, 14))
	assert.Equal(t, "air-on 46–60 (44)", metric.Given(rise, &came, 20))
	assert.Equal(t, "115–140 (111)", fahrenheit.Given(rise, &came, 14))
	assert.Empty(t, metric.Given(nil, nil, 14))
}
