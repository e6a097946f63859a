package check

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
)

// A weight is held against the scale that its line names, or that it must have been read
// on: what is beyond it, and what lies between two of its marks.
func TestWeightsAreHeldAgainstTheirScale(t *testing.T) {
	text, err := os.ReadFile("../examples/batches/26-03.malt")
	require.NoError(t, err)
	record := strings.Replace(string(text), "batch ", "scale \"parcel\" { division 20 g; holds 9 kg }\n\nbatch ", 1)
	root, err := read.OpenRoot("../examples/batches")
	require.NoError(t, err)
	defer root.Close()
	for line, want := range map[string]string{
		`weighed 7.41 kg at`:                           "",
		`weighed 7.41 kg on "kitchen" at`:              "",
		`weighed 7.413 kg on "parcel" at`:              "7.413 kg is finer than scale \"parcel\" shows: its division is 20 g",
		`weighed 16.34 lb on "parcel" at`:              "",
		`weighed 7.42 kg on "parcel" at`:               "",
		`weighed 8.40 kg in "blue tub" on "parcel" at`: "",
		`weighed 8.40 kg in "blue tub" at`:             "",
		`weighed 7.42 kg in "blue tub" on "parcel" at`: `without the weight of "blue tub", 990 g`,
		`weighed 8.40 kg at`:                           `with the weight of "blue tub", 990 g, included`,
		`weighed 9.42 kg in "blue tub" on "parcel" at`: `9.42 kg in "blue tub" is more than scale "parcel" can weigh, 9 kg`,
	} {
		said := ""
		for _, f := range File("x.malt", []byte(strings.Replace(record, "weighed 7.41 kg at", line, 1)), ".", root, Options{}).Findings {
			if f.Place.File.Name() == "x.malt" {
				said += f.Message + "; " + f.Hint + "\n"
			}
		}
		if want == "" {
			assert.Empty(t, said, line)
		} else {
			assert.Contains(t, said, want, line)
		}
	}
}
