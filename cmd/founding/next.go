package founding

import (
	"strings"

	"maltwright/lang/model"
)

// What may be added to a house that is there.
const (
	AddProcess = "process"
	AddGrain   = "grain"
	AddDryer   = "dryer"
	AddVessel  = "vessel"
	AddFloor   = "growing place"
)

// mostOf is how many vessels and how many dryers in a row are asked for.
const mostOf = 4

// asking is what the questions depend on.
type asking struct {
	Answers
	There
	system
}

func asked(a Answers, there There) asking {
	s := system{british: a["units"] == Pounds}
	if there.House != nil {
		s.british = there.fahrenheit()
	}
	return asking{Answers: a, There: there, system: s}
}

// has tells whether an answer says something.
func (a asking) has(key string) bool {
	v := a.Answers[key]
	return v != "" && v != DontKnow && v != None
}

// adds tells whether a thing is asked for: all of them of a new house.
func (a asking) adds(what string) bool {
	if a.House == nil {
		return true
	}
	add := a.Answers["add"]
	if add == DontKnow {
		add = a.toAdd()[0].Word
	}
	return add == what
}

// Next gives the first question that is open, and false where there is none: then Write can
// write. What was answered is asked again when its answer is deleted.
func Next(a Answers, there There) (Question, bool) {
	with := asked(a, there)
	for q := range with.all {
		if a[q.Key] == "" {
			return q, true
		}
	}
	return Question{}, false
}

// Asked gives the questions that the answers lead through, those that are answered and the
// next one.
func Asked(a Answers, there There) (list []Question) {
	with := asked(a, there)
	for q := range with.all {
		list = append(list, q)
		if a[q.Key] == "" {
			break
		}
	}
	return list
}

// all gives the questions in their order. Which ones there are may depend on the answers so
// far, so that it is meant to be left at the first that is open.
func (a asking) all(yield func(Question) bool) {
	for _, part := range []func(asking) func(func(Question) bool){asking.begin, asking.lot, asking.amount, asking.vessels, asking.place, asking.surroundings, asking.dryers, asking.making} {
		for q := range part(a) {
			if !yield(q) {
				return
			}
		}
	}
}

// these are questions that stand whatever the answers to one another.
func these(list ...Question) func(func(Question) bool) {
	return func(yield func(Question) bool) {
		for _, q := range list {
			if !yield(q) {
				return
			}
		}
	}
}

// namesIn names what a house holds of a kind.
func namesIn(h *model.House, of string) (names []string) {
	if h == nil {
		return nil
	}
	switch of {
	case AddGrain:
		for _, x := range h.Grains {
			names = append(names, x.Name)
		}
	case AddVessel:
		for _, x := range h.Vessels {
			names = append(names, x.Name)
		}
	case AddFloor:
		for _, x := range h.Floors {
			names = append(names, x.Name)
		}
	case AddDryer:
		for _, x := range h.Kilns {
			names = append(names, x.Name)
		}
	case AddProcess:
		for _, x := range h.Processes {
			names = append(names, x.Name)
		}
	default:
		for _, x := range h.Sites {
			names = append(names, x.Name)
		}
	}
	return names
}

// choices makes choices of words.
func choices(words ...string) (list []Choice) {
	for _, w := range words {
		word, says, _ := strings.Cut(w, ": ")
		list = append(list, Choice{word, says})
	}
	return list
}
