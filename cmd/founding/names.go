package founding

import (
	"fmt"
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
		switch size := a.si(key+" holds", 0.025); {
		case size > 0.3:
			list[n-1].name = "tank"
		case size > 0.06:
			list[n-1].name = "tub"
		}
	}
	return numbered(list)
}

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

// fileName makes the name of a file of a name: home-pale.malt.
func fileName(name string, taken []File) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r < 128 && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	stem := strings.TrimSuffix(b.String(), "-")
	if stem == "" {
		stem = "house"
	}
	file := stem + ".malt"
	for n := 2; isThere(file, taken); n++ {
		file = fmt.Sprintf("%s-%d.malt", stem, n)
	}
	return file
}

func isThere(name string, files []File) bool {
	for _, f := range files {
		if strings.EqualFold(f.Name, name) {
			return true
		}
	}
	return false
}
