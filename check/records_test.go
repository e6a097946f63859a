package check

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/records"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source/golden"
)

// book is the folder of the records that slips are made in: those of the examples as they
// once were. They are kept apart because each slip names its words, and the examples change
// with every figure of the model.
const book = "testdata/book/"

// bookSlip is something that goes wrong in a book: the words it replaces, and the rule that
// tells it at the words that are wrong.
type bookSlip struct {
	name     string
	file     string
	replaced []string
	rule     string
	at       string // the place of the finding, as written
}

var bookSlips = []bookSlip{
	{"a step before the one it follows", "26-03", []string{"at 14:00 after soak 1", "at 14:00 after soak 2", "06:00 after soak 2", "06:00 after soak 1"}, "record-out-of-order", "soak 1"},
	{"a weighing twice", "26-03", []string{"  weighed 7.41 kg at 14:00 after soak 1\n", "  weighed 7.41 kg at 14:00 after soak 1\n  weighed 7.41 kg at 14:00 after soak 1\n"}, "written-twice", "weighed 7.41 kg at 14:00 after soak 1"},
	{"two weights of one step and minute", "26-03", []string{"  weighed 7.41 kg at 14:00 after soak 1\n", "  weighed 7.41 kg at 14:00 after soak 1\n  weighed 7.12 kg at 14:00 after soak 1\n"}, "written-twice", "weighed 7.12 kg at 14:00 after soak 1"},
	{"a weighing of the kiln twice", "26-03", []string{"after dry 2\n", "after dry 2\n  weighed 5.43 kg at 19:20 after dry 2\n"}, "written-twice", "weighed 5.43 kg at 19:20 after dry 2"},
	{"a turn twice", "26-03", []string{"  counted chit 81", "  turned  at 06:30\n  counted chit 81"}, "written-twice", "turned  at 06:30"},
	{"turned in the steep", "26-03", []string{"  read    water 13.5 °C at 23:01", "  turned  at 20:00\n  read    water 13.5 °C at 23:01"}, "record-out-of-order", "turned  at 20:00"},
	{"air off the kiln while it grows", "26-03", []string{"  counted acrospire 4 13 51", "  read    air-off 31.7 °C at 07:00\n  counted acrospire 4 13 51"}, "record-out-of-order", "read    air-off 31.7 °C at 07:00"},
	{"changed to ten times as long", "26-05", []string{"soak 3 to 6 h", "soak 3 to 60 h"}, "change-doubtful", "60 h"},
	{"changed to a temperature in °F", "26-05", []string{"soak 3 to 6 h", "soak 3 to water 56 °C"}, "change-doubtful", "water 56 °C"},
	{"a weight below its dry matter", "26-03", []string{"5.43 kg at 18:50", "4.43 kg at 18:50"}, "reading-impossible", "4.43 kg"},
	{"malt below its dry matter", "26-03", []string{"4.90 kg clean", "3.90 kg clean"}, "reading-impossible", "3.90 kg"},
	{"a soaking sample", "26-03", []string{"dried to 17.54", "dried to 14.57"}, "sample-doubtful", "14.57 g"},
	{"a bone dry sample", "26-03", []string{"dried to 17.54", "dried to 19.54"}, "sample-doubtful", "19.54 g"},
	{"a sample that is not the lot's", "26-03", []string{"dried to 17.54", "dried to 16.54"}, "sample-doubtful", "16.54 g"},
	{"malt never weighed", "26-03", []string{"  weighed 4.90 kg clean malt at 2026-03-15 02:07\n", "  weighed 5.11 kg at 2026-03-15 00:40 after cool\n"}, "malt-not-weighed", "weighed 5.11 kg at 2026-03-15 00:40 after cool"},
	{"digits swapped in the steep", "26-03", []string{"8.66 kg", "6.86 kg"}, "reading-doubtful", "6.86 kg"},
	{"digits swapped on the floor", "26-03", []string{"8.95 kg", "5.98 kg"}, "reading-doubtful", "5.98 kg"},
	{"digits swapped on the kiln", "26-03", []string{"5.52 kg", "5.25 kg"}, "reading-doubtful", "5.25 kg"},
	{"digits swapped of a thermometer", "26-03", []string{"bed 15.3 °C", "bed 35.1 °C"}, "reading-doubtful", "bed 35.1 °C"},
	{"digits swapped of the water", "26-03", []string{"water 13.5 °C", "water 31.5 °C"}, "reading-doubtful", "water 31.5 °C"},
	{"digits swapped of the air on", "26-03", []string{"air-on 82.8 °C", "air-on 28.8 °C"}, "reading-doubtful", "air-on 28.8 °C"},
	{"the point misplaced", "26-03", []string{"air-off 36.9 °C", "air-off 3.69 °C"}, "reading-doubtful", "air-off 3.69 °C"},
	{"pounds for kilograms", "26-03", []string{"5.43 kg at 18:50", "11.97 kg at 18:50"}, "reading-doubtful", "11.97 kg"},
	{"kilograms for pounds", "26-03", []string{"9.29 kg", "20.48 lb", "8.66 kg", "8.66 lb"}, "reading-impossible", "8.66 lb"},
	{"°F for °C", "26-03", []string{"air-off 36.9 °C", "air-off 98.4 °C"}, "reading-doubtful", "air-off 98.4 °C"},
	{"a day off in the steep", "26-03", []string{"at 2026-03-07 06:00", "at 2026-03-08 06:00", "2026-03-08 06:20", "2026-03-09 06:20", "2026-03-09 06:20", "2026-03-10 06:20", "2026-03-10 06:20", "2026-03-11 06:20", "2026-03-11 06:20", "2026-03-12 06:20", "2026-03-12 06:20", "2026-03-13 06:20", "2026-03-13 06:20", "2026-03-14 06:20", "2026-03-14 09:20", "2026-03-15 09:20", "2026-03-15 02:07", "2026-03-16 02:07"}, "time-doubtful", "2026-03-08 06:00"},
	{"a day off on the floor", "26-03", []string{"2026-03-10 06:20", "2026-03-11 06:20", "2026-03-11 06:20", "2026-03-12 06:20", "2026-03-12 06:20", "2026-03-13 06:20", "2026-03-13 06:20", "2026-03-14 06:20", "2026-03-14 09:20", "2026-03-15 09:20", "2026-03-15 02:07", "2026-03-16 02:07"}, "piece-unturned", "turned  at 06:30"},
	{"two days unturned", "26-03", []string{"  turned  at 22:00\n  read    bed 16.1 °C at 2026-03-09 06:20\n  turned  at 06:30\n  read    bed 15.8 °C at 14:20\n  turned  at 14:30\n  read    bed 16.4 °C at 21:50\n  turned  at 22:00\n  read    bed 15.7 °C at 2026-03-10 06:20\n  turned  at 06:30\n", "  read    bed 15.7 °C at 2026-03-10 06:20\n"}, "piece-unturned", "turned  at 14:30"},
	{"changed to a time in min", "26-05", []string{"soak 3 to 6 h", "soak 3 to 6 min"}, "change-doubtful", "6 min"},
	{"malt that is heavier without its rootlets", "26-03", []string{"4.90 kg clean", "5.26 kg clean"}, "reading-doubtful", "5.26 kg"},
	{"a count that goes back", "26-03", []string{"acrospire 4 13 51 31 1 0", "acrospire 40 42 16 2 0 0"}, "reading-doubtful", "counted acrospire 40 42 16 2 0 0 at 08:00"},
	{"a chit that goes back", "26-03", []string{"  counted chit 81 of 100 at 07:00\n", "  counted chit 81 of 100 at 07:00\n  counted chit 31 of 100 at 12:00\n"}, "reading-doubtful", "31"},
	{"a count from the longest down", "26-03", []string{"acrospire 2 34 62 2 0 0", "acrospire 0 0 2 62 34 2"}, "reading-doubtful", "counted acrospire 0 0 2 62 34 2 at 08:00"},
	{"a later count from the longest down", "26-03", []string{"acrospire 2 1 11 38 39 9", "acrospire 9 39 38 11 1 2"}, "reading-doubtful", "counted acrospire 9 39 38 11 1 2 at 10:16"},
	{"a count from the longest down, of another batch", "26-04", []string{"acrospire 5 24 66 5 0 0", "acrospire 0 0 5 66 24 5"}, "reading-doubtful", "counted acrospire 0 0 5 66 24 5 at 08:00"},
	{"a cure that is read twenty degrees too cool", "26-03", []string{"air-on 82.8 °C", "air-on 62.8 °C"}, "reading-doubtful", "air-on 62.8 °C"},
	{"a cure that is read twelve degrees too warm", "26-04", []string{"air-on 82.4 °C", "air-on 94.4 °C"}, "reading-doubtful", "air-on 94.4 °C"},
	{"a rub that goes back", "26-03", []string{"felt    rub gritty at 10:26", "felt    rub gummy at 10:26"}, "reading-doubtful", "gummy"},
	{"dried to the weight of the charge's dry matter", "26-03", []string{"5.43 kg", "5.85 kg"}, "reading-doubtful", "5.85 kg"},
	{"pounds, with two digits swapped", "26-03", []string{"8.66 kg", "19.09 lb", "9.29 kg", "20.48 lb", "8.95 kg", "19.73 lb", "7.52 kg", "16.58 lb", "5.52 kg", "12.17 lb", "5.43 kg", "9.17 lb"}, "reading-impossible", "9.17 lb"},
	{"°F, with two digits swapped", "26-03", []string{"bed 15.3 °C", "bed 36.1 °F"}, "reading-doubtful", "bed 36.1 °F"},
	{"a tare left out", "26-03", []string{"  sample 20.00 g", "  tare 0.9 kg\n  sample 20.00 g", "7.41 kg", "8.31 kg", "8.66 kg", "9.56 kg", "9.29 kg", "10.19 kg", "8.95 kg", "9.85 kg", "7.52 kg", "8.42 kg", "5.43 kg", "6.33 kg", "5.13 kg", "6.03 kg", "4.90 kg", "5.80 kg"}, "reading-impossible", "5.52 kg"},
	{"a bag with two digits swapped", "26-03", []string{"  sample 20.00 g", "  bag 100 g at the start\n  sample 20.00 g", "weighed 8.95 kg", "weighed bag 114 g"}, "reading-doubtful", "114 g"},
	{"the air above the malt hotter than the air into it", "26-03", []string{"air-off 29.3 °C", "air-off 60.0 °C"}, "reading-doubtful", "air-off 60.0 °C"},
	{"the air above the malt as hot as in the cure", "26-03", []string{"air-off 29.3 °C", "air-off 79.0 °C"}, "reading-doubtful", "air-off 79.0 °C"},
	{"the air into the malt as hot as in the cure", "26-03", []string{"air-off 29.3 °C at 10:05", "air-on 79.0 °C at 10:05"}, "reading-doubtful", "air-on 79.0 °C"},
	{"turned on the kiln", "26-03", []string{"  read    air-off 36.9 °C", "  turned  at 11:30\n  read    air-off 36.9 °C"}, "record-out-of-order", "turned  at 11:30"},
	{"turned behind the cure", "26-03", []string{"  weighed 4.90 kg", "  turned  at 2026-03-15 01:30\n  weighed 4.90 kg"}, "record-out-of-order", "turned  at 2026-03-15 01:30"},
	{"felt on the kiln", "26-03", []string{"  read    air-off 36.9 °C", "  felt    rub chalky at 11:30\n  read    air-off 36.9 °C"}, "record-out-of-order", "felt    rub chalky at 11:30"},
	{"water read on the floor", "26-03", []string{"  turned  at 06:30\n  counted chit 81 of", "  read    water 13.6 °C at 06:25\n  turned  at 06:30\n  counted chit 81 of"}, "record-out-of-order", "read    water 13.6 °C at 06:25"},
	{"water for the bed", "26-03", []string{"read    bed 15.3 °C at 14:20", "read    water 15.3 °C at 14:20"}, "record-out-of-order", "read    water 15.3 °C at 14:20"},
	{"malt a little heavier without its rootlets", "26-03", []string{"4.90 kg clean", "5.19 kg clean"}, "reading-doubtful", "5.19 kg"},
	{"a step changed twice", "26-05", []string{"changed soak 3 to 6 h", "changed soak 3 to 7 h because \"the cat was ill\"\n  changed soak 3 to 6 h"}, "written-twice", `changed soak 3 to 6 h because "it had its weight an hour early"`},
	{"more malt than there was grain", "26-03", []string{"4.90 kg clean", "6.98 kg clean"}, "reading-impossible", "6.98 kg"},
	{"more dry matter than there was grain", "26-03", []string{"4.90 kg clean malt at 2026-03-15 02:07\n", "5.83 kg clean malt at 2026-03-15 02:07\n  tested moisture 4 % at 2026-04-01 10:00\n"}, "reading-impossible", "5.83 kg"},
	{"a tested moisture with the point elsewhere", "26-03", []string{"02:07\n", "02:07\n  tested moisture 37 % at 2026-04-01 10:00\n"}, "reading-doubtful", "37 %"},
	{"a charge that the tub does not hold", "26-03", []string{"  sample 20.00 g", "  from 11.9 kg of \"Far field 2026\"\n  sample 20.00 g", "8.66 kg", "17.2 kg", "7.41 kg", "14.7 kg", "9.29 kg", "18.4 kg", "8.95 kg", "17.8 kg", "7.52 kg", "16.3 kg", "5.52 kg", "12.1 kg", "5.43 kg", "10.85 kg", "5.13 kg", "10.2 kg", "4.90 kg", "9.72 kg"}, "vessel-too-small", "11.9 kg"},
	{"malt of a bigger charge", "26-03", []string{"  sample 20.00 g", "  from 4 kg of \"Far field 2026\"\n  sample 20.00 g", "4.90 kg clean", "4.18 kg clean", "7.41 kg", "4.94 kg", "8.66 kg", "5.77 kg", "9.29 kg", "6.19 kg", "8.95 kg", "5.97 kg", "7.52 kg", "5.01 kg", "5.52 kg", "3.68 kg", "5.43 kg", "3.62 kg", "5.13 kg", "3.42 kg"}, "reading-impossible", "4.18 kg"},
	{"more water than grain holds", "26-03", []string{"9.29 kg", "13.29 kg"}, "reading-impossible", "13.29 kg"},
	{"a poison", "26-03", []string{"02:07\n", "02:07\n  tested ndma 40 µg/kg at 2026-04-01 10:00\n"}, "contaminant-high", "40 µg/kg"},
	{"a process that is another by now", "26-03", []string{"  sample 20.00 g", "  pinned \"3f9a2c71d0e4\"\n  sample 20.00 g"}, "process-changed", "pinned \"3f9a2c71d0e4\""},
	{"the weight of the step before", "26-03", []string{"7.52 kg", "8.95 kg"}, "reading-doubtful", "8.95 kg"},
}

