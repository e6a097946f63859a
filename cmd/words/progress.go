package words

import (
	"fmt"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/progress"
	"maltwright/lang/quantity"
	"maltwright/sim/grain"
	"maltwright/sim/infer/follow"
)

// AsOf says why a batch is followed as of a time, "" where nothing need be said.
var AsOf = map[progress.AsOf]string{
	progress.LastReading: "the last reading, because it is over three days old; give another time with --at",
	progress.ClockBehind: "the last reading, which is later than this computer's clock",
}

// Late says what should have been done, since when and by which words of the process.
func Late(kind follow.LateKind, since, text string) string { return late[kind](since, text) }

var late = map[follow.LateKind]func(since, text string) string{
	follow.LateStep: func(since, text string) string {
		return fmt.Sprintf("probably due since %s: %s. If you went on, write it down", since, text)
	},
	follow.LateGuard: func(since, text string) string {
		return fmt.Sprintf("its latest time passed on %s: %s", since, text)
	},
	follow.LateCool: func(since, text string) string {
		return "the malt should be cool, and was at " + text + " on " + since + ": it is too hot to put away; let it cool, and read it again before it goes into anything"
	},
	follow.LateTurn: func(since, _ string) string {
		return "the next turn after the last one in the record was due on " + since
	},
}

// Ago writes how long something has been so.
func Ago(s answer.Seconds) string {
	switch {
	case s < 60:
		return "less than a minute"
	}
	return Lasting(s)
}

// Until writes how long it is until something is so, infinite where it never is: now,
// 7 h 5 min, 2 d 12 h.
func Until(s answer.Seconds) string {
	switch {
	case math.IsInf(float64(s), 1):
		return "never"
	case s < 60:
		return "now"
	}
	return Lasting(s)
}

// UntilWithin writes between which times eight cases in ten come about: 7 h to 9 h; 16 h or more, or never.
func UntilWithin(s answer.Spread[answer.Seconds]) string {
	low, high := Until(s.P10), Until(s.P90)
	if !math.IsInf(float64(s.P90), 1) || low == high {
		return SpreadRow{Low: low, High: high}.Within()
	}
	return low + " or more, or never"
}

// Rub is how kernels of a modification rub out.
func Rub(modification answer.Number) string { return grain.RubAt(float64(modification)).String() }

// Shown writes a temperature as a thermometer of the house shows it: 17.0 °C, 63 °F.
func (h House) Shown(c answer.Celsius) string {
	places := 1
	if h.Fahrenheit {
		places = 0
	}
	return quantity.Fixed(h.Temperature(float64(c)), places) + " " + h.Degree()
}

// suspected says why a reading cannot be right, and what to do.
func (h House) suspected(d progress.Doubt) string { return suspicions[d.Kind](h, d) }

