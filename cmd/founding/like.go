package founding

import "slices"

// starters are the answers of houses that can be begun with, by their name. What is left
// out is usual.
var starters = map[string]Answers{
	"home-oven":       {"grows": Tray, "dryer 1": Oven},
	"home-dehydrator": {"grows": Tray, "dryer 1": Dehydrator, "dryer 2": Oven},
	"floor":           {"house": "Barn", "charge": "90 kg", "grows": Floor, "dryer 1": FireKiln},
	"box":             {"house": "Mill", "charge": "90 kg", "grows": Box, "dryer 1": BoxKiln},
	"drum":            {"house": "Yard", "charge": "60 kg", "grows": Drum, "dryer 1": TrayKiln},
}

// inPounds are the charges of the starters in lb.
var inPounds = map[string]string{"90 kg": "200 lb", "60 kg": "120 lb"}

// Likes lists the names of the starters.
func Likes() []string { return []string{"home-oven", "home-dehydrator", "floor", "box", "drum"} }

// Like gives the answers of a starter in one of the two units; false for a name that is none.
func Like(name, units string) (Answers, bool) {
	if !slices.Contains(Likes(), name) {
		return nil, false
	}
	a := Answers{"units": units}
	for k, v := range starters[name] {
		a[k] = v
		if less, ok := inPounds[v]; ok && units == Pounds {
			a[k] = less
		}
	}
	whole, _, ok := Completed(a, There{})
	return whole, ok
}
