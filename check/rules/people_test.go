package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRulesForPeopleSendThemToTheCodesOfThePlace(t *testing.T) {
	for _, r := range peopleRules() {
		assert.True(t, strings.HasSuffix(r.Do, "follow local codes and licensed practice"), r.Name)
		assert.NotEmpty(t, r.Limits, r.Name)
	}
}

// A tonne gives about 39 m³ of carbon dioxide in five days: 72 kg of it, at the
// volume of an ideal gas at 15 °C.
func TestVolumeOfCarbonDioxide(t *testing.T) {
	const gas, molar, pressure, t15 = 8.314, 0.04401, 101325.0, 288.15
	assert.InDelta(t, gas*t15/(molar*pressure), gasVolume, 0.0005)
	assert.InDelta(t, 72.6, 1000*gasPerKilo/gasVolume, 0.1)
}

func TestClockIsATimeOfDay(t *testing.T) {
	assert.Equal(t, "00:30", clock(24*3600+1859))
	assert.Equal(t, "23:00", clock(-3600))
}
