package founding

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asks gives the question of a key, in pounds.
func asks(t *testing.T, key string, a Answers) Question {
	t.Helper()
	q, ok := asked(a, There{}).sheet().questions[key]
	require.True(t, ok, key)
	return q
}

func TestAnAnswerIsTakenAsPeopleTypeIt(t *testing.T) {
	for _, c := range []struct{ key, typed, taken string }{
		{"units", "F", Pounds}, {"units", "2", Pounds}, {"units", "metric", Metric},
		{"grain", "Barley", "barley"}, {"grain", "wh", "wheat"}, {"grain", "oat", "oats"}, {"grain", "corn", "maize"},
		{"charge", "10", "10 lb"}, {"charge", "10lb", "10 lb"}, {"charge", "9 1/2 lbs", "9 1/2 lb"}, {"charge", "4 kg", "4 kg"}, {"charge", "5 lb 4 oz", "5 lb 4 oz"},
		{"moisture", "12.4", "12.4 %"}, {"moisture", "12.4 percent", "12.4 %"},
		{"vessel 1 holds", "5", "5 gal-us"}, {"vessel 1 holds", "20 liters", "20 l"}, {"vessel 1 weighs", "none", None}, {"vessel 1 weighs", "2 lb 3 oz", "2 lb 3 oz"},
		{"air", "48-62", "48 to 62 °F"}, {"air", "48 to 62 F", "48 to 62 °F"}, {"air", "62 and 48", "48 to 62 °F"}, {"air", "58", "58 °F"}, {"air", "9 – 12 °C", "9 to 12 °C"},
		{"awake", "6:30 am to 10:30 pm", "06:30 to 22:30"}, {"awake", "07:00-23:00", "07:00 to 23:00"}, {"awake", "always", "00:00 to 24:00"},
		{"awake", "06:00 to 08:00 and 17:00 to 23:00", "06:00 to 08:00 and 17:00 to 23:00"},
		{"germination", "96/100", "96 of 100"}, {"germination", "194 of 200 kernels", "194 of 200"},
		{"grows heater", "60", "60 W"}, {"altitude", "900", "900 ft"}, {"altitude", "?", DontKnow}, {"treated", "don't know", DontKnow}, {"house", " My  barn ", "My barn"},
	} {
		taken, err := asks(t, c.key, Answers{"units": Pounds}).Take(c.typed)
		require.NoError(t, err, "%s: %s", c.key, c.typed)
		assert.Equal(t, c.taken, taken, "%s: %s", c.key, c.typed)
	}
}

func TestAnAnswerThatCannotBeIsRefusedWithWhatToDo(t *testing.T) {
	for _, c := range []struct{ key, typed, says string }{
		{"treated", "yes", "treated seed is poison, and never malt; get grain that is sold as food, as feed or for malting"},
		{"grain", "barly", `"barly" is none of barley, wheat, rye, oats, sorghum, millet, maize, buckwheat, spelt, triticale; did you mean barley?`},
		{"moisture", "0.124", "0.124 % is outside what a moisture of raw grain can be: 8 to 17 % is usual"},
		{"moisture", "12 lb", "12 lb is a weight, and the question asks for a share"},
		{"charge", "", "there is no answer; type a number with its unit, as 9 lb, or don't know"},
		{"charge", "ten", `"ten": `},
		{"charge", "5000 t", "5000 t is outside what a charge can be"},
		{"air", "300 to 400", "300 °F is outside what room air can be"},
		{"awake", "morning", `"morning" is no span of the day; type two times of day, as 06:30 to 22:30`},
		{"germination", "96", `"96" does not say how many of how many`},
		{"germination", "120 of 100", "120 of 100 cannot be"},
		{"germination", "9 of 10", "a count of 10 kernels says too little"},
		{"house", `My "barn"`, "a name holds no quotes"},
		{"sample wet", "?", "this question has no usual answer"},
	} {
		_, err := asks(t, c.key, Answers{"units": Pounds, "moisture known": samplePick(c.key)}).Take(c.typed)
		require.Error(t, err, "%s: %s", c.key, c.typed)
		assert.Contains(t, err.Error(), c.says)
		assert.IsType(t, &Refusal{}, err)
	}
}

// samplePick leads to the questions of a sample where one of them is asked for.
func samplePick(key string) string {
	if key == "sample wet" || key == "sample dry" {
		return "sample"
	}
	return ""
}

func TestASampleIsReckonedOnTheSpot(t *testing.T) {
	a := Answers{"units": Metric, "moisture known": "sample", "sample wet": "50 g"}
	dry := asks(t, "sample dry", a)
	_, err := dry.Take("20 g")
	assert.ErrorContains(t, err, "20 g of 50 g is a moisture of 60 %")
	_, err = dry.Take("51 g")
	assert.Error(t, err)
	taken, err := dry.Take("43.4")
	require.NoError(t, err)
	a["sample dry"] = taken
	whole, _, ok := Completed(a, There{})
	require.True(t, ok)
	assert.Contains(t, string(written(t, whole).Files[0].Text), "moisture 13.2 %  # 50 g dried to 43.4 g")
}

func TestNextLeadsThroughAllQuestionsOnce(t *testing.T) {
	a, seen := Answers{}, map[string]bool{}
	for {
		q, more := Next(a, There{})
		if !more {
			break
		}
		require.False(t, seen[q.Key], q.Key)
		seen[q.Key] = true
		require.NotEmpty(t, q.Ask)
		require.NotEmpty(t, q.About, q.Key)
		require.LessOrEqual(t, len([]rune(q.Ask)), 76, q.Ask)
		taken, err := q.Take(DontKnow)
		require.NoError(t, err, q.Key)
		a[q.Key] = taken
	}
	assert.Greater(t, len(seen), 20)
	assert.Equal(t, len(seen), len(Asked(a, There{})))
}

func TestAFileOfAnswersIsReadInAnyOrder(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte("# mine\ncharge: 10\nunits: F\nair: 48-62\nGRAIN: oat\n"), There{})
	require.NoError(t, err)
	assert.Equal(t, Answers{"units": Pounds, "charge": "10 lb", "air": "48 to 62 °F", "grain": "oats"}, a)
	for text, says := range map[string]string{
		"units: F\ncharg: 10\n":      `answers.txt:2: no question asks for "charg" after these answers; did you mean charge?`,
		"treated: yes\n":             "answers.txt:1: treated: treated seed is poison",
		"units F\n":                  "answers.txt:1: there is no colon; write it as KEY: value",
		"units: F\n\nunits: C\n":     "answers.txt:3: units was answered in line 1; keep one of the two",
		"dryer 1: oven\nmoisture: x": "answers.txt:2: moisture: ",
	} {
		_, err := ReadAnswers("answers.txt", []byte(text), There{})
		assert.ErrorContains(t, err, says)
	}
}

func TestAnswersWriteTheirOwnFile(t *testing.T) {
	a, err := ReadAnswers("answers.txt", []byte(sets["porch, pounds"]), There{})
	require.NoError(t, err)
	whole, _, ok := Completed(a, There{})
	require.True(t, ok)
	again, err := ReadAnswers("answers.txt", whole.Text(There{}), There{})
	require.NoError(t, err)
	assert.Equal(t, whole, again)
}
