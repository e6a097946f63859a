package read

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
	"maltwright/lang/vocabulary"
)

func loadFile(t testing.TB, path string) *model.House {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	root, err := OpenRoot(filepath.Dir(path))
	require.NoError(t, err)
	defer root.Close()
	house, found := Load(filepath.Base(path), text, ".", root)
	assert.Empty(t, golden.Findings(found))
	return house
}

func TestExamplesAndSchedulesMakeSense(t *testing.T) {
	for _, pattern := range []string{"../../examples/*.malt", "../../check/testdata/schedules/*.malt"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, paths)
		for _, path := range paths {
			t.Run(filepath.Base(path), func(t *testing.T) { loadFile(t, path) })
		}
	}
}

const hour, day = 3600.0, 86400.0

func TestPaleProcessIsReadAsWritten(t *testing.T) {
	h := loadFile(t, "testdata/loft/pale.malt")
	require.Len(t, h.Processes, 1)
	p := h.Processes[0]
	assert.Equal(t, "Loft pale", p.Name)
	assert.Equal(t, `"Loft pale"`, p.Place.Text())
	assert.Equal(t, "pale", p.Make.Text)
	assert.Equal(t, "pale", p.Make.Place.Text())
	assert.Equal(t, 6.0, p.Charge.SI)
	assert.Equal(t, "6 kg", p.Charge.Place.Text())
	assert.Equal(t, "Far field 2026", p.Grain.Name)
	assert.Equal(t, "loft.malt", p.Grain.Place.File.Name())
	assert.Equal(t, "Loft, spring", p.Site.Name)
	assert.False(t, p.Broken)

	var kinds []model.StageKind
	for _, st := range p.Stages {
		kinds = append(kinds, st.Kind())
	}
	assert.Equal(t, []model.StageKind{model.SteepStage, model.GerminateStage, model.WitherStage, model.KilnStage, model.DeculmStage, model.StoreStage}, kinds)
	require.Len(t, p.Expect, 2)
	assert.Equal(t, "total time", p.Expect[0].Tests[0].Measure)
	assert.Equal(t, 14*day, p.Expect[0].Tests[0].Bound.Range.High.SI)
	assert.Equal(t, "3.5 to 4.8 %", p.Expect[1].Tests[0].Bound.String())
}

func TestPaleStagesAreReadAsWritten(t *testing.T) {
	p := loadFile(t, "testdata/loft/pale.malt").Processes[0]
	steep := model.First[*model.Steep](p)
	assert.Equal(t, "blue tub", steep.Vessel.Name)
	assert.InDelta(t, 0.025, steep.Vessel.Holds.SI, 1e-12)
	assert.Equal(t, "43 to 45 %", steep.Target.String())
	assert.Equal(t, "43 to 45 %", steep.Target.Place.Text())
	require.Len(t, steep.Steps, 1)
	repeat := steep.Steps[0].(*model.Repeat)
	assert.Equal(t, "at most 3", repeat.Times.String()[:9])
	assert.Equal(t, "moisture at least 43 %", repeat.Until.Place.Text())
	require.Len(t, repeat.Steps, 2)
	soak, rest := repeat.Steps[0], repeat.Steps[1]
	assert.Equal(t, 7*hour, soak.Ends().For.SI)
	assert.InDelta(t, 286.15, soak.Warmth().At.Low.SI, 1e-9)
	assert.Equal(t, "water", soak.Warmth().At.Where)
	assert.Equal(t, "air", rest.Warmth().At.Where)
	assert.Equal(t, "soak 7 h in water at 13 °C", soak.Place().Text())

	germ := model.First[*model.Germination](p)
	assert.Equal(t, "larch floor", germ.Floor.Name)
	assert.Equal(t, 8*hour, germ.Turn.SI)
	assert.Equal(t, "bed", germ.Steps[0].Warmth().At.Where)
	assert.Equal(t, 4*day, germ.Allow.Earliest.SI)
	assert.Equal(t, 7*day, germ.Allow.Latest.SI)
	require.Len(t, germ.Until.Tests, 2)
	assert.Equal(t, 0.75, germ.Until.Tests[0].Bound.Range.Low.SI)
	assert.Equal(t, quantity.AtLeast, germ.Until.Tests[0].Op)
	assert.Equal(t, "chalky", germ.Until.Tests[1].Word)
	assert.Equal(t, "rub is chalky", germ.Until.Tests[1].Place.Text())
}

func TestPaleKilnIsReadAsWritten(t *testing.T) {
	p := loadFile(t, "testdata/loft/pale.malt").Processes[0]
	kiln := model.First[*model.Kilning](p)
	assert.InDelta(t, 60/hour, kiln.Kiln.Airflow.SI, 1e-12)
	assert.Equal(t, "electric", kiln.Kiln.Fired.Text)
	require.Len(t, kiln.Steps, 6)
	dry, rise, gate, cure, cool := kiln.Steps[0], kiln.Steps[1], kiln.Steps[2], kiln.Steps[3], kiln.Steps[5]
	assert.Equal(t, "air-on 50 °C", dry.Warmth().At.Place.Text())
	assert.Equal(t, "air-on", dry.Warmth().At.Where)
	assert.Equal(t, 0.25, dry.Ends().Until.Tests[0].Bound.Range.High.SI)
	assert.InDelta(t, 328.15, rise.Warmth().From.Low.SI, 1e-9)
	assert.InDelta(t, 338.15, rise.Warmth().From.High.SI, 1e-9)
	assert.Equal(t, 4*hour, rise.Warmth().Over.SI)
	assert.Equal(t, model.GateStep, gate.Kind())
	assert.Equal(t, "moisture at most 10 %", model.Asked(gate).Place.Text())
	assert.Equal(t, 4*hour, cure.Ends().For.SI)
	assert.Equal(t, "malt", cool.Warmth().At.Where)
	assert.InDelta(t, 303.15, cool.Warmth().At.High.SI, 1e-9)
	assert.Equal(t, 12*hour, model.First[*model.Deculming](p).Within.SI)
	assert.Equal(t, 21*day, model.First[*model.Storing](p).Rest.Range.Low.SI)
	assert.Equal(t, quantity.AtLeast, model.First[*model.Storing](p).Rest.Op)
	assert.Equal(t, "lidded drum", model.First[*model.Storing](p).In.Text)
}