// withSlip is what check says of a record with a slip in it.
func withSlip(t *testing.T, s bookSlip) (own []finding.Finding) {
	t.Helper()
	text, err := os.ReadFile(book + s.file + ".malt")
	require.NoError(t, err)
	for i := 0; i < len(s.replaced); i += 2 {
		require.Contains(t, string(text), s.replaced[i])
	}
	bad := strings.NewReplacer(s.replaced...).Replace(string(text))
	require.NotEqual(t, string(text), bad)
	root, err := read.OpenRoot("../examples/batches")
	require.NoError(t, err)
	defer root.Close()
	for _, f := range File(s.file+".malt", []byte(bad), ".", root, Options{}).Findings {
		if f.Place.File.Name() == s.file+".malt" {
			own = append(own, f)
		}
	}
	return own
}

// bookShare is one of how many slips of each rule an ordinary run tries: the table of slips
// has one of each kind.
const bookShare = 5

// A slip in a record is told once, at the reading, by the rule that fits.
func TestSlipsInARecordAreFound(t *testing.T) {
	if golden.Raced {
		t.Skip("dozens of records; go test without -race runs them")
	}
	seen := map[string]int{}
	for _, s := range bookSlips {
		if seen[s.rule]++; seen[s.rule]%bookShare != 1 && !golden.Long() {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			found := withSlip(t, s)
			var said []string
			for _, f := range found {
				said = append(said, f.Rule+" at "+f.Place.Text()+": "+f.Message+"; "+f.Hint)
			}
			t.Log(strings.Join(said, "\n"))
			if assert.Len(t, found, 1, "one finding a slip") {
				assert.Equal(t, s.rule, found[0].Rule)
				assert.Equal(t, s.at, found[0].Place.Text())
				assert.GreaterOrEqual(t, found[0].Severity, finding.Caution)
			}
		})
	}
}

