package read

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var (
	intervalTooShort = rule("interval-too-short", fault, "work is repeated more than once a minute",
		"nobody turns, stirs or sprinkles so often; the unit is probably wrong", "look at the number and its unit",
		inPiece("turn every 8 s"), inPiece("turn every 8 h"))
	airNeverStops = rule("air-never-stops", fault, "air at intervals that runs for the whole of each interval",
		"the next time begins before the last is over; mostly the two times were swapped, or one has a wrong unit",
		"look at both times and their units; for air all the time, write it behind the soak: with air",
		soaked("soak 7 h in water at 13 °C; aerate every 5 min for 30 min"), soaked("soak 7 h in water at 13 °C; aerate every 30 min for 5 min"))
	stepsTooMany = rule("steps-too-many", fault, "a stage of more than 500 steps, or a process of more than 24 stages",
		"nobody makes so many soaks and rests, and no forecast of them would end", "look at the number of repeat, and at the steps that it repeats",
		soaked("repeat 1000 times { soak 1 h in water at 13 °C; rest 1 h in air at 14 °C }"),
		soaked("repeat 3 times { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C }"))
)

// boundRules are the rules of this file.
var boundRules = []finding.Rule{intervalTooShort, airNeverStops, stepsTooMany}

// inPiece, inWither and soaked are processes around a statement, for the examples.
func inPiece(statement string) string {
	return "use \"loft.malt\"\nprocess \"Loft pale\" {\n  make pale malt\n  from 6 kg of \"Far field 2026\"\n  steep in \"blue tub\" { soak 7 h in water at 13 °C }\n" +
		"  germinate on \"larch floor\" { hold bed at 14 to 17 °C; for 5 days; " + statement + " }\n" + shortKiln + "}"
}

func inWither(statement string) string {
	return shortest + "  wither on \"larch floor\" { " + statement + "; for 1 day }\n" + shortKiln + "}"
}

func soaked(statement string) string {
	return "use \"loft.malt\"\nprocess \"Loft pale\" {\n  make pale malt\n  from 6 kg of \"Far field 2026\"\n  steep in \"blue tub\" { " + statement + " }\n" +
		"  germinate on \"larch floor\" { hold bed at 14 to 17 °C; for 5 days }\n" + shortKiln + "}"
}

// interval is the time after which something is done again.
func (b *builder) interval(r *filled) *model.Quantity {
	q := b.positive(r.clause("every", 0).quantity(), "a time")
	if q == nil || q.SI >= model.LeastInterval {
		return q
	}
	b.refuse(intervalTooShort.At(q.Place, fmt.Sprintf("%s every %s; nothing is done more often than once a minute", r.Verb.Text, q)))
	return nil
}

// times is how often steps are done: a whole number, of at least one.
func (b *builder) times(v *given) *model.Bound {
	t := v.bound()
	if t == nil {
		return nil
	}
	for _, n := range []float64{t.Range.Low.SI, t.Range.High.SI} {
		if n < 1 || n != math.Trunc(n) {
			f := outOfRange.At(v.place, fmt.Sprintf("%s: steps are done a whole number of times, at least once", t.Range))
			f.Hint = "write a whole number, such as 3"
			b.refuse(f)
			return nil
		}
	}
	return t
}

// countSteps reports a stage of too many steps, and tells whether it did.
func (b *builder) countSteps(st model.Stage) bool {
	n, told := b.stepsOf(model.StepsOf(st))
	if told || n <= model.MostSteps {
		return told
	}
	b.refuse(stepsTooMany.At(st.Place(), fmt.Sprintf("%s has %.0f steps, and %d are the most", st.Kind(), n, model.MostSteps)))
	return true
}

// countStages reports a process of too many stages, and tells whether it did.
func (b *builder) countStages(p *model.Process) bool {
	n := len(p.Stages)
	if n <= model.MostStages {
		return false
	}
	b.refuse(stepsTooMany.At(p.Stages[model.MostStages].Place(), fmt.Sprintf("%q has %d stages, and %d are the most", p.Name, n, model.MostStages)))
	return true
}

// stepsOf counts steps as often as they are done, and tells whether it has reported a
// repeat that comes to too many.
func (b *builder) stepsOf(steps []model.Step) (n float64, told bool) {
	for _, s := range steps {
		r, again := s.(*model.Repeat)
		if !again {
			n++
			continue
		}
		inner, told := b.stepsOf(r.Steps)
		if told {
			return n, true
		}
		if r.Times != nil {
			inner = math.Max(1, inner) * r.Times.Range.High.SI
		}
		if inner > model.MostSteps {
			b.refuse(stepsTooMany.At(s.Place(), fmt.Sprintf("this repeat comes to %s steps, and %d are the most that a stage may have", many(inner), model.MostSteps)))
			return n, true
		}
		n += inner
	}
	return n, false
}

// many writes a count, which a slip can make absurd.
func many(n float64) string {
	if n > 1e9 {
		return "over a thousand million"
	}
	return fmt.Sprintf("%.0f", n)
}
