package air

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRefusalsAreInTheUnitsThatPeopleMeasureIn(t *testing.T) {
	for want, e := range map[string]RangeError{
		"depth of the bed 0.0407 mm is outside 2 mm to 2 m":                         {"depth of the bed", 0.0000407, "m", 0.002, 2},
		"depth of the bed 15.7 m is outside 1 mm to 10 m":                           {"depth of the bed", 15.7123, "m", 0.001, 10},
		"airflow 60000 m3/h is outside 0 to 45 m3/h":                                {"airflow", 16.66666666, "m³/s", 4.2e-9, 0.0125},
		"moisture, dry basis 0.012 % is outside 5 to 35 %":                          {"moisture, dry basis", 0.00012, "kg/kg", 0.05, 0.35},
		"germination 0.097 % of the kernels is outside 0.1 to 100 % of the kernels": {"germination", 0.00097, "of kernels", 0.001, 1},
		"moisture 7.08 % is just outside 7.08 to 400 %":                             {"moisture", 0.0707999, "kg/kg", 0.0708, 4},
		"step 0 s is just outside 0 to 30 days":                                     {"step", math.Copysign(0, -1), "s", math.SmallestNonzeroFloat64, 30 * 86400},
		"heater more than 1000000000 kW is outside 0 to 100000 kW":                  {"heater", 1e300, "W", 0, 1e8},
		"temperature could not be reckoned":                                         {"temperature", math.NaN(), "°C", 0, 1},
		"area could not be reckoned":                                                {"area", math.Inf(1), "m²", 0, 1},
	} {
		assert.Equal(t, want, e.Error())
	}
}
