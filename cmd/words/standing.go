package words

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/lang/model"
)

// SpreadRow is a figure that is not certain: its middle, and below which one case in ten and nine in
// ten lie. Under tells that it is the same as the row above it in another measure.
type SpreadRow struct {
	What, Middle, Low, High string
	Under                   bool
}

func spreadRow[T answer.Figure](list []SpreadRow, what string, x *answer.Spread[T], write func(T) string) []SpreadRow {
	if x == nil {
		return list
	}
	return append(list, SpreadRow{What: what, Middle: write(x.P50), Low: write(x.P10), High: write(x.P90)})
}

// Within says between which figures eight cases in ten lie: 43.2 to 44.5 %; "" where that is the middle itself.
func (r SpreadRow) Within() string {
	if r.Low == r.High {
		return ""
	}
	return span(r.Low, r.High)
}

// Standing tells how a batch stands now.
func (h House) Standing(r progress.Result) (rows []SpreadRow) {
	n := r.Now
	mass := func(kg answer.Kilograms) string { return Weighed(h, kg) }
	rows = spreadRow(rows, "moisture", n.Moisture, Percent)
	rows = spreadRow(rows, "weight on the scale", n.Weight, mass)
	if n.Gross != nil {
		rows = spreadRow(rows, Holding(n.Gross.In), &n.Gross.Weight, mass)
		rows[len(rows)-1].Under = true
	}
	rows = spreadRow(rows, "the marked bag", n.Bag, func(kg answer.Kilograms) string { return Bag(h, kg) })
	rows = spreadRow(rows, "dry matter lost so far", n.DryMatterLost, Percent)
	if r.Growing {
		rows = spreadRow(rows, "kernels chitted", n.Chit, Percent)
		rows = spreadRow(rows, "acrospire, as a part of the kernel", n.Acrospire, func(v answer.Number) string { return fmt.Sprintf("%.2f", v) })
		if n.Modification != nil && n.Modification.P50 > 0 {
			rows = spreadRow(rows, "rub", n.Modification, Rub)
		}
	}
	rows = spreadRow(rows, "in the middle of the bed", n.Bed, h.Shown)
	rows = spreadRow(rows, "air-off", n.AirOff, h.Shown)
	rows = spreadRow(rows, "the air in the oven", n.Oven, h.Shown)
	return spreadRow(rows, "the malt itself", n.Malt, h.Shown)
}

// counted are the steps of which there may be several: soak 2, but plain cure.
var counted = map[string]bool{string(model.SoakStep): true, string(model.RestStep): true, string(model.DryStep): true}

// Where is the stage in which a batch stands, and its step where that says more.
func Where(r progress.Result) string {
	stage, step := outlook.StageName{Stage: r.Stage, Number: r.StageNumber}.Called(), r.Step
	switch {
	case step == "" || step == r.Stage || step == string(model.HoldStep):
		return stage
	case counted[step]:
		return fmt.Sprintf("%s, %s %d", stage, step, r.StepNumber)
	}
	return stage + ", " + step
}

// nearlyAll is the share of the cases from which on it is not said how many they are.
const nearlyAll = 0.995

// Awaited names a condition that a batch waits for, and in how many of the cases it comes about.
func Awaited(w progress.Wait) string {
	name := fmt.Sprintf("%s: %s", outlook.Awaits(w.StageName, w.Step, w.Hold), Safe(w.Text))
	if w.Left.Share < nearlyAll {
		name += ", in " + Part(w.Left.Share) + " of the cases"
	}
	return name
}

// NotComing says of what is waited for now and does not come about in most cases what can be done; "" of what does.
func NotComing(w progress.Wait) string {
	if !w.Never || !w.Open {
		return ""
	}
	do := "Weigh and look once more; then end the step by hand and write that down, or leave this batch."
	if w.Stage == string(model.SteepStage) {
		do = "Soak once more, or go on with the moisture it has and write that down."
	}
	return fmt.Sprintf("As it goes on, it does not come to %s in most cases. %s", Safe(w.Text), do)
}

// Suspect tells of a reading that may not be right what it is and why; "" of one that may.
func (h House) Suspect(r progress.Reading) string {
	if r.Words == nil {
		return ""
	}
	what := r.Text
	if !r.At.IsZero() && !strings.Contains(what, r.At.Format("2006-01-02")) {
		what = r.At.Format("Mon 2 Jan, ") + what
	}
	why := h.Say(r.Words)
	if r.Struck {
		why += ". It does not count"
	}
	return Safe(what + ": " + why)
}

// Agree says how many of the readings agree with the forecasts; "" where none is judged. Where few of the
// forecasts agree with all of the readings at once it says that, however well each reading does by itself.
func Agree(r progress.Result) string {
	doubtful, n := 0, 0
	for _, x := range r.Readings {
		if x.Doubt != "" {
			doubtful++
		}
		if !x.Unjudged {
			n++
		}
	}
	few := FewAgree(r.Posterior)
	switch {
	case n == 0 && len(r.Readings) > 0:
		return ""
	case n == 0:
		return "none yet: weigh the drained grain after the next soak, and write the weight with note"
	case n == 1 && doubtful == 0 && few == "":
		return "the only one agrees with the forecasts"
	case doubtful == 0 && few == "":
		return fmt.Sprintf("all %d agree with one another and with the forecasts", n)
	case few == "":
		return fmt.Sprintf("%d of %d agree with one another and with the forecasts", n-doubtful, n)
	case doubtful > 0:
		return fmt.Sprintf("%d of %d in doubt, and %s", doubtful, n, few)
	case n == 1:
		return "the only one is not in doubt, but " + few
	}
	return fmt.Sprintf("none of the %d is in doubt by itself, but %s", n, few)
}

// Next is the head of what is due next: while nothing was read it says what that goes by.
func Next(r progress.Result) string {
	if len(r.Readings) > 0 {
		return "next"
	}
	return "next, by the process alone"
}

// fewMembers is how many effective members are too few for the outer figures, and fewOf which share of all that were
// made is few of them.
const (
	fewMembers = 20
	fewOf      = 0.25
)

// Thin tells whether a batch is followed by forecasts of which too few agree with its whole record for the outer
// figures, if enough for the middle.
func Thin(p progress.Posterior) bool { return p.Trusted && p.EffectiveSampleSize < fewMembers }

// FewAgree says, of a batch whose figures or outer figures are not to be trusted, that it is because few of the
// forecasts agree with all of its readings; "" of another.
func FewAgree(p progress.Posterior) string {
	switch {
	case !p.Trusted:
		return "hardly any of the forecasts agrees with all of the readings at once"
	case Thin(p) && float64(p.EffectiveSampleSize) < fewOf*float64(p.Members): // else few were made
		return "few of the forecasts agree with all of the readings at once"
	}
	return ""
}