func TestHouseIsReadAsWritten(t *testing.T) {
	h := loadFile(t, "testdata/loft/loft.malt")
	g := h.Grains[0]
	assert.InDelta(t, 0.124, g.Moisture.SI, 1e-12)
	assert.Equal(t, "no", g.Treated.Text)
	require.Len(t, g.Germination, 2)
	assert.InDelta(t, 8e-6, g.Germination[1].Water.SI, 1e-15)
	assert.Equal(t, 200.0, g.Germination[1].Kernels.SI)
	assert.Equal(t, "2026-02-02", g.Germination[1].On.Text)
	awake := h.Sites[0].Awake[0]
	assert.Equal(t, 6*3600+30*60, awake.From)
	assert.True(t, awake.Clock.Awake(12*3600))
	assert.False(t, awake.Clock.Awake(23*3600))
	night := model.Clock{From: 22 * 3600, To: 6 * 3600}
	assert.True(t, night.Awake(23*3600))
	assert.True(t, night.Awake(3600))
	assert.False(t, night.Awake(12*3600))
}

// choicesOf are the words that the first value of a statement can be.
func choicesOf(t *testing.T, in vocabulary.Block, verb string) []string {
	t.Helper()
	row, ok := vocabulary.Lookup(in, verb)
	require.True(t, ok)
	require.NotEmpty(t, row.Slots[0].Words)
	return row.Slots[0].Words
}

func TestEverySpeciesAndMaltIsAccepted(t *testing.T) {
	for _, species := range choicesOf(t, vocabulary.Grain, "species") {
		h, found := load("grain \"lot\" { species " + species + " }")
		assert.Empty(t, found, species)
		assert.Equal(t, species, h.Grains[0].Species.Text)
	}
	for _, malt := range choicesOf(t, vocabulary.Process, "make") {
		for _, text := range []string{"make " + malt + " malt", "make " + malt} {
			h, found := loadExample(t, text)
			if malt == "green" {
				found = slices.DeleteFunc(found, func(f finding.Finding) bool { return f.Rule == "green-malt-goes-on" }) // the example has a kiln
			}
			assert.Empty(t, golden.Findings(found), text)
			want := malt
			if malt == "crystal" {
				want = "caramel"
			}
			assert.Equal(t, want, h.Processes[0].Make.Text)
		}
	}
}

// Every row's example is read in each block that its word may stand in.
func TestExampleOfEveryStatementMakesSense(t *testing.T) {
	allowed := map[string]bool{limitsChanged.Name: true, unusedDefinition.Name: true}
	for _, row := range vocabulary.Rows() {
		for _, block := range row.In {
			t.Run(string(block)+"/"+row.Word, func(t *testing.T) {
				_, found := loadIn(t, block, row)
				for _, f := range found {
					assert.True(t, allowed[f.Rule], golden.Findings(found))
				}
			})
		}
	}
}

// A bed may be led down as well as up; what it is led by stands where it was written.
func TestAHoldLeadsTheBedFromOneTemperatureToAnother(t *testing.T) {
	load := func(hold string) (*model.Hold, []finding.Finding) {
		text := strings.NewReplacer("HOLD", hold, "DRY", "dry at air-on 122 °F for 12 h", "CURE", "cure at air-on 180 °F for 4 h", "STORE", "store for at least 3 weeks").Replace(ledProcess)
		h, found := Load("x.malt", []byte(text), ".", files{})
		return model.Only[*model.Hold](model.First[*model.Germination](h.Processes[0]).Steps)[0], found
	}
	s, found := load("hold bed from 62 to 55 °F over 3 days")
	require.Empty(t, golden.Findings(found))
	assert.Nil(t, s.At)
	assert.Equal(t, "bed", s.From.Where)
	assert.Equal(t, "62 to 55 °F", s.From.Range.Range.String())
	assert.Equal(t, "3 days", s.Over.String())
	for hold, rule := range map[string]string{
		"hold bed from 62 to 55 °F":                               "step-needs-end",
		"hold bed for 2 days":                                     "step-needs-temperature",
		"hold bed at 60 °F over 2 days for 2 days":                "over-without-rise",
		"hold bed at 60 °F from 62 to 55 °F over 3 days":          "two-temperatures",
		"hold bed at 60 °F":                                       "step-needs-end",
		"hold bed from 62 to 55 °F over 3 days allow 1 to 2 days": "guard-of-nothing",
	} {
		_, found := load(hold)
		assert.Contains(t, golden.Findings(found), rule, hold)
	}
}
