package founding

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// named is a thing and the key under which it is asked for.
type named struct{ key, name string }

// said is an answer that is a name, or what is usual.
func (a asking) said(key, usual string) string {
	if a.has(key) {
		return a.Answers[key]
	}
	return usual
}

func (a asking) lotCalled() string   { return a.said("lot", a.lotName()) }
func (a asking) placeCalled() string { return a.said("house", "Home") }

// vesselNames names the vessels: bucket, or bucket 1 and bucket 2.
func (a asking) vesselNames() (list []named) {
	if a.House != nil {
		return []named{{"vessel 1", a.said("vessel", unused("bucket", namesIn(a.House, AddVessel)))}}
	}
	for n := 1; n <= mostOf; n++ {
		key := fmt.Sprintf("vessel %d", n)
		if n > 1 && !a.has(key+" holds") {
			break
		}
		list = append(list, named{key, "bucket"})
		switch size := a.si(key+" holds", usualRoom(a.kilograms())); {
		case size > 0.3:
			list[n-1].name = "tank"
		case size > 0.06:
			list[n-1].name = "tub"
		}
	}
	return numbered(list)
}

// usualRoom is the volume of a vessel for so many kg of grain, m³ (common practice: 2.2 l for
// each kg at the least).
func usualRoom(kg float64) float64 { return max(0.010, 0.004*kg) }

// numbered puts numbers behind names that stand more than once.
func numbered(list []named) []named {
	all, so := map[string]int{}, map[string]int{}
	for _, n := range list {
		all[n.name]++
	}
	for i, n := range list {
		if all[n.name] > 1 {
			so[n.name]++
			list[i].name = fmt.Sprintf("%s %d", n.name, so[n.name])
		}
	}
	return list
}

func (a asking) growsOn() string { return a.said("grows", Tray) }

func (a asking) floorCalled() string {
	if a.House != nil {
		return a.said("floor", unused("tray", namesIn(a.House, AddFloor)))
	}
	return a.growsOn()
}

// dryerNames names the dryers in their order.
func (a asking) dryerNames() (list []named) {
	if a.House != nil {
		return []named{{"dryer 1", a.said("kiln", unused("kiln", namesIn(a.House, AddDryer)))}}
	}
	for n := 1; n <= mostOf; n++ {
		key := fmt.Sprintf("dryer %d", n)
		if n > 1 && !a.has(key) {
			break
		}
		list = append(list, named{key, a.dryerKind(key)})
	}
	return numbered(list)
}

// reserved are names that a file cannot have everywhere.
var reserved = regexp.MustCompile(`^(con|prn|aux|nul|com[0-9]|lpt[0-9])$`)

// fileName makes the name of a file of a name, home-pale.malt, that none of the taken ones is.
func fileName(name string, taken []string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	stem := strings.TrimSuffix(b.String(), "-")
	if stem == "" || reserved.MatchString(stem) {
		stem = strings.TrimSuffix("house-"+stem, "-")
	}
	file := stem + ".malt"
	for n := 2; slices.ContainsFunc(taken, func(t string) bool { return strings.EqualFold(t, file) }); n++ {
		file = fmt.Sprintf("%s-%d.malt", stem, n)
	}
	return file
}
