package read

import (
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// onlySlip names in the hint of a finding, and offers, the number that may have been meant by a reading that cannot be: with two
// digits the other way round, with the point a place or two elsewhere, or in the unit that is
// taken for the one written. Where more than two could be it is false, since none of them
// is likely. Of a temperature the point is moved by one place.
func onlySlip(f *finding.Finding, place source.Place, q quantity.Quantity, can func(si float64) bool) bool {
	number, ok := numberOf(q)
	if !ok || len(strings.Replace(number, ".", "", 1)) < 2 { // of one digit it may be anything
		return false
	}
	var found []string
	for _, s := range quantity.Slips(q) {
		far := max(s.Places, -s.Places)
		if far <= 2 && (far <= 1 || q.Dimension != quantity.Temperature) && can(s.SI) {
			found = append(found, s.Text)
		}
	}
	units := likelyUnits[q.Unit()]
	if q.Unit() == "kg" { // a scale shows the one or the other
		units = append([]string{"lb"}, units...)
	}
	for _, unit := range units {
		if other, err := quantity.Make(quantity.Part{Number: number, Unit: unit}); err == nil && can(other.SI) {
			found = append(found, other.String())
		}
	}
	if len(found) == 0 || len(found) > 2 {
		return false
	}
	f.Hint = "look at the digits, the point and the unit: it may be " + finding.Readings(found...)
	f.Offers = slipOffers(place, quantity.Range{Low: q, High: q}, found...)
	return true
}
