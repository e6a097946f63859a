package serve

import (
	"net/url"
	"strings"

	"maltwright/cmd/answer/sums"
	"maltwright/cmd/words"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/reckon"
)

// weights are a sample and its dish, weighed before and after it was dried.
type weights struct {
	sample reckon.Sample
	dish   *quantity.Quantity // nil where it was weighed without one, or with the scale at zero
}

// weightsOf reads the weights of a sample, g.
func weightsOf(v url.Values, wet string) (w weights, err error) {
	for _, x := range []struct {
		name, lack string
		to         *quantity.Quantity
	}{{wet, "before it was dried", &w.sample.Wet}, {nameDry, "when it no longer got lighter", &w.sample.Dried}} {
		if typedNumber(v.Get(x.name)) == "" {
			return w, missing("type what the sample weighed " + x.lack)
		}
		if *x.to, err = grams(v.Get(x.name)); err != nil {
			return w, err
		}
	}
	if typedNumber(v.Get(nameDish)) == "" {
		return w, nil
	}
	dish, err := grams(v.Get(nameDish))
	w.dish = &dish
	return w, err
}

// grams reads a weight that has its unit from the form.
func grams(typed string) (quantity.Quantity, error) {
	number := typedNumber(typed)
	if !strings.ContainsAny(number, letters) {
		number += " g"
	}
	q, err := quantity.Parse(number)
	if err != nil {
		return q, missing(err.Error())
	}
	return q, nil
}

// moisture is the sum of the sample.
func (w weights) moisture() (sums.Moisture, error) {
	m, err := sums.OfSamples([]reckon.Sample{w.sample}, w.dish)
	if err != nil {
		return m, missing(err.Error())
	}
	return m, nil
}

// sampleOf is a sample of the raw grain: without its dish, as a record has it.
func sampleOf(v url.Values) ([]string, error) {
	w, err := weightsOf(v, nameValue)
	if err != nil {
		return nil, err
	}
	if _, err := w.moisture(); err != nil {
		return nil, err
	}
	wet, dried := w.sample.Wet, w.sample.Dried
	of := func(q quantity.Quantity) []string {
		if w.dish == nil {
			return strings.Fields(q.String())
		}
		return strings.Fields(q.Like(q.SI - w.dish.SI))
	}
	line := append([]string{vocabulary.RecordSample}, of(wet)...)
	return append(append(line, vocabulary.SampleDried, "to"), of(dried)...), nil
}

// moistureOf is a moisture that was found: by somebody else, or by the weights of a sample.
func moistureOf(v url.Values) ([]string, error) {
	share := strings.TrimSpace(strings.TrimSuffix(typedNumber(v.Get(nameValue)), "%"))
	weighed := weighedInOven(v)
	switch {
	case share != "" && weighed:
		return nil, missing("type the moisture or the weights, and not both")
	case share == "" && !weighed:
		return nil, missing("type the weights of the sample, or the moisture that was found")
	case share != "":
		return []string{"tested", vocabulary.MeasureMoisture, share, "%"}, nil
	}
	w, err := weightsOf(v, nameWet)
	if err != nil {
		return nil, err
	}
	m, err := w.moisture()
	if err != nil {
		return nil, err
	}
	return append([]string{"tested", vocabulary.MeasureMoisture}, strings.Fields(words.Sums(m)[0].Text)...), nil
}

// weighedInOven tells whether a weight of a sample was typed.
func weighedInOven(v url.Values) bool {
	return strings.TrimSpace(v.Get(nameWet)+v.Get(nameDry)+v.Get(nameDish)) != ""
}

// sumOf is how the moisture of a sample was reckoned, a line each; nothing of another reading.
func sumOf(v url.Values) (lines []string) {
	wet, is := map[string]string{kindSample: nameValue, kindMoisture: nameWet}[v.Get(nameKind)]
	if !is || !weighedInOven(v) {
		return nil
	}
	w, err := weightsOf(v, wet)
	if err != nil {
		return nil
	}
	m, err := w.moisture()
	if err != nil {
		return nil
	}
	for _, step := range m.Working {
		w := words.WorkingStep(step)
		lines = append(lines, words.Joined(": ", w.Label, w.Text))
	}
	return lines
}
