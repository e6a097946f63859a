package vocabulary

import (
	"maps"
	"slices"

	q "maltwright/lang/quantity"
)

// grains are the species the language knows.
var grains = []string{GrainBarley, "wheat", "rye", "oats", "sorghum", "millet", "maize", "buckwheat", "spelt", "triticale"}

// IsGrain tells whether a word is that of a species.
func IsGrain(word string) bool { return slices.Contains(grains, word) }

// malts are the malts that can be made. Crystal is another word for caramel.
var malts = []string{"pilsner", "pale", "vienna", "munich", "amber", "brown", MaltCaramel, MaltCrystal, MaltChit, "distilling", MaltSmoked, "acid", MaltChocolate, MaltBlack, MaltRoasted, MaltGreen}

// Measure is something a condition can name.
type Measure struct {
	Word    string // one word, or two as in "final moisture"
	Dims    []q.Dimension
	Words   []string // choices, where it is no quantity
	Bare    bool     // it stands alone, with no bound
	Promise bool     // it is of the whole process: only expect can name it
	In      []Block  // the stages in which it can be looked at; empty for a promise
	Rises   []Block  // those in which it only goes up
	Falls   []Block  // those in which it only goes down
	Doc     string
}

var allMeasures = []Measure{
	{Word: MeasureMoisture, Dims: moisture, In: blocks(Steep, Repeat, Germinate, Wither, Kiln), Rises: blocks(Steep), Falls: blocks(Wither, Kiln),
		Doc: "water in the grain, as a share of the whole weight unless it says dry basis"},
	{Word: MeasureWeight, Dims: []q.Dimension{q.Mass}, In: blocks(Steep, Repeat, Germinate, Wither, Kiln), Rises: blocks(Steep), Falls: blocks(Wither, Kiln),
		Doc: "what the drained batch weighs"},
	{Word: MeasureChit, Dims: []q.Dimension{q.Share}, In: blocks(Steep, Repeat, Germinate), Rises: blocks(Steep, Germinate),
		Doc: "share of the kernels that show the white root tip"},
	{Word: MeasureAcrospire, Dims: []q.Dimension{q.Number, q.Share}, In: blocks(Germinate, Wither), Rises: blocks(Germinate, Wither),
		Doc: "length of the shoot under the husk, as a part of the kernel: 3/4"},
	{Word: MeasureRub, Words: []string{RubGummy, RubGritty, RubChalky}, In: blocks(Germinate, Wither),
		Doc: "what a kernel does when it is rubbed out between thumb and finger"},
	{Word: MeasureAirOff, Dims: []q.Dimension{q.Temperature}, In: blocks(Kiln), Doc: "temperature of the air that leaves the bed"},
	{Word: MeasureMalt, Dims: []q.Dimension{q.Temperature}, In: blocks(Kiln), Doc: "temperature of the malt itself, the mean of the bed; in a cooling with air its warmest layer"},
	{Word: MeasureBed, Dims: []q.Dimension{q.Temperature}, In: blocks(Germinate, Wither), Doc: "temperature in the middle of the piece"},
	{Word: MeasureTime, Dims: []q.Dimension{q.Time}, In: blocks(Steep, Repeat, Germinate, Wither, Kiln), Rises: blocks(Steep, Germinate, Wither, Kiln),
		Doc: "time since the step began"},
	{Word: MeasureBreak, Bare: true, In: blocks(Kiln), Doc: "the air off the bed begins to warm: the drying front is through"},

	{Word: MeasureTotalTime, Dims: []q.Dimension{q.Time}, Promise: true, Doc: "from the first soak to the end of deculming"},
	{Word: MeasureSteepOutTime, Dims: []q.Dimension{q.Time}, Promise: true, Doc: "from the first soak to steep-out"},
	{Word: MeasureSteepOutMoisture, Dims: moisture, Promise: true, Doc: "moisture at steep-out"},
	{Word: MeasureFinalMoisture, Dims: moisture, Promise: true, Doc: "moisture of the finished malt"},
	{Word: MeasureYield, Dims: []q.Dimension{q.Share}, Promise: true, Doc: "weight of malt for the weight of raw grain, both as they are"},
	{Word: MeasureMaltWeight, Dims: []q.Dimension{q.Mass}, Promise: true, Doc: "weight of the finished malt without its rootlets"},
}

