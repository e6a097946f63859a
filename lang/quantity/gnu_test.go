package quantity

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

//go:generate env MALTWRIGHT_UPDATE=1 go test -run TestKeptTableIsWhatUnitsGives

// conversions is every unit of ours in the SI unit of its dimension, and every pair
// of a dimension, converted by GNU units (Debian package units), which is asked anew
// by TestKeptTableIsWhatUnitsGives.
const conversions = "testdata/units.tsv"

// conversion is one question to GNU units; a difference of temperatures is asked
// apart from a temperature.
type conversion struct {
	dimension       Dimension
	value, from, to string
}

// gnuNames are our units in the spelling of GNU units, where that is another. Its h
// is Planck's constant.
var gnuNames = map[string]string{
	"h": "hour", "m3": "m^3", "ft3": "ft^3", "cm2": "cm^2", "m2": "m^2", "ft2": "ft^2", "in2": "in^2",
	"qt-us": "usquart", "qt-imp": "brquart", "pt-us": "uspint", "pt-imp": "brpint", "ton-us": "shortton", "ton-imp": "longton",
	"gal-us": "usgallon", "gal-imp": "brgallon", "m3/h": "m^3/hour", "m3/s": "m^3/s", "l/h": "l/hour", "Btu/h": "btu/hour",
	"°C/h": "degC/hour", "°F/h": "degF/hour", "K/h": "K/hour", "°C/min": "degC/min", "°F/min": "degF/min",
	"mm of water": "mm water", "inches of water": "inch water",
	"°C": "degC", "°F": "degF", "%": "percent", "% dry basis": "percent",
}

// si stands for the SI unit of the dimension as what to convert to: without it
// units that are all wrong by one factor would agree with each other.
const si = "SI"

// gnuSI are the SI units in the spelling of GNU units.
var gnuSI = map[Dimension]string{
	Share: "1", DryShare: "1", Temperature: "K", TemperatureDifference: "K", TemperatureRate: "K/s", Time: "s", Mass: "kg", Volume: "m^3",
	Length: "m", Area: "m^2", Flow: "m^3/s", Power: "W", Energy: "J", Pressure: "Pa", Speed: "m/s", Dose: "m^3/kg",
	MassFraction: "1", Concentration: "kg/m^3",
}

// byConvention are the dimensions whose scales laboratories agreed on and GNU units does
// not have; scales_test.go holds theirs.
var byConvention = map[Dimension]bool{Colour: true, DiastaticPower: true}

func (c conversion) question() (from, to string) {
	switch {
	case c.dimension == Temperature && c.from != "K":
		from = fmt.Sprintf("temp%s(%s)", strings.TrimPrefix(c.from, "°"), c.value)
	default:
		from = c.value + " " + cmp.Or(gnuNames[c.from], c.from)
	}
	switch to = cmp.Or(gnuNames[c.to], c.to); {
	case c.to == si:
		to = gnuSI[c.dimension]
	case c.dimension == Temperature && c.to != "K":
		to = "temp" + strings.TrimPrefix(c.to, "°")
	}
	return from, to
}

func everyConversion() (list []conversion) {
	for _, from := range Units() {
		for _, to := range append(Units(), Unit{Name: si, Dimension: from.Dimension}) {
			if from.Name == to.Name || from.Dimension != to.Dimension || from.Dimension == Count || byConvention[from.Dimension] {
				continue
			}
			for _, value := range []string{"1", "12.4", "250"} {
				list = append(list, conversion{from.Dimension, value, from.Name, to.Name})
				if from.Dimension == Temperature {
					list = append(list, conversion{TemperatureDifference, value, from.Name, to.Name})
				}
			}
		}
	}
	return list
}

func TestConversionsAgreeWithGNUUnits(t *testing.T) {
	kept := keptConversions(t)
	for _, c := range everyConversion() {
		want, ok := kept[c]
		if !assert.True(t, ok, "%v is not in %s: make the table again with go generate", c, conversions) {
			continue
		}
		q, err := Make(Part{c.value, c.from})
		require.NoError(t, err)
		q, err = q.As(c.dimension)
		require.NoError(t, err)
		to := plain // as which the SI unit reads
		if c.to != si {
			to, ok = Lookup(c.to)
			require.True(t, ok)
		}
		if c.dimension == TemperatureDifference {
			to.Offset = 0
		}
		// GNU units and we hold the same exact definitions: what remains is float64,
		// here after taking 273.15 from about 300.
		assert.InEpsilon(t, want, (q.SI-to.Offset)/to.Factor, 1e-9, "%v", c)
	}
}

func keptConversions(t *testing.T) map[conversion]float64 {
	text, err := os.ReadFile(conversions)
	require.NoError(t, err)
	kept := map[conversion]float64{}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		f := strings.Split(strings.TrimSpace(line), "\t")
		require.Len(t, f, 5, line)
		from, ok := Lookup(f[2])
		require.True(t, ok, line)
		d := from.Dimension
		if f[0] == TemperatureDifference.String() {
			d = TemperatureDifference
		}
		kept[conversion{d, f[1], f[2], f[3]}], err = strconv.ParseFloat(f[4], 64)
		require.NoError(t, err, line)
	}
	return kept
}

func TestKeptTableIsWhatUnitsGives(t *testing.T) {
	if _, err := exec.LookPath("units"); err != nil {
		t.Skip("GNU units is not installed: the kept table was not asked for again")
	}
	list := everyConversion()
	rows := askUnits(t, list)
	if os.Getenv("MALTWRIGHT_UPDATE") != "" && !strings.HasSuffix(kept(t), rows) {
		require.NoError(t, os.WriteFile(conversions, []byte(tableHead(t)+rows), 0o644))
	}
	// Only the rows: another version of the program may well give the same figures.
	assert.True(t, strings.HasSuffix(kept(t), rows), "%s is not what units gives; make it again with go generate", conversions)
}

func kept(t *testing.T) string {
	text, err := os.ReadFile(conversions)
	if !os.IsNotExist(err) {
		require.NoError(t, err)
	}
	return string(text)
}

func tableHead(t *testing.T) string {
	out, err := exec.Command("units", "--version").Output()
	require.NoError(t, err)
	version, _, _ := strings.Cut(string(out), "\n")
	return "# " + version + ", each unit in the SI unit of its dimension and each pair of a\n# dimension; made by go generate.\n" +
		"# dimension, value, from, to, result\n"
}

// askUnits hands all questions to one run of the program.
func askUnits(t *testing.T, list []conversion) string {
	var in bytes.Buffer
	for _, c := range list {
		from, to := c.question()
		fmt.Fprintf(&in, "%s\n%s\n", from, to)
	}
	ask := exec.Command("units", "--terse", "--quiet", "--output-format", "%.16g")
	ask.Stdin = &in
	out, err := ask.Output()
	require.NoError(t, err)
	answers := strings.Fields(string(out))
	require.Len(t, answers, len(list), "units did not answer every question with one number")
	var rows strings.Builder
	for i, c := range list {
		fmt.Fprintf(&rows, "%s\t%s\t%s\t%s\t%s\n", c.dimension, c.value, c.from, c.to, answers[i])
	}
	return rows.String()
}
