package invent

import (
	"strings"

	"maltwright/lang/quantity"
)

// typed are other spellings that people type for the unit of a dimension.
var typed = map[quantity.Dimension][]string{
	quantity.Temperature: {"°c", " ° C", " deg C", " degrees C"}, quantity.Time: {" hours", "h"}, quantity.Area: {" sq m", " square metres"},
	quantity.Volume: {" litres"}, quantity.Share: {"%", " per cent"},
}

// either is the canonical spelling, or now and then one of the others.
func (w *writer) either(canonical string, others ...string) string {
	if len(others) == 0 || w.hand == nil || w.hand.IntN(4) > 0 {
		return canonical
	}
	return others[w.hand.IntN(len(others))]
}

// number writes four figures, now and then as they are typed: .5, ½, 10½.
func (w *writer) number(v float64) string {
	canonical := number(v)
	var others []string
	sign := ""
	if rest, ok := strings.CutPrefix(canonical, "-"); ok {
		sign, canonical = "-", rest
	}
	whole, decimals, _ := strings.Cut(canonical, ".")
	if whole == "0" && decimals != "" {
		others, whole = append(others, sign+"."+decimals), ""
	}
	if f := map[string]string{"5": "½", "25": "¼", "75": "¾"}[decimals]; f != "" {
		others = append(others, sign+whole+f)
	}
	return w.either(sign+canonical, others...)
}
