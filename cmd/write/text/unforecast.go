package text

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// points writes a share for a table whose head has the per cent.
func points(share answer.Share) string {
	if math.IsNaN(float64(share)) {
		return words.None
	}
	return fmt.Sprintf("%.1f", 100*share)
}

// ends says from where on malt is not forecast. It is false where all of it is.
func (s *Sheet) ends(e *outlook.ModelEnd) bool {
	if e != nil {
		s.para("not forecast", "from %s on (line %d): %s", words.Lasting(e.At), e.Line, s.Say(e.Why))
	}
	return e != nil
}

// indications says what heat did to the malt, as far as that is forecast.
func (s *Sheet) indications(r outlook.Result) {
	q := r.Indications
	if q == nil {
		return
	}
	var parts, not []string
	tell := func(name string, v float64, text string) {
		if math.IsNaN(v) {
			not = append(not, name)
			return
		}
		parts = append(parts, text)
	}
	tell("enzymes", float64(q.Diastatic), fmt.Sprintf("enzymes kept %s (diastatic), %s (alpha)", words.Part(q.Diastatic), words.Part(q.Alpha)))
	tell("DMS precursor", float64(q.Precursor), "DMS precursor left "+words.Part(q.Precursor))
	tell("colour", float64(q.Colour), "colour about "+words.Colours.Write(float64(q.Colour))+" EBC")
	if stewed(r) {
		not = append(not, "the sugars of the stew")
	}
	var told []string
	if len(parts) > 0 {
		told = append(told, strings.Join(parts, ", "), "calibrated to practice, not measured")
	}
	if len(not) > 0 {
		told = append(told, "not forecast: "+strings.Join(not, ", "))
	}
	s.para("indications", "%s", strings.Join(told, "; "))
}

// enzymes says what those of the malt suffice for.
func (s *Sheet) enzymes(r outlook.Result) {
	if r.Enzymes != nil {
		s.para("enzymes", "%s", s.Enzymes(*r.Enzymes))
	}
}

// stewed tells whether the malt was stewed, which makes sugars that nothing is told of.
func stewed(r outlook.Result) bool {
	return slices.ContainsFunc(r.Stages, func(st outlook.Stage) bool {
		return slices.ContainsFunc(st.Steps, func(step outlook.Step) bool { return step.Kind == vocabulary.VerbStew })
	})
}
