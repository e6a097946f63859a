package words

import (
	"fmt"
	"math"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/quantity"
	"maltwright/sim/visits"
)

// Noted says in a line what a reading comes to and what is next.
func (h House) Noted(r noted.Result) string {
	return Safe(Joined("; ", h.Reading(r), h.coming(r)))
}

// Reading says what a reading comes to, without what is next.
func (h House) Reading(r noted.Result) string {
	said := strings.Join(h.reading(r), ", ")
	if r.Passed != nil {
		said = Joined("; ", said, h.Passed(*r.Passed))
	}
	switch {
	case r.Doubt != nil && !r.Doubt.Bare(): // it is the number that is asked about
	case r.Short != nil:
		said = Joined("; ", said, Short(*r.Short))
	case r.Apart != nil && r.Doubt == nil:
		said = Joined("; ", said, Apart(*r.Apart))
	}
	if r.Hot != nil {
		said = Joined("; ", said, h.HotBed(*r.Hot))
	}
	return Safe(said)
}

// reading says what was read beside what is forecast.
func (h House) reading(r noted.Result) (list []string) {
	if m := r.Moisture; m != nil {
		list = append(list, "moisture "+besides(m, Percent))
	}
	if r.Yield != nil {
		list = append(list, "yield "+Percent(*r.Yield))
	}
	if c := r.Chit; c != nil {
		list = append(list, "chitted "+besides(c, Part))
	}
	if a := r.Acrospire; a != nil {
		list = append(list, "mean acrospire "+besides(a, func(n answer.Number) string { return fmt.Sprintf("%.2f", max(n, 0)) }))
	}
	if r.Ahead != nil && math.Abs(float64(*r.Ahead)) >= 3600 {
		side := "ahead of"
		if *r.Ahead < 0 {
			side = "behind"
		}
		list = append(list, fmt.Sprintf("%s %s the forecast", Lasting(math.Round(math.Abs(float64(*r.Ahead))/3600)*3600), side))
	}
	if u := r.Rub; u != nil {
		list = append(list, "rub "+besides(u, func(word string) string { return word }))
	}
	if t := r.Temperature; t != nil {
		list = append(list, h.beheld(t, r.Held))
	}
	return list
}

// besides writes what was read, and the forecast behind it: 28.4 % (forecast 28.7 %).
func besides[T any](b *noted.Beside[T], write func(T) string) string {
	said := write(b.Read)
	if b.Forecast != nil {
		said += " (forecast " + write(*b.Forecast) + ")"
	}
	return said
}

// beheld says whether a temperature lies within what the process holds or, where it holds
// nothing there, what is forecast.
func (h House) beheld(t *noted.Beside[answer.Celsius], held *answer.Temperature) string {
	if held == nil {
		return besides(t, h.Shown)
	}
	low, high := min(held.From, held.To), max(held.From, held.To)
	shown := func(c answer.Celsius) float64 { return roundTo(h.Temperature(float64(c)), h.Fahrenheit) }
	asked := h.Setting(&answer.Temperature{Place: held.Place, From: low, To: high})
	off := func(by float64, side string) string {
		return fmt.Sprintf("%s %s %s the setting: %s", quantity.Rounded(by, 1), h.Degree(), side, asked)
	}
	switch read := shown(t.Read); {
	case low == high && math.Abs(float64(t.Read-low)) <= dialOff:
	case read > shown(high):
		return off(read-shown(high), "above")
	case read < shown(low):
		return off(shown(low)-read, "below")
	}
	return "within the setting: " + asked
}

// dialOff is how far a thermometer of a house is usually off, K (common practice): by so much what
// is held at one temperature may be read otherwise.
const dialOff = 0.8

// roundTo rounds a temperature as a thermometer shows it.
func roundTo(v float64, fahrenheit bool) float64 {
	if fahrenheit {
		return math.Round(v)
	}
	return math.Round(10*v) / 10
}

// coming says what begins now, and what is next.
func (h House) coming(r noted.Result) string {
	switch {
	case r.Failed:
		return "the next step is not known, because the forecast breaks off; maltwright forecast says where"
	case r.Over:
		return "nothing is left to do"
	}
	var list []string
	if r.Due != nil {
		list = append(list, "now: "+h.Tasks(*r.Due))
	}
	if r.Next != nil {
		list = append(list, "next: "+h.Coming(*r.Next, r.At))
	}
	return strings.Join(list, "; ")
}

