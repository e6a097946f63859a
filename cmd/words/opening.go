package words

import (
	"strings"

	"maltwright/cmd/answer/noted"
)

// Opening says what to have ready and what comes first in a batch that was just begun, a line each.
func (h House) Opening(o noted.Opening) (lines []string) {
	lines = append(lines, h.Ready(o.Have))
	if o.Next != nil {
		lines = append(lines, Safe("first: "+h.Coming(*o.Next, o.Began)))
	}
	return lines
}

// Ready says what to have ready.
func (h House) Ready(r noted.Have) string {
	return Safe("have ready: " + strings.Join(h.ready(r), ", "))
}

func (h House) ready(r noted.Have) (list []string) {
	grain := "the grain"
	if r.Charge != nil {
		grain = r.Charge.String()
		for i, lot := range r.Lots {
			grain += map[bool]string{true: " of ", false: " and "}[i == 0] + `"` + lot + `"`
		}
	}
	list = append(list, grain)
	if r.Bag != nil {
		list = append(list, "the marked bag with "+r.Bag.String()+" of it")
	}
	if r.In != "" {
		list = append(list, `"`+r.In+`"`)
	}
	if r.Water != nil {
		water := h.medium(r.Water)
		if r.Drawn > 0 {
			water += " (" + h.Water(float64(r.Drawn)) + " for all soaks)"
		}
		list = append(list, water)
	}
	scale := "a scale"
	if r.Scale != "" {
		scale = `the scale "` + r.Scale + `"`
	}
	return append(list, scale, "a thermometer")
}

// FirstLine is the first line to note in a batch, with the weight that is forecast.
func (h House) FirstLine(f noted.First) string {
	if f.Bag != nil {
		return Safe("weighed bag " + Bag(h, *f.Bag) + " after " + f.Step)
	}
	return Safe("weighed " + Expected(h, f.Weight, f.OnScale) + " after " + f.Step)
}

// FirstWeight is that weight alone.
func (h House) FirstWeight(f noted.First) string {
	if f.Bag != nil {
		return Bag(h, *f.Bag)
	}
	if f.Gross != nil {
		return Weighed(h, f.Gross.Weight)
	}
	return Weighed(h, f.Weight)
}
