package main

import (
	"slices"
	"strings"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/write/man"
	"maltwright/lang/nearest"
)

// meant refuses a name that is that of no page but near to one. Words of the language are meant as they are.
func (m Man) meant(pages []man.Page) error {
	asked, names := strings.Join(m.Name, " "), []string{}
	for _, p := range pages {
		if name, below := strings.CutPrefix(p.Name, "maltwright-"); below {
			names = append(names, strings.ReplaceAll(name, "-", " "))
		}
	}
	if asked == "" || slices.Contains(names, asked) || len(reference.Of(asked)) > 0 {
		return nil
	}
	if near, ok := nearest.Word(asked, names); ok {
		return usage("there is no page of %s; did you mean %s?", asked, near)
	}
	return nil
}
