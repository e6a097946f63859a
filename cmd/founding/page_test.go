package founding

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// paths are answers that lead through all questions together.
var paths = []Answers{
	{"grain": "rye", "moisture known": "sample", "charge": "200 kg", "grows": Box, "dryer 1": Oven},
	{"moisture known": "value", "grows": Tray, "dryer 1": FireKiln, "dryer 1 fired": "wood"},
}

// every lists all questions of a system of units: of things that there may be several of, the first.
func every(units string) (list []Question) {
	seen := map[string]bool{}
	add := func(a asking) {
		for q := range a.all {
			if !seen[q.Key] {
				seen[q.Key] = true
				list = append(list, q)
			}
		}
	}
	for _, p := range paths {
		a := Answers{"units": units}
		for k, v := range p {
			a[k] = v
		}
		add(asked(a, There{}))
	}
	text := "grain \"a\" { species barley }\nsite \"s\" { air 10 °C }\nvessel \"v\" { holds 20 l }\nfloor \"f\" { area 1 m2 }\nkiln \"k\" { area 1 m2 }\nkiln \"l\" { area 1 m2 }\n"
	if units == Pounds {
		text = strings.Replace(text, "10 °C", "50 °F", 1)
	}
	there := Among([]File{{Name: "house.malt", Text: []byte(text)}}, nil)
	for _, what := range []string{AddProcess, AddVessel, AddFloor, AddDryer} {
		add(asked(Answers{"add": what}, there))
	}
	return list
}

func TestThePageOfAnswersHasEveryKey(t *testing.T) {
	pounds, plain := map[string]Question{}, map[string]string{}
	for _, q := range every(Pounds) {
		pounds[q.Key] = q
	}
	for _, units := range []string{Metric, Pounds} { // sizes are shown of the usual charge
		for q := range asked(Answers{"units": units}, There{}).all {
			plain[units+q.Key] = q.Usual
		}
	}
	usualOf := func(units string, q Question) string {
		if usual, ok := plain[units+q.Key]; ok {
			return usual
		}
		return q.Usual
	}
	var b strings.Builder
	b.WriteString("\n| key | asks | an answer | usual |\n|---|---|---|---|\n")
	for _, q := range every(Metric) {
		form, usual := q.shown(), usualOf(Metric, q)
		if other := usualOf(Pounds, pounds[q.Key]); other != usual {
			usual += "; " + other
		}
		if strings.HasPrefix(q.Key, "use ") {
			usual = "the first of them"
		}
		if other := pounds[q.Key].shown(); other != form {
			form += " or " + strings.TrimPrefix(other, "a number, ")
		}
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", q.Key, q.Ask, form, usual)
	}
	b.WriteString("\nOf `vessel` and `dryer` there may be four: `vessel 2 holds`, `dryer 2`, `dryer 2 size` and so on. Usual sizes are those of a charge of 4 kg or 9 lb.\n\n")
	golden.Between(t, "../../docs/answers.md", "<!-- answers: begin (made by go test ./cmd/founding with MALTWRIGHT_UPDATE=1) -->\n", "<!-- answers: end -->", b.String())
}

// shown tells what an answer looks like, for the page.
func (q Question) shown() string {
	unit := ""
	if q.Unit != "" {
		unit = ", " + q.Unit
	}
	switch q.Kind {
	case OneOf:
		if strings.HasPrefix(q.Key, "use ") {
			return "a name"
		}
		return strings.Join(q.words(), ", ")
	case Amount:
		return "a number" + unit
	case Span:
		return "two numbers" + unit
	}
	return q.form()
}

func TestTheAnswersOfThePageMakeACleanHouse(t *testing.T) {
	page, err := os.ReadFile("../../docs/answers.md")
	require.NoError(t, err)
	_, block, _ := strings.Cut(string(page), "```text\n")
	block, _, ok := strings.Cut(block, "```")
	require.True(t, ok)
	a, err := ReadAnswers("answers.txt", []byte(block), There{})
	require.NoError(t, err)
	require.Len(t, a, strings.Count(block, ":")-strings.Count(block, ":30"))
	r := written(t, a)
	assert.Empty(t, rulesOf(r.Report))
	believable(t, "the page", r.Forecast)
}