// Who weighs the malt again may have weighed it better: which weight counts is noted.
func TestMaltThatIsWeighedTwiceIsNoted(t *testing.T) {
	const once = "  weighed 4.90 kg clean malt at 2026-03-15 02:07\n"
	again := func(line string) []finding.Finding {
		return withSlip(t, bookSlip{file: "26-03", replaced: []string{once, once + line}})
	}
	found := again("  weighed 4.86 kg clean malt at 02:30\n")
	require.Len(t, found, 1)
	assert.Equal(t, "written-twice", found[0].Rule)
	assert.Equal(t, finding.Note, found[0].Severity)
	assert.Contains(t, found[0].Message, "the yield goes by this line, 4.86 kg")
	assert.Empty(t, again("  weighed 4.94 kg clean malt at 2026-03-28 18:30\n"), "in store it takes up water")
}

// What a house does otherwise than most is no slip.
func TestWhatIsDoneOnTheKilnIsNoSlip(t *testing.T) {
	for name, replaced := range map[string][]string{
		"signed, and analysed":     {"02:07\n", "02:07 by \"AK\"\n  remark \"a sweet smell\" at 02:20 by \"AK\"\n  tested friability 86 % by \"EBC 4.15\" at 2026-04-01 10:00\n  tested don 0.3 mg/kg at 10:00\n"},
		"turned while it withers":  {"  weighed 7.52 kg", "  turned  at 23:00\n  weighed 7.52 kg"},
		"turned when it is moved":  {"  read    air-off 29.3 °C", "  turned  at 09:40\n  read    air-off 29.3 °C"},
		"a thermostat that swings": {"air-off 59.3 °C", "air-off 66.0 °C"},
		"changed in time and heat": {"  weighed 4.90 kg", "  changed soak 3 to 8 h because \"I was late\"\n  changed soak 3 to water 12 °C because \"it was cold\"\n  weighed 4.90 kg"},
	} {
		assert.Empty(t, withSlip(t, bookSlip{file: "26-03", replaced: replaced}), name)
	}
}