var suspicions = map[follow.DoubtKind]func(House, progress.Doubt) string{
	follow.BelowDry: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("it is less than the dry matter of the batch; %s is expected. Look at the number, its unit and the tare", h.expected(d.Reading))
	},
	follow.NoTare: func(_ House, d progress.Doubt) string {
		if d.Holder != "" {
			return fmt.Sprintf("it would fit without the weight of %q, %s: then leave out in %[1]q", d.Holder, d.Empty)
		}
		return fmt.Sprintf("it would fit if the weight did not include the tare of %s; the record takes the tare off every such weight. Weigh grain and tare together, or write the weight of both", d.Tare)
	},
	follow.WithHolder: func(_ House, d progress.Doubt) string {
		return fmt.Sprintf("it would fit with the weight of %q, %s, included: then write in %[1]q after the weight", d.Holder, d.Empty)
	},
	follow.Unit: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("it would fit in %s; %s is expected. Correct the unit", d.Unit, h.expected(d.Reading))
	},
	follow.Nought: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("it would fit as %s, with the decimal point moved; %s is expected", d.Unit, h.expected(d.Reading))
	},
	follow.Swapped: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("it would fit as %s, with two digits swapped; %s is expected", d.Unit, h.expected(d.Reading))
	},
	follow.OtherTime: func(_ House, d progress.Doubt) string {
		what := "the time: morning and evening are easily mixed up"
		if d.When.Sub(d.Reading.At).Abs() >= 24*time.Hour {
			what = "the date"
		}
		return fmt.Sprintf("it does not fit at its time, but would fit at %s. Look at %s", d.When.Format("2006-01-02 15:04"), what)
	},
	follow.Impossible: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("no grain or malt of this charge can weigh so much or so little; %s is expected. Look at the number, its unit and the tare", h.expected(d.Reading))
	},
	follow.GainedWater: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("the malt only dries here, and cannot weigh more than in the reading before, %s; %s is expected", d.Against, h.expected(d.Reading))
	},
	follow.ChargesDry: func(_ House, d progress.Doubt) string {
		return fmt.Sprintf("it is the weight asked for only if no dry matter was lost; with the loss the malt holds %s. Calculate the weight to dry to with reckon target --lost", Percent(d.Holds))
	},
	follow.NotYet: func(_ House, d progress.Doubt) string {
		return fmt.Sprintf("at that weight the malt held %s, and the step that ended waits for %s. Look at the weight, and at the step behind \"after\"", Percent(d.Holds), Percent(d.Wanted))
	},
	follow.GoesBack: func(_ House, d progress.Doubt) string {
		return fmt.Sprintf("growth never goes back, and the record says before it: %s. Count more kernels", d.Against)
	},
	follow.OutOfPlace: func(_ House, d progress.Doubt) string {
		at := "the kind of reading"
		if d.Reading.Weight != nil { // no other reading names a step
			at = "the step behind \"after\""
		}
		return "the other lines say that this cannot be read at that time. Look at its time, and at " + at
	},
	follow.NoStep: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("no step of the kiln has such air; %s is expected. Look at the number, and write changed if the kiln was set otherwise", h.expected(d.Reading))
	},
	follow.Disagrees: func(h House, d progress.Doubt) string {
		return fmt.Sprintf("the other readings and the process make %s likely. Look at the number, and at whether the step was done as the process says", h.expected(d.Reading))
	},
}

// expected is what a reading should have been.
func (h House) expected(r progress.Reading) string {
	switch {
	case r.OfBag:
		return between(r.Weight, func(kg answer.Kilograms) string { return Bag(h, kg+r.Along) })
	case r.Weight != nil:
		return between(r.Weight, func(kg answer.Kilograms) string { return Weighed(h, kg+r.Along) })
	case r.Temperature != nil:
		return between(r.Temperature, h.Shown)
	case r.Moisture != nil:
		return between(r.Moisture, Percent)
	case r.Chit != nil:
		return between(r.Chit, func(share answer.Share) string { return fmt.Sprintf("%.0f of 100", 100*min(max(share, 0), 1)) })
	case r.Modification != nil:
		return between(r.Modification, Rub)
	case r.Acrospire != nil:
		return between(r.Acrospire, func(n answer.Number) string { return fmt.Sprintf("a mean length of %.2f", max(n, 0)) })
	}
	return None
}

// between writes the band in which a reading should lie, its own error in it.
func between[T answer.Single](c *progress.Compared[T], write func(T) string) string {
	if c.Expected == nil {
		return None
	}
	from, to := write(c.Expected.P10-c.Error), write(c.Expected.P90+c.Error)
	if from == to {
		return from
	}
	return from + " to " + to
}

// Spread writes the middle of a figure, and the points below which one case in ten and nine in ten lie: 44.2 %
// (43.5 % to 44.9 %). It is "" where there is no such figure.
func Spread[T answer.Figure](x *answer.Spread[T], write func(T) string) string {
	if x == nil {
		return ""
	}
	low, middle, high := write(x.P10), write(x.P50), write(x.P90)
	if low == middle && middle == high {
		return middle
	}
	return fmt.Sprintf("%s (%s)", middle, span(low, high))
}
