package tell

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/declaration"
	"maltwright/sim/air"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/infer/learn"
	"maltwright/sim/visits"
)

// rowsOf lists the keys of a table as declaration.Constants does, and what it has of them,
// put into one line.
func rowsOf[K ~int, V any](rows map[K]V) (keys, said []string) {
	for k, v := range rows {
		keys, said = append(keys, strconv.Itoa(int(k))), append(said, fmt.Sprint(v))
	}
	return keys, said
}

func TestEveryConstantThatIsToldHasItsWords(t *testing.T) {
	for _, c := range []struct {
		path, of string
		untold   []string // constants of which nothing is said
		rows     func() (keys, said []string)
	}{
		{simulator, "Caution", nil, func() ([]string, []string) { return rowsOf(cautions) }},
		{simulator, "Caution", nil, func() ([]string, []string) { return rowsOf(hazards) }},
		{"maltwright/sim/ensemble", "Open", nil, func() ([]string, []string) { return rowsOf(open) }},
		{"maltwright/sim/kiln", "Limit", []string{"0"}, func() ([]string, []string) { return rowsOf(limits) }},
	} {
		keys, said := c.rows()
		assert.ElementsMatch(t, declaration.Constants(t, c.path, c.of), append(keys, c.untold...), c.of)
		for _, text := range said {
			assert.NotEmpty(t, strings.Trim(text, "{} "), c.of)
		}
	}
	for _, figure := range declaration.Constants(t, simulator, "Figure") {
		assert.Contains(t, Learnt(forecast.Used{Figure: forecast.Figure(figure), Of: "x"}), figure)
	}
}

// What can be open is told with what to do about it; a temperature in that is turned into
// the degrees of the house.
func TestWhatIsOpenIsToldWithWhatToDo(t *testing.T) {
	for o := range open {
		assert.NotEmpty(t, Open(o))
		assert.NotEmpty(t, Learn(o, metric))
		assert.NotContains(t, Learn(o, pounds), "°C")
	}
	assert.Equal(t, "hold it in crushed ice that melts: it must show 32 °F", Learn(ensemble.ThermometerOffset, pounds))
	assert.Equal(t, "how fast the lot grows (Far field)", Side(learn.Side{Open: ensemble.LotGrowth, Of: "Far field"}))
}

func TestACornerIsToldByItsEnds(t *testing.T) {
	c := ensemble.Corner{Ends: []ensemble.End{
		{Open: ensemble.RoomAir, At: written(t, "15 °C"), High: written(t, "15 °C")},
		{Open: ensemble.RoomHumidity, At: written(t, "80 %"), High: written(t, "80 %")},
	}}
	assert.Equal(t, "air 15 °C, humidity 80 %", Corner(c))
}

func TestWhatFallsDueIsNamed(t *testing.T) {
	assert.Equal(t, "the end of rest 1", Due(visits.Task{Kind: visits.Fill, Name: "soak 2", Ends: "rest 1"}))
	for _, kind := range declaration.Constants(t, "maltwright/sim/visits", "Kind") {
		assert.Equal(t, visits.Kind(kind).Again(), Due(visits.Task{Kind: visits.Kind(kind)}) != "", kind)
	}
}

func TestCausesAreToldInTheUnitsOfTheHouse(t *testing.T) {
	hot := air.Within("temperature of the malt", 300, "°C", -20, 260)
	require.Error(t, hot)
	heavy := air.Within("dry matter", 2e6, "kg", 0.001, 1e6)
	for _, c := range []struct {
		cause          error
		metric, pounds string
	}{
		{forecast.ErrNothing, "the process does not say what grain it is made from", ""},
		{forecast.NoMalt{}, "no malt comes to it: the process has no kiln stage before it", ""},
		{forecast.LongSteep{Most: 30 * 86400}, "the steep lasts over 30 days, and the grain in it is dead", ""},
		{forecast.TooDear{Most: 4_000_000, Share: 0.71}, "a forecast may take 4 million steps of the model, and most of them go into this, 71 %", ""},
		{forecast.TooDear{Most: 4_000_000, Share: math.NaN()}, "a forecast may take 4 million steps of the model, and this one takes more", ""},
		{follow.Forgotten{Silent: 40 * 86400, Most: 30 * 86400}, "the record has no line for 40 days, and none that ends the batch; a batch is followed for 30 days after its last reading", ""},
		{learn.TooMany{Batches: 51, Most: 50}, "there are 51 batches, and learn takes 50 at most; leave the oldest out", ""},
		{learn.TooDear{Most: 300_000}, "one forecast of it takes over 300000 steps of the model, and hundreds of forecasts are needed; " + Dearest, ""},
		{learn.ErrUnseen, "nothing was weighed, counted, felt or read", ""},
		{fmt.Errorf("it cannot be: %w", hot), "it cannot be: temperature of the malt 300 °C is outside -20 to 260 °C", "it cannot be: temperature of the malt 572 °F is outside -4 to 500 °F"},
		{errors.Join(hot, heavy), "temperature of the malt 300 °C is outside -20 to 260 °C; " + heavy.Error(),
			"temperature of the malt 572 °F is outside -4 to 500 °F; dry matter 4409245 lb is outside 0.0022 to 2204623 lb"},
	} {
		assert.Equal(t, c.metric, Cause(c.cause, metric))
		if c.pounds == "" {
			c.pounds = c.metric
		}
		assert.Equal(t, c.pounds, Cause(c.cause, pounds))
	}
}