// Coming says what is due at a visit and when, seen from a time.
func (h House) Coming(v noted.Visit, now time.Time) string {
	at := OnDay(v.Time, now)
	first := v.Tasks[0]
	switch {
	case first.Kind == visits.Fill && v.Ended != "" && len(v.Tasks) == 1:
		return fmt.Sprintf("%s ends %s, then %s", v.Ended, at, first.Name)
	case first.Kind == visits.Drain && v.Ended != "":
		said := fmt.Sprintf("%s ends %s: drain, weigh", v.Ended, at)
		if weight := OnScale(h, v.Weight, v.OnScale); known(float64(v.Weight)) {
			said += " (" + weight + " expected)"
		}
		return said
	case first.Kind == visits.EndRest && v.Ended != "" && len(v.Tasks) == 1:
		return fmt.Sprintf("%s ends %s", v.Ended, at)
	case first.Kind.Again() && len(v.Tasks) == 1:
		return h.Say(first.Words) + " " + at
	}
	return at + " " + h.Tasks(v)
}

// Tasks says what is to do at a visit; what is asked stands last.
func (h House) Tasks(v noted.Visit) string {
	var list, asked []string
	for _, k := range v.Tasks {
		if k.Kind == visits.Look {
			asked = append(asked, h.Say(k.Words))
		} else {
			list = append(list, h.Say(k.Words))
		}
	}
	return strings.Join(append(list, asked...), "; ")
}

// OnDay says when something is, seen from a time: at 23:00, on Sat at 06:30, on Mon 16 Mar at 06:30.
func OnDay(at, now time.Time) string {
	at = at.In(now.Location())
	clock := "at " + at.Format("15:04")
	switch days := day(at).Sub(day(now)).Hours() / 24; {
	case days == 0:
		return clock
	case days > 0 && days < 7:
		return at.Format("on Mon ") + clock
	}
	return at.Format("on Mon 2 Jan ") + clock
}

// day is the day of a time, apart from the change of the clocks.
func day(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
}

// DoubtOf says why a weight may not be right, and what to do: weight is it as it was written.
func (h House) DoubtOf(d noted.Doubt, weight string) (message, hint string) {
	likely := span(Weighed(h, d.From), Weighed(h, d.To)) + " is likely"
	switch {
	case d.Lighter != nil:
		message = fmt.Sprintf("%s is less than the raw grain, %s; %s", weight, d.Lighter, likely)
	case d.Wet > 0:
		message = fmt.Sprintf("%s would be %s moisture; %s", weight, Percent(d.Wet), likely)
	default:
		message = fmt.Sprintf("%s is less than the dry matter of the batch; %s", weight, likely)
	}
	switch {
	case d.Late != nil:
		return message, fmt.Sprintf("it is what the forecast has at the end of %s, at %s: %s", d.Late.Step, d.Late.Ended.Format("15:04 on Mon 2 Jan"), Weighed(h, d.Late.Weight))
	case d.Earlier != nil:
		return message, fmt.Sprintf("it is as the forecast of the process alone has it, and %s of %s is not: look at that line first", d.Earlier.Weight, d.Earlier.When().Format("Mon 15:04"))
	case d.Along != nil:
		return message, fmt.Sprintf("it is %s more than forecast: was %q on the scale? If so, weigh it empty, and write that into its block behind weighs", Weighed(h, d.More), d.Along.Name)
	case d.Meant == nil:
		return message, "look at the number, its unit, and the vessel on the scale"
	}
	return message, meanings[d.Meant.Kind](h, *d.Meant)
}

// span writes from one figure to another, their unit once where it is one: 7.13 to 7.62 kg.
func span(from, to string) string {
	number, unit, _ := strings.Cut(from, " ")
	if _, other, _ := strings.Cut(to, " "); other == unit && !strings.Contains(unit, " ") {
		from = number
	}
	return from + " to " + to
}

var meanings = map[noted.MeantKind]func(House, noted.Meant) string{
	noted.Gross: func(h House, m noted.Meant) string {
		return fmt.Sprintf("it fits as gross weight in %q, which weighs %s: %s of grain", m.Holder.Name, m.Holder.Weighs, Weighed(h, m.Net))
	},
	noted.Net: func(h House, m noted.Meant) string {
		return fmt.Sprintf("it fits without %q, which weighs %s", m.Holder.Name, m.Holder.Weighs)
	},
	noted.Unit: func(h House, m noted.Meant) string {
		return fmt.Sprintf("it fits as %s: %s of grain", m.Text, Weighed(h, m.Net))
	},
	noted.Point: func(h House, m noted.Meant) string {
		return fmt.Sprintf("it fits as %s, with the decimal point moved", m.Text)
	},
	noted.Swapped: func(h House, m noted.Meant) string {
		return fmt.Sprintf("it fits as %s, with two digits swapped", m.Text)
	},
}

// Expected is what a scale shows of a batch, as a line of a record would have it: 7.38 kg, or
// 8.37 kg in "blue tub" where the grain lies in what says what it weighs.
func Expected(h House, kg answer.Kilograms, on outlook.OnScale[answer.Kilograms]) string {
	if on.Gross != nil {
		return Weighed(h, on.Gross.Weight) + " " + Holding(on.Gross.In)
	}
	return Weighed(h, kg)
}