// GoesUp tells which way the measure goes in a stage; ok is false where it may go either.
func (m Measure) GoesUp(in Block) (up, ok bool) {
	up = slices.Contains(m.Rises, in)
	return up, up || slices.Contains(m.Falls, in)
}

// OfMoisture tells whether the measure is a moisture.
func (m Measure) OfMoisture() bool { return slices.Equal(m.Dims, moisture) }

// Measures lists what conditions can name.
func Measures() []Measure { return append([]Measure(nil), allMeasures...) }

// Limit is a threshold of the house that a limits block can move.
type Limit struct {
	Word string
	Dim  q.Dimension
	Op   q.Op
	Doc  string

	Sense *Sense // which values make sense: no limit moves a judgement beyond it
}

var thresholds = []Limit{
	{LimitMoisture, q.Share, q.AtMost, "a moisture above this counts as a slip of the pen; 60 % unless the house says otherwise",
		bandsOf("the limit moisture", "45 to 70 %", "50 to 65 %", practice)},
	{LimitBed, q.Temperature, q.AtMost, "the warmest the piece may get between turns; by grain and malt unless the house says otherwise, 20 °C for pale malt of barley",
		bandsOf("the limit bed-temperature", "5 to 45 °C", "10 to 38 °C", practice)},
	{LimitAirless, q.Time, q.AtMost, "the longest the grain may stand in water that has lost its oxygen; 6.5 h unless the house says otherwise, a day for sorghum, millet and maize",
		bandsOf("the limit airless-time", "10 min to 4 days", "1 to 36 h", practice)},
	{LimitSteepWater, q.Temperature, q.AtMost, "the warmest steep water; by the grain unless the house says otherwise, 16 °C for barley",
		bandsOf("the limit steep-water", "2 to 45 °C", "8 to 36 °C", practice)},
	{LimitSoak, q.Time, q.AtMost, "the longest soak in still water; by the grain unless the house says otherwise, 10 h for barley",
		bandsOf("the limit soak-time", "30 min to 4 days", "2 to 48 h", practice)},
	{LimitTurnGap, q.Time, q.AtMost, "the longest time from one turn to the next; 12 h unless the house says otherwise, 8 h for a warm bed, and twice as long where the piece is no deeper than 3 cm",
		bandsOf("the limit turn-gap", "1 h to 4 days", "2 to 36 h", practice)},
	{LimitEndMoisture, q.Share, q.AtMost, "the moistest that finished malt may be; by the malt type unless the house says otherwise, 5 % for pale malt",
		bandsOf("the limit end-moisture", "1 to 14 %", "2 to 10 %", practice)},
	{LimitWitheringTime, q.Time, q.AtMost, "the longest that malt may take to fall to 20 % moisture; 50 h unless the house says otherwise",
		bandsOf("the limit withering-time", "2 h to 14 days", "12 to 120 h", practice)},
	{LimitRiseRate, q.TemperatureRate, q.AtMost, "the steepest rise of the kiln while the malt is above 10 % moisture; 10 °C/h unless the house says otherwise",
		bandsOf("the limit rise-rate", "0.5 to 120 °C/h", "2 to 45 °C/h", practice)},
	{LimitDeculmWait, q.Time, q.AtMost, "the longest wait from kiln to deculming; 24 h unless the house says otherwise",
		bandsOf("the limit deculm-wait", "10 min to 30 days", "1 h to 7 days", practice)},
	{LimitStoreRest, q.Time, q.AtLeast, "the shortest rest of the malt before it is used; 2 weeks unless the house says otherwise",
		bandsOf("the limit store-rest", "1 h to 104 weeks", "2 days to 26 weeks", practice)},
}

// LimitNames lists the limits.
func LimitNames() []Limit { return append([]Limit(nil), thresholds...) }

// older are words of the language that were replaced, and the word of today. They are read
// for ever, and laid out as it.
var older = map[string]string{"corn-weight": "kernel-weight"}

// Older lists the older words, by the alphabet.
func Older() []string { return slices.Sorted(maps.Keys(older)) }

// Today gives the word of today for an older one, and any other as it is.
func Today(word string) string {
	if now, ok := older[word]; ok {
		return now
	}
	return word
}