// Malt that is stirred on the kiln may be written as turned.
func TestMaltThatIsStirredMayBeWrittenAsTurned(t *testing.T) {
	const example = "floor-kiln.malt"
	text, err := os.ReadFile("../examples/" + example)
	require.NoError(t, err)
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	defer root.Close()
	h, _ := read.Load(example, text, ".", root)
	record := inventedOf(t, h.Processes[0], 0).Text
	onKiln := regexp.MustCompile(`( *read +air-off \S+ °C at (?:\S+ )?(\d\d:\d\d)\n)`)
	require.Regexp(t, onKiln, record)
	record = onKiln.ReplaceAllString(record, "$1  turned at $2\n")
	assert.Empty(t, saidOf(t, "../examples", "use \""+example+"\"\n"+record))
	still := regexp.MustCompile(`\n *stir [^\n]*`).ReplaceAllString(string(text), "")
	require.NotEqual(t, string(text), still)
	assert.Contains(t, strings.Join(saidOf(t, "../examples", still+record), "\n"), "this line is of the growing piece")
}

func TestHonestRecordsRaiseNothing(t *testing.T) {
	for _, file := range []string{"26-03", "26-04", "26-05"} {
		for _, f := range checkFile(t, "../examples/batches/"+file+".malt").Findings {
			assert.NotEqual(t, file+".malt", f.Place.File.Name(), "%s [%s]", f.Message, f.Rule)
		}
	}
}

