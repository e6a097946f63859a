package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestThePreviewIsFoldedAtWords(t *testing.T) {
	text := "vessel \"bucket\" {\n  # the blue one that stands below the stairs of the cellar\n  holds    20 l  # usual; find it out: fill it from a jug\n}\n"
	for width, want := range map[int]string{
		80: text,
		40: "vessel \"bucket\" {\n  # the blue one that stands below the\n  # stairs of the cellar\n  holds 20 l # usual; find it out:\n      fill it from a jug\n}\n",
	} {
		f := founded{world: &World{Width: width}}
		assert.Equal(t, want, f.preview(text))
	}
}

func TestUnitsGoByTheCountryOfTheEnvironment(t *testing.T) {
	for name, c := range map[string]struct {
		env  map[string]string
		want string
	}{
		"nothing set":      {nil, "kg"},
		"Ohio":             {map[string]string{"LANG": "en_US.UTF-8"}, "lb"},
		"Poland":           {map[string]string{"LANG": "pl_PL.UTF-8"}, "kg"},
		"metres all alone": {map[string]string{"LANG": "en_US.UTF-8", "LC_MEASUREMENT": "de_DE.UTF-8"}, "kg"},
		"all of it":        {map[string]string{"LC_ALL": "en_US.UTF-8", "LC_MEASUREMENT": "de_DE.UTF-8"}, "lb"},
	} {
		assert.Equal(t, c.want, usualUnits(func(key string) string { return c.env[key] }), name)
	}
}
