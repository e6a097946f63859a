package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/process"
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

func TestWakingHoursMayRunOverMidnight(t *testing.T) {
	late := process.Clock{From: 20 * 3600, To: 3 * 3600}
	assert.Equal(t, 7*hour, waking(late))
	assert.False(t, asleep(late, 26*3600))
	assert.False(t, asleep(late, 3*3600+1800), "half an hour late")
	assert.True(t, asleep(late, 5*3600))
	assert.Equal(t, day, waking(process.Clock{From: 0, To: 24 * 3600}))
}

// Visits every eight hours hit a night of eight hours once a day, whenever they
// begin; an hour early or late is enough to miss it.
func TestBestStartMissesTheNight(t *testing.T) {
	awake := process.Clock{From: 6*3600 + 1800, To: 22*3600 + 1800}
	var list []visit
	for at := 8 * hour; at < 5*day; at += 8 * hour {
		list = append(list, visit{at: at})
	}
	best, worst := bestStart(list, awake)
	assert.Empty(t, best.missed)
	assert.Len(t, worst.missed, len(list)/3+1, "the one in the middle of the night, every night")
	assert.Equal(t, "06:30", clock(best.at))
}

func TestClockIsATimeOfDay(t *testing.T) {
	assert.Equal(t, "00:30", clock(24*3600+1859))
	assert.Equal(t, "23:00", clock(-3600))
}
