package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// likelyUnits are the units that are taken for one another, in the order of how
// likely that is.
var likelyUnits = map[string][]string{
	"°C": {"°F"}, "°F": {"°C"}, "K": {"°C"},
	"mg": {"g"}, "g": {"kg"}, "kg": {"g", "t"}, "t": {"kg"}, "lb": {"oz", "kg"}, "oz": {"lb"},
	"cm2": {"m2"}, "m2": {"cm2"}, "ft2": {"m2"}, "in2": {"ft2"},
	"ml": {"l"}, "l": {"ml"}, "hl": {"l"}, "m3": {"l"},
	"mm": {"m"}, "cm": {"m"}, "m": {"ft"},
	"m3/s": {"m3/h"}, "l/s": {"m3/h"}, "l/min": {"m3/h"},
	"W": {"kW"}, "kW": {"W"}, "s": {"min", "h"}, "min": {"h"}, "h": {"min", "days"}, "days": {"h"},
	"°C/h": {"°F/h"}, "°C/min": {"°C/h"},
}

// slipOf says in the hint of a finding which slip of the pen would explain a value at a place that
// lies outside a band: another unit, or the point in another place. Where what stands there is the
// value alone it offers to write that. It is false where no slip does, or the value has more than
// one part.
func slipOf(f *finding.Finding, place source.Place, r, band quantity.Range) bool {
	for _, unit := range likelyUnits[r.High.Unit()] {
		if meant, ok := inUnit(r, unit); ok && within(band, meant) {
			f.Hint = fmt.Sprintf("if %s was meant, write it: %s", unit, meant)
			if unit == "°C" || unit == "°F" {
				f.Hint += " is " + inOther(r, meant)
			}
			f.Offers = slipOffers(place, r, meant.String())
			return true
		}
	}
	if r.High.Dimension == quantity.Temperature {
		return false
	}
	for _, shift := range []int{1, -1, 2, -2} {
		if meant, ok := pointMoved(r, shift); ok && within(band, meant) {
			f.Hint = fmt.Sprintf("look at the decimal point: it may be %s", meant)
			f.Offers = slipOffers(place, r, meant.String())
			return true
		}
	}
	return false
}

// slipOffers offers to write texts for a value, where it stands alone at the end of its place.
func slipOffers(place source.Place, written quantity.Range, meant ...string) (list []finding.Offer) {
	if !place.Known() {
		return nil
	}
	before, alone := strings.CutSuffix(place.Text(), written.String())
	if last := strings.TrimRight(before, " "); !alone || before != "" && (last == before || strings.HasSuffix(last, vocabulary.To) || strings.ContainsAny(last, "0123456789-–—")) {
		return nil // another end of a range, or written otherwise
	}
	place.Start += len(before)
	for _, text := range meant {
		list = append(list, finding.Offer{Says: text, Edits: []finding.Edit{{Place: place, New: text}}})
	}
	return list
}

// inOther writes what a temperature that was meant in another unit is in the one that
// was written.
func inOther(written, meant quantity.Range) string {
	low, high := written.Low.Like(meant.Low.SI), written.High.Like(meant.High.SI)
	if low == high {
		return low
	}
	return strings.TrimSuffix(low, " "+written.Low.Unit()) + " to " + high
}

// inUnit reads the numbers of a range with another unit.
func inUnit(r quantity.Range, unit string) (quantity.Range, bool) {
	low, okLow := numberOf(r.Low)
	high, okHigh := numberOf(r.High)
	if !okLow || !okHigh {
		return r, false
	}
	return between(low, high, unit)
}

// pointMoved reads the numbers of a range with the point so many places further right.
func pointMoved(r quantity.Range, places int) (quantity.Range, bool) {
	low, okLow := numberOf(r.Low)
	high, okHigh := numberOf(r.High)
	if !okLow || !okHigh {
		return r, false
	}
	return between(movePoint(low, places), movePoint(high, places), r.High.Unit())
}

func between(low, high, unit string) (quantity.Range, bool) {
	made, err := quantity.Between([]quantity.Part{{Number: low, Unit: unit}}, []quantity.Part{{Number: high, Unit: unit}})
	return made, err == nil
}

// numberOf is the number of a quantity of one part in decimals, as it is written.
func numberOf(q quantity.Quantity) (string, bool) {
	number := strings.TrimSuffix(q.String(), " "+q.Unit())
	plain := strings.TrimLeft(number, "-0123456789.")
	return number, plain == "" && strings.Trim(number, "-.") != ""
}

// movePoint moves the point of a decimal number to the right, or to the left.
func movePoint(number string, places int) string {
	sign := ""
	if rest, ok := strings.CutPrefix(number, "-"); ok {
		sign, number = "-", rest
	}
	whole, fraction, _ := strings.Cut(number, ".")
	digits := []byte(whole + fraction)
	at := len(whole) + places
	for at < 1 {
		digits, at = slices.Insert(digits, 0, '0'), at+1
	}
	for at > len(digits) {
		digits = append(digits, '0')
	}
	left, right := strings.TrimLeft(string(digits[:at]), "0"), strings.TrimRight(string(digits[at:]), "0")
	if left == "" {
		left = "0"
	}
	if right != "" {
		right = "." + right
	}
	return sign + left + right
}
