package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

const ledProcess = `process "p" {
  make pale malt
  from 13½ lb of "g"
  at "s"
  steep in "v" { soak 7 h in water at 55 deg F }
  germinate on "f" {
    HOLD
    hold bed at 60 °F
    for 5 days
  }
  kiln in "k" {
    DRY
    CURE
  }
  STORE
}
grain "g" { species barley }
site "s" { air 46 to 59 °F; water 50 degrees; awake 6 am to 10 pm }
vessel "v" { holds 7 gal-us }
floor "f" { area 8 sq ft }
kiln "k" { area 5 sq ft; reaches 86 to 203 °F }
`

// A time right behind the verb is the for of the step, and stands where it was written.
func TestATimeRightBehindTheVerbIsItsFor(t *testing.T) {
	load := func(hold, dry, cure, store string) string {
		text := strings.NewReplacer("HOLD", hold, "DRY", dry, "CURE", cure, "STORE", store).Replace(ledProcess)
		house, found := Load("x.malt", []byte(text), ".", files{})
		require.Empty(t, golden.Findings(found))
		p := house.Processes[0]
		var out []string
		for _, st := range p.Stages[1:] { // behind the steep
			for _, s := range model.StepsOf(st) {
				end := &model.Ending{}
				if h := model.HeatedOf(s); h != nil {
					end = &h.Ending
				} else if h, ok := s.(*model.Hold); ok {
					end = &h.Ending
				}
				if end.For != nil {
					out = append(out, end.For.String()+" at "+end.For.Place.Text())
				}
			}
		}
		return strings.Join(append(out, model.First[*model.Storing](p).Rest.String()), "; ")
	}
	assert.Equal(t, "2 days at 2 days; 12 h at 12 h; 4 1/2 h at 4½ h; at least 3 weeks",
		load("hold 2 days bed at 57 to 62 degrees", "dry 12 h at air-on 122 °F", "cure 4½ h at malt 180 °F", `store at least 3 weeks in "drum"`))
	assert.Equal(t, "2 days at 2 days; 12 h at 12 h; 4 1/2 h at 4 1/2 h; at least 3 weeks",
		load("hold bed at 57 to 62 °F for 2 days", "dry at air-on 122 °F for 12 h", "cure at malt 180 °F for 4 1/2 h", `store in "drum" for at least 3 weeks`))
}
