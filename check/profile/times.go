package profile

import "maltwright/lang/vocabulary"

// Times is how long a step lasts, or how long it is from one work to the next, hours.
// What lies outside Odd is taken for a slip of the pen; between the two it may be meant.
type Times struct {
	Usual, Odd Band
}

// The times of a step by what it does. Where nothing else stands beside them they are
// common practice; the odd ends are ours, and lie so far out that no schedule comes
// near them.
var times = map[string]Times{
	vocabulary.VerbSoak: {Band{1, 10}, Band{1. / 6, 36}}, // a rinse of a quarter of an hour is used; aerated soaks have been a day and more
	vocabulary.VerbRest: {Band{4, 24}, Band{1. / 3, 36}}, // 19 and 20 h in MEBAK micromalting

	vocabulary.VerbAerate: {Band{1. / 6, 4}, Band{1. / 20, 12}}, // from air to air: common practice, 5 to 20 min in each half hour to two hours
	"aerate's air":        {Band{1. / 60, 1}, Band{1. / 120, 4}},

	vocabulary.VerbHold:     {Band{12, 7 * 24}, Band{1, 20 * 24}},
	vocabulary.VerbTurn:     {Band{6, 12}, Band{1. / 3, 48}}, // a drum turns once in 25 to 45 min
	vocabulary.VerbSprinkle: {Band{8, 24}, Band{1, 60}},
	vocabulary.VerbAir:      {Band{0.25, 6}, Band{1. / 30, 24}}, // of a fan by the clock: common practice
	vocabulary.VerbWither:   {Band{6, 48}, Band{1, 5 * 24}},
	"wither's turn":         {Band{3, 12}, Band{1. / 3, 24}},

	vocabulary.VerbDry:   {Band{1, 24}, Band{1. / 6, 5 * 24}}, // steps of 1 h in MEBAK micromalting
	"rise":               {Band{1, 12}, Band{1. / 6, 36}},
	vocabulary.VerbStew:  {Band{1, 24}, Band{1. / 3, 36}},
	vocabulary.VerbCure:  {Band{2, 8}, Band{0.5, 24}},
	vocabulary.VerbRoast: {Band{0.25, 3}, Band{1. / 12, 12}},
	vocabulary.VerbStir:  {Band{0.5, 6}, Band{1. / 20, 12}}, // a roast is stirred every 5 to 10 min
	"wait":               {Band{0, 24}, Band{0, 4 * 24}},    // at a gate

	vocabulary.VerbDeculm: {Band{1, 24}, Band{0.5, 100 * 365 * 24}}, // deculm-late tells of the long ones
	vocabulary.VerbStore:  {Band{14 * 24, 365 * 24}, Band{24, 3 * 365 * 24}},
}

// roasted are the cures that give colour in minutes (published home practice: amber 45
// to 50 min; brown malt until the cut kernel is buff).
var roasted = Times{Band{0.5, 4}, Band{1. / 12, 24}}

// sugared is the stewing of caramel malt (published home practice: 90 min).
var sugared = Times{Band{1, 4}, Band{1. / 3, 24}}

// TimesOf gives the times of a step by the word that begins it.
func (p Profile) TimesOf(word string) Times {
	t := times[word]
	switch {
	case word == vocabulary.VerbSoak:
		t.Usual.High = max(t.Usual.High, p.SoakLong)
		t.Odd.High = max(t.Odd.High, p.SoakLost)
	case word == vocabulary.VerbGerminate:
		d := p.GrowDays()
		return Times{Band{24 * d.Low, 24 * d.High}, Band{12, 1.5 * 24 * p.MostDays}}
	case word == vocabulary.VerbHold:
		t.Odd.High = max(t.Odd.High, 1.5*24*p.MostDays)
	case word == vocabulary.VerbCure && p.Malt.Cure.High > 110:
		return roasted
	case word == vocabulary.VerbStew && p.Malt.Stewed:
		return sugared
	}
	return t
}
