package margin

import (
	"context"
	"runtime"
	"strings"

	"maltwright/check"
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Likely is how sure the forecast of a process is: how it goes in many likely batches.
type Likely struct {
	steps []ensemble.StepSpread
	gates []ensemble.Odds
}

// LikelyOf makes for each process of the main file of a report as many likely batches as check --odds does, and gives
// how they go, in the order of the processes; nil for one that is not forecast, or whose forecasts cost too
// much. It is not quick: some hundred forecasts of each. The error is that of the context.
func LikelyOf(ctx context.Context, r check.Report, members int) ([]*Likely, error) {
	list := make([]*Likely, len(r.House.Processes))
	for i, p := range r.House.Processes {
		f := nth(r.Forecasts, i)
		if f == nil || p.Scope.File == nil || p.Scope.File.Name() != r.House.Files[0].Name() {
			continue
		}
		// A core is left to who types on.
		e, err := ensemble.Run(ctx, p, ensemble.Options{Members: members, Workers: max(1, runtime.NumCPU()-1)})
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err == nil {
			list[i] = &Likely{e.Steps(), e.Gates()}
		}
	}
	return list, nil
}

// step is how the end of a step spreads; of one that is not known it has no share.
func (l *Likely) step(p *model.Process, s forecast.Step) (none outlook.StepSpread) {
	if l == nil {
		return none
	}
	for _, x := range l.steps {
		if x.At == s.Place.Start && x.Label == s.Label && x.Number == s.Number {
			return outlook.StepSpreadOf(x, p, outlook.BagOf(p))
		}
	}
	return none
}

// gate is in which share of the likely batches the nth gate of a forecast holds; nil where that is not known.
func (l *Likely) gate(f *forecast.Forecast, n int) *answer.Share {
	if l == nil {
		return nil
	}
	text := f.Process.Called(f.Gates[n].Of) + ": " + f.Gates[n].Text
	for _, x := range l.gates {
		if strings.TrimSpace(x.Text) == strings.TrimSpace(text) {
			return share(x.Holds)
		}
	}
	return nil
}
