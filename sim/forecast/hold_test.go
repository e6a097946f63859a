package forecast

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
)

// shed is the house of the tests with another room and another floor.
func shed(t *testing.T, air, floor, grow string) *Forecast {
	t.Helper()
	text := fmt.Sprintf(`
grain "lot" { species barley; moisture 12 %%; kernel-weight 45 g; germination 97 %% of 100 kernels; treated no }
site "room" { air %s; humidity 70 %%; water 13 °C; altitude 0 m }
vessel "tub" { holds 40 l }
floor "tray" { area 0.4 m2; %s }
kiln "kiln" { area 0.5 m2; airflow 120 m3/h; reaches 20 to 110 °C; heater 5 kW; fired electric }
process "p" {
 make pale malt
 from 5 kg of "lot"
 at "room"
%s germinate on "tray" { %s; turn every 8 h; until acrospire at least 3/4; allow 3 to 12 days; humidity 98 %% }
%s}
`, air, floor, steepText, grow, kilnText)
	f, err := Run(load(t, text), Options{})
	require.NoError(t, err)
	return f
}

func TestAColdShedFreezesTheBed(t *testing.T) {
	f := shed(t, "-6 °C", "", "hold bed at 14 to 17 °C")
	frozen := Troubles[BedFrozen](f)
	require.Len(t, frozen, 1)
	last := f.Stages[len(f.Stages)-1].Steps
	assert.Equal(t, BrokenOff, last[len(last)-1].EndedBy)
	assert.InDelta(t, -6, frozen[0].Room, 1e-9)
	assert.Equal(t, "hold bed at 14 to 17 °C", frozen[0].Place.Text())
	assert.True(t, f.BrokenOff())
}

func TestACoolRoomMakesTheGrowthLonger(t *testing.T) {
	warm := shed(t, "14 °C", "heater 200 W", "hold bed at 14 to 17 °C")
	cool := shed(t, "8 °C", "", "hold bed at 14 to 17 °C")
	off := Troubles[BedOff](cool)
	require.Len(t, off, 1)
	assert.Empty(t, Troubles[BedOff](warm))
	assert.True(t, off[0].Cold)
	assert.Greater(t, off[0].Mean, 8.0)
	assert.Less(t, off[0].Mean, 13.0)
	assert.LessOrEqual(t, off[0].Most, off[0].Mean)
	late := grown(cool).Waited - grown(warm).Waited
	assert.InEpsilon(t, late, off[0].Later, 0.25, "the band is kept in its middle, and Later counts from its edge")
	assert.Zero(t, off[0].Power)
	mended := shed(t, "8 °C", fmt.Sprintf("heater %.0f W", off[0].Wants+1), "hold bed at 14 to 17 °C")
	assert.Empty(t, Troubles[BedOff](mended))
}

// The heater of a frozen shed makes good what the room takes: with one that is strong
// enough it is as in a heated room.
func TestAHeaterMakesAColdShedAWarmRoom(t *testing.T) {
	room := shed(t, "14 °C", "heater 500 W", "hold bed at 15 °C")
	frost := shed(t, "-6 °C", "heater 500 W", "hold bed at 15 °C")
	assert.Empty(t, Troubles[BedOff](frost))
	assert.InEpsilon(t, grown(room).Waited, grown(frost).Waited, 0.03, "but for the first hours, in which it is warmed up")
	assert.Greater(t, frost.Totals.BedHeat, 1e6, "J")
	assert.Less(t, room.Totals.BedHeat, frost.Totals.BedHeat/10)
	assert.Zero(t, frost.Totals.BedCold)
}

func TestARoomThatIsHeldIsWarm(t *testing.T) {
	held := shed(t, "-6 °C", "", "hold room at 14 to 16 °C")
	assert.Empty(t, Troubles[BedOff](held))
	assert.Empty(t, Troubles[BedFrozen](held))
	assert.Zero(t, held.Totals.BedHeat, "whatever heats the room is no heater of the floor")
	assert.InDelta(t, grown(shed(t, "15 °C", "", "hold room at 14 to 16 °C")).Waited, grown(held).Waited, hour, "but for the humidity of the rests in air")
}

func TestAWarmRoomIsToldOf(t *testing.T) {
	off := Troubles[BedOff](shed(t, "22 °C", "", "hold bed at 14 to 17 °C"))
	require.Len(t, off, 1)
	assert.False(t, off[0].Cold)
	assert.Greater(t, off[0].Mean, 22.0)
	assert.Negative(t, off[0].Later)
	cooled := shed(t, "22 °C", fmt.Sprintf("cooler %.0f W", off[0].Wants+1), "hold bed at 14 to 17 °C")
	assert.Empty(t, Troubles[BedOff](cooled))
	assert.Positive(t, cooled.Totals.BedCold)
}

func TestAHoldWithoutAPlaceIsOfTheBed(t *testing.T) {
	f := shed(t, "14 °C", "heater 200 W", "hold at 15 °C")
	assert.Contains(t, f.Assumed, BedHeld{})
	bed := shed(t, "14 °C", "heater 200 W", "hold bed at 15 °C")
	assert.NotContains(t, bed.Assumed, BedHeld{})
	assert.Equal(t, grown(bed).Waited, grown(f).Waited)
}

