package forecast

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// takenRow is a line of the document's table of what is taken for granted.
var takenRow = regexp.MustCompile(`(?m)^\| ([^|]+) \| [^|]+ \| (yes|no)[^|]* \|$`)

// listedAs are the assumptions that a forecast lists of what a line is about; of a line
// that is not here it lists nothing.
var listedAs = map[string]Assumption{
	"moisture of the raw grain": GrainMoisture{}, "germination; weight of a thousand kernels": Germination{},
	"bought green malt: its moisture; how far it has grown": GrownBefore{},
	"air, humidity, water of the site":                      RoomAir{}, "room of a growing piece that does not hold its room": RoomAir{},
	"malt that was kilned before: its moisture": GrainMoisture{}, "air through a drum": DrumAir{}, "shell of a drum that says no `walls`": DrumShell{},
	"altitude": SeaLevel{}, "water drawn": SoakWater{},
	"humidity over the growing piece": MoistAir{}, "`hold` that does not say of what": BedHeld{}, "floor on which the grain would lie thinner than a kernel, with no air blown through": FloorArea{},
	"drained grain in the rests of a vessel that says no area": DrainedDepth{},
	"withering air": WitherAir{}, "airflow of the kiln": KilnAir{}, "heater of the kiln": KilnHeater{}, "efficiency of a heater that burns fuel": FuelHeat{}, "air of a floor with `air from`": AirOfFloor{},
	"what the fan of a kiln draws, where neither that nor a curve is said":                                                                                                KilnFan{},
	"flaps of a kiln that says its `heater`, what it `reaches` and no `airflow`, where fan or draught drive more air through the malt than is warmed to what a step asks": KilnFlaps{},
	"air led back, in a kiln whose `heater` does not warm its `airflow` to what it `reaches` (by a tenth and more)":                                                       KilnFresh{},
	"what draws in a kiln of a natural draught that says neither its air nor its chimney":                                                                                 DraughtHeight{},
	"air that fan, chimney or draught drive through warm green malt, in the first step that dries it, and what ducts, floor and flaps resist":                             DrivenAir{},
	"a gate without `allow`": GateWait{}, "deculming": DeculmTime{},
	"breath of malt that lies wet on the kiln without air":                                       KilnBreath{},
	"walls of the kiln, where its heater comes to four fifths of its power, and of a still oven": NoWalls{},
	"what the fan of a box draws, where that is not said":                                        FanPressure{}, "where the fan of a box stands that says what it draws": FanWarms{},
	"walls of which it is said what they are: their thickness; their area": KilnWalls{},
	"door of an oven that stands ajar":                                     OvenDoor{}, "an oven that cools": OpenOven{},
	"draught of a kiln that says it is natural, and only how much air it has, while the malt cools": CoolDraught{},
	"error of a scale, of the readings of a record":                                                 ScaleError{}, // by follow, which has its own test
}

// The document says of each thing that is taken for granted whether the forecast lists it.
func TestTheDocumentSaysWhatIsListed(t *testing.T) {
	const bare = "grain \"lot\" { species barley }\nvessel \"tub\" { holds 40 l }\nfloor \"tray\" { area 0.4 m2 }\nfloor \"hall\" { area 8 m2 }\nkiln \"kiln\" { area 0.5 m2; fired electric }\n"
	listed := map[string]bool{fmt.Sprintf("%T", ScaleError{}): true}
	for _, body := range []string{
		"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n steep in \"tub\" { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C; soak 7 h in water at 13 °C }\n" +
			" germinate on \"hall\" { hold at 14 to 16 °C; for 4 days }\n wither on \"tray\" { air at 20 °C; for 8 h }\n" +
			" kiln in \"kiln\" { dry at air-on 55 °C for 10 h; gate moisture at most 3 % }\n deculm within 12 h\n}\n",
		"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"kiln\" { dry at air-on 55 °C for 10 h }\n}\n",
		"kiln \"drum\" { holds 20 l; tumbles yes; fired electric }\nprocess \"p\" {\n make amber malt\n from 5 kg of \"lot\"\n kiln in \"drum\" { roast at malt 140 °C for 1 h }\n}\n",
		"kiln \"weak\" { area 0.5 m2; airflow 90 m3/h; heater 600 W; reaches 30 to 75 °C; fired electric }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"weak\" { dry at air-on 55 °C for 10 h }\n}\n",
		"floor \"box\" { area 0.1 m2; airflow 3 m3/h }\nfloor \"said\" { area 0.1 m2; airflow 3 m3/h; fan 5 W }\nprocess \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n wither on \"box\" { air at air-on 20 °C; for 4 h }\n" +
			" wither on \"said\" { air at air-on 20 °C; for 4 h }\n kiln in \"kiln\" { dry at air-on 55 °C for 10 h }\n}\n",
		"kiln \"shut\" { area 0.05 m2; airflow 0.2 m3/h; fired electric }\nprocess \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"shut\" { dry at air-on 30 °C for 48 h }\n}\n",
		"kiln \"oven\" { area 0.5 m2; draught still; door ajar 3 cm; walls metal; fired electric }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"oven\" { dry at oven 55 °C for 10 h; cool to malt 30 °C }\n}\n",
		"kiln \"barn\" { area 0.5 m2; draught natural; airflow 60 m3/h; fired wood by indirect }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"barn\" { dry at air-on 55 °C for 10 h; cool to malt 30 °C }\n}\n",
		"kiln \"draws\" { area 2 m2; draught natural; fired wood by indirect }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"draws\" { dry at air-on 55 °C for 10 h }\n}\n",
		"kiln \"tall\" { area 2 m2; draught natural; chimney 6 m; heater 1 kW; reaches 20 to 90 °C; fired wood by indirect }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"tall\" { dry at air-on 55 °C for 10 h }\n}\n",
		"kiln \"top\" { area 0.5 m2; air from \"kiln\" }\n" +
			"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n kiln in \"top\" { dry for 10 h }\n kiln in \"kiln\" { dry at air-on 55 °C for 10 h }\n}\n",
	} {
		text := bare + body
		if !strings.Contains(body, "steep") {
			text = strings.Replace(text, "species barley", "species barley; already green malt", 1)
		}
		h, found := read.Load("test.malt", []byte(text), ".", nowhere{})
		for _, f := range found {
			require.NotEqual(t, finding.Fault, f.Severity, "what is refused is not taken for granted: %s", f.Message)
		}
		f, err := Run(h.Processes[0], Options{})
		require.NoError(t, err)
		for _, a := range f.Assumed {
			listed[fmt.Sprintf("%T", a)] = true
		}
	}
	text, err := os.ReadFile("../../docs/model.md")
	require.NoError(t, err)
	_, table, found := strings.Cut(string(text), "| where nothing is said | taken | listed |\n")
	require.True(t, found)
	table, _, _ = strings.Cut(table, "\n\n")
	rows := takenRow.FindAllStringSubmatch(table, -1)
	require.Len(t, rows, strings.Count(table, "\n"), "every line is read but the one of dashes")
	for _, row := range rows {
		a, ok := listedAs[row[1]]
		assert.Equal(t, row[2] == "yes", ok && listed[fmt.Sprintf("%T", a)], "%s: listed?", row[1])
		delete(listedAs, row[1])
	}
	assert.Empty(t, listedAs, "the document has no such line")
}
