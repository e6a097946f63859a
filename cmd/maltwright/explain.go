package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
)

// Explain explains a rule or a word of the language from its own declaration.
type Explain struct {
	Name []string `arg:"" optional:"" help:"A rule (gate-not-reached), a word (soak), a measure (acrospire), or: rules, words, units."`
}

// Help is the longer help of the command.
func (Explain) Help() string {
	return `Examples:

  maltwright explain soak              a word of the language
  maltwright explain chalky            how something looks and feels
  maltwright explain "air-on"          where a temperature is taken
  maltwright explain gate-not-reached  a rule, by the name in brackets behind a finding
  maltwright explain units             every unit and how it may be spelt
  maltwright explain rules             every rule in a line
  maltwright explain words             every word in a line`
}

// overviews are the names that list many.
var overviews = map[string]func(text.Options) string{
	"words": func(o text.Options) string { return text.Overview(reference.Words(), o) },
	"rules": func(o text.Options) string { return text.Overview(reference.Rules(), o) },
	"units": func(o text.Options) string { return text.Units(reference.AllUnits(), o) },
}

// Run prints the explanation.
func (e Explain) Run(w *World) error {
	name := strings.Trim(strings.Join(e.Name, " "), "[]")
	if name == "" {
		name = "words"
	}
	o := text.Options{Width: w.Width, Colour: w.colour()}
	if write, ok := overviews[name]; ok {
		fmt.Fprint(w.Out, write(o))
		return nil
	}
	list := reference.Of(name)
	if len(list) > 0 {
		fmt.Fprint(w.Out, text.Entries(list, o))
		return nil
	}
	if meant, ok := reference.Meant(name); ok && asOneWord(meant, name) {
		fmt.Fprintf(w.Out, "%s is written %s here.\n\n", words.Safe(name), meant)
		fmt.Fprint(w.Out, text.Entries(reference.Of(meant), o))
		return nil
	}
	if other, ok := reference.Other(name); ok {
		fmt.Fprintf(w.Out, "%s is called %s here.\n\n", words.Safe(name), other)
		fmt.Fprint(w.Out, text.Entries(reference.Of(other), o))
		return nil
	}
	if meant, ok := reference.Meant(name, explainable()...); ok {
		return usage("nothing is called %q; did you mean %s?", name, meant)
	}
	return usage("nothing is called %q; see explain words, explain units and explain rules", name)
}

// explained tells whether explain knows a name as it stands.
func explained(name string) bool { return overviews[name] != nil || len(reference.Of(name)) > 0 }

// asOneWord tells whether two words are one but for blanks, hyphens, capitals or an s at the end.
func asOneWord(a, b string) bool {
	plain := strings.NewReplacer(" ", "", "-", "")
	return strings.TrimSuffix(strings.ToLower(plain.Replace(a)), "s") == strings.TrimSuffix(strings.ToLower(plain.Replace(b)), "s")
}

// explainable are the names of the overviews.
func explainable() []string { return slices.Sorted(maps.Keys(overviews)) }