func TestABedIsLedFromOneTemperatureToAnother(t *testing.T) {
	f := shed(t, "12 °C", "heater 300 W; cooler 300 W", "hold bed from 17 to 13 °C over 3 days")
	assert.Empty(t, Troubles[BedOff](f))
	s := f.Stages[1].Steps[0]
	assert.Equal(t, Temperature{"bed", 17, 13, true}, s.Temperature)
	warm, cool := grown(shed(t, "12 °C", "heater 300 W; cooler 300 W", "hold bed at 17 °C")), grown(shed(t, "12 °C", "heater 300 W; cooler 300 W", "hold bed at 13 °C"))
	assert.Greater(t, grown(f).Waited, warm.Waited+hour)
	assert.Less(t, grown(f).Waited, cool.Waited-hour)
	two := shed(t, "12 °C", "heater 300 W; cooler 300 W", "hold bed from 17 to 13 °C over 1 day; hold bed at 17 °C")
	assert.Len(t, two.Stages[1].Steps, 2)
	assert.InDelta(t, 24*hour, two.Stages[1].Steps[0].End-two.Stages[1].Steps[0].Start, 1)
}

func TestTheBedFollowsItsRamp(t *testing.T) {
	h := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+
		`germinate on "tray" { hold bed from 17 to 13 °C over 40 h; turn every 8 h; for 3 days; humidity 98 % }`+"\n"+kilnText+"}\n")
	plan, err := Run(h, Options{})
	require.NoError(t, err)
	began := plan.Stages[1].Steps[0].Start
	f, err := Run(h, Options{Course: &Course{Looks: []float64{began + 20*hour, began + 60*hour}, Brief: true}})
	require.NoError(t, err)
	require.Len(t, f.Seen, 2)
	assert.InDelta(t, 15, f.Seen[0].Bed, 0.5, "the middle of the bed is somewhat warmer than its mean")
	assert.InDelta(t, 13, f.Seen[1].Bed, 0.5)
}

// A bed that is led below what its room allows is told of from the day on which it stays
// behind: a room of 16 °C is passed on the second of the three days, 17 to 12 °C.
func TestABedThatLeavesItsLineIsToldOf(t *testing.T) {
	off := Troubles[BedOff](shed(t, "16 °C", "", "hold bed from 17 to 12 °C over 3 days"))
	require.Len(t, off, 1)
	require.NotNil(t, off[0].Led)
	assert.False(t, off[0].Cold)
	assert.InDelta(t, 1.1*24*hour, off[0].Led.Since, 0.7*24*hour)
	assert.Greater(t, off[0].Led.Most, off[0].Led.Mean)
	assert.Greater(t, off[0].Led.Most, 3.0, "the room alone is 4 K above its end")
	assert.Nil(t, Troubles[BedOff](shed(t, "22 °C", "", "hold bed at 14 to 17 °C"))[0].Led)
}

// The same warmth of a bed is told whether as the warmest between turns or as out of its
// band: that of its middle.
func TestOneWarmthOfABedIsTold(t *testing.T) {
	f := shed(t, "22 °C", "", "hold bed at 14 to 17 °C")
	assert.InDelta(t, Troubles[BedWarm](f)[0].Temperature, Troubles[BedOff](f)[0].Most, 0.3)
}

func TestTheHalfOfTheBandThatIsAimedAt(t *testing.T) {
	b := germinate.Band{Low: 14, High: 18}
	assert.Equal(t, germinate.Band{Low: 15, High: 17}, *aimed(b, 0))
	assert.Equal(t, germinate.Band{Low: 14, High: 16}, *aimed(b, -1))
	assert.Equal(t, germinate.Band{Low: 16, High: 18}, *aimed(b, 1))
}

// A heap in a room that is held asks nothing of its bed, so that no band says that it runs hot.
func TestABedThatRunsHotInARoomThatIsHeldIsTold(t *testing.T) {
	heap := func(area string) *Forecast {
		h := load(t, strings.Replace(house, "area 0.4 m2", area, 1)+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+
			`germinate on "tray" { hold room at 18 °C; for 4 days }`+"\n"+kilnText+"}\n")
		f, err := Run(h, Options{})
		require.NoError(t, err)
		return f
	}
	f := heap("area 0.02 m2")
	hot := Troubles[RanHot](f)
	require.Len(t, hot, 1)
	assert.Greater(t, hot[0].Time, soonLost)
	assert.Greater(t, hot[0].Highest, hot[0].Lost)
	assert.InDelta(t, Troubles[BedWarm](f)[0].Temperature, hot[0].Highest, 1e-9)
	assert.Empty(t, Troubles[RanHot](heap("area 0.4 m2")))
	assert.Empty(t, Troubles[RanHot](shed(t, "22 °C", "", "hold bed at 14 to 17 °C")), "a band tells it")
}