// What explain shows of a rule of records is run in a record of the examples: with the
// lines put right it is as it stands there, with the wrong ones the rule tells.
func TestTheExamplesOfTheRulesOfRecordsShowThem(t *testing.T) {
	text, err := os.ReadFile(book + "26-03.malt")
	require.NoError(t, err)
	record := plainLines(string(text))
	for _, r := range records.Rules() {
		good, bad := strings.Split(r.Good, "\n"), strings.Split(r.Bad, "\n")
		for _, lines := range [][]string{good, bad} {
			said := strings.Join(saidOf(t, "../examples/batches", put(record, good, lines)), "\n")
			if &lines[0] == &good[0] {
				assert.Empty(t, said, r.Name)
			} else {
				assert.Contains(t, said, "["+r.Name+"]")
			}
		}
	}
}

// plainLines are those of a text with one blank between words.
func plainLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.Join(strings.Fields(lines[i]), " ")
	}
	return strings.Join(lines, "\n")
}

// put puts lines in the place of the good ones of a record, which stand there together or
// one by one, or else at its end.
func put(record string, good, lines []string) string {
	whole := strings.Join(good, "\n")
	switch {
	case strings.Contains(record, whole):
		return strings.Replace(record, whole, strings.Join(lines, "\n"), 1)
	case !strings.Contains(record, good[0]):
		return strings.TrimSuffix(record, "}\n") + strings.Join(lines, "\n") + "\n}\n"
	}
	for i := range good {
		record = strings.Replace(record, good[i], lines[i], 1)
	}
	return record
}
