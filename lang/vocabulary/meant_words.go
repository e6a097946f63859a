package vocabulary

// synonyms are other words for choices, places and what is measured. Of what is only the
// nearest of those there are, sure is false.
var synonyms = []struct {
	written []string
	means   string
	sure    bool
}{
	{[]string{"steel", "iron", "aluminium", "aluminum", "tin", "sheet", "sheetmetal", "stainless"}, WallsMetal, true},
	{[]string{"timber", "plywood", "boards", "planks", "wooden"}, WallsWood, true},
	{[]string{"bricks", "brickwork", "masonry"}, WallsBrick, true},
	{[]string{"stones", "stonework", "granite", "sandstone"}, WallsStone, true},
	{[]string{"concrete", "cement", "limestone"}, WallsStone, false},
	{[]string{"block", "blocks", "clay", "adobe", "tile", "tiles", "firebrick"}, WallsBrick, false},
	{[]string{"insulated", "insulating"}, WithInsulation, true},
	{[]string{"turf"}, FiredPeat, true},
	{[]string{"logs", "chips", "pellets"}, FiredWood, true},
	{[]string{"propane", "butane", "lpg", "methane"}, FiredGas, true},
	{[]string{"diesel", "kerosene", "fueloil"}, FiredOil, true},
	{[]string{"electricity", "electrical", "mains", "electrically"}, FiredElectric, true},
	{[]string{"open", "opened"}, DoorAjar, true},
	{[]string{"recirculation", "recirculated", "recirculating", "recirculate", "returnair", "return"}, WithReturns, true},
	{[]string{"smoked", "smoking"}, WithSmoke, true},
	{[]string{"flow", "fan", "fans", "blower"}, WithAirflow, true},
	{[]string{"aeration", "aerated", "bubbler", "bubbles", "bubbling", "airstone", "pump"}, WithAir, true},
	{[]string{"air"}, WithAirflow, false},
	{[]string{"dried", "finished"}, MaltKilned, false},
	{[]string{"pils", "pilsen", "pilsener", "pilsners"}, "pilsner", true},
	{[]string{"paleale"}, "pale", true},
	{[]string{"base", "lager", "twori", "standard"}, "pilsner", false},
	{[]string{"distillers", "distiller", "whisky", "whiskey"}, "distilling", true},
	{[]string{"acidulated", "sour"}, "acid", true},
	{[]string{"oat"}, "oats", true},
	{[]string{"corn", "mais"}, "maize", false},
	{[]string{"floury", "mealy", "flour", "powdery"}, RubChalky, true},
	{[]string{"sticky", "doughy", "rubbery", "pasty"}, RubGummy, false},
	{[]string{"naturally", "gravity"}, DraughtNatural, true},
	{[]string{"forced", "blown", "fans"}, DraughtFan, true},
	{[]string{"mechanical", "mechanically", "turner", "motor", "machinery"}, ByMachine, true},

	{[]string{"false", "never", "none", "untreated", "not", "n", "nope"}, SaidNo, true},
	{[]string{"true", "y", "yeah", "treated"}, SaidYes, true},
	{[]string{"no", "nothing", "absent", "free", "nil", "zero", "clean", "negative"}, SaidNone, true},
	{[]string{"yes", "present", "some", "seen", "positive"}, SaidFound, true},
	{[]string{"unsure", "dontknow", "notknown", "na"}, SaidUnknown, true},

	{[]string{"mc", "moisturecontent", "watercontent", "moistness", "humidity", "moistures"}, MeasureMoisture, true},
	{[]string{"acrospires", "shoot", "shoots", "plumule"}, MeasureAcrospire, true},
	{[]string{"chitted", "chits", "chitting", "rootlet", "rootlets", "roots", "root", "sprouted", "sprouts"}, MeasureChit, true},
	{[]string{"mass", "wt", "weights"}, MeasureWeight, true},
	{[]string{"rubbed", "rubbing", "feel"}, MeasureRub, true},
	{[]string{"duration", "hours"}, MeasureTime, true},
	{[]string{"breakthrough", "thebreak"}, MeasureBreak, true},
	{[]string{"steepoutmoisture", "moistureatsteepout", "outofsteepmoisture"}, MeasureSteepOutMoisture, true},
	{[]string{"steepouttime", "steeptime", "steepingtime"}, MeasureSteepOutTime, true},
	{[]string{"endmoisture", "maltmoisture", "finishedmoisture", "finalmc"}, MeasureFinalMoisture, true},
	{[]string{"moisture", "mc", "moisturecontent"}, MeasureFinalMoisture, false},
	{[]string{"duration", "totalduration", "time", "overalltime"}, MeasureTotalTime, false},
	{[]string{"weight", "finalweight"}, MeasureMaltWeight, false},

	{[]string{"inlet", "supply", "airin", "incoming", "onair", "airinlet", "intake"}, PlaceAirOn, true},
	{[]string{"exhaust", "outlet", "airout", "offair", "outgoing"}, PlaceAirOff, true},
	{[]string{"grain", "kernel", "kernels", "product"}, PlaceMalt, true},
	{[]string{"dial", "thermostat"}, PlaceOven, true},
	{[]string{"piece", "pile", "heap", "grain"}, PlaceBed, true},
	{[]string{"ambient", "ambientair", "roomair"}, PlaceRoom, true},
}

// phrases are words for bounds and clause words. A bound is written for them only in front of a
// value, or right behind it.
var phrases = []Phrase{
	{"max", "at most", BoundPhrase}, {"maximum", "at most", BoundPhrase}, {"under", "below", BoundPhrase},
	{"less than", "below", BoundPhrase}, {"lower than", "below", BoundPhrase}, {"no longer than", "at most", BoundPhrase}, {"not longer than", "at most", BoundPhrase}, {"no more than", "at most", BoundPhrase}, {"not more than", "at most", BoundPhrase},
	{"up to", "at most", BoundPhrase}, {"not above", "at most", BoundPhrase}, {"not over", "at most", BoundPhrase}, {"not exceeding", "at most", BoundPhrase},
	{"or less", "at most", BoundPhrase}, {"or lower", "at most", BoundPhrase}, {"or below", "at most", BoundPhrase}, {"or under", "at most", BoundPhrase}, {"at the most", "at most", BoundPhrase}, {"at max", "at most", BoundPhrase}, {"at maximum", "at most", BoundPhrase},
	{"no higher than", "at most", BoundPhrase}, {"not higher than", "at most", BoundPhrase}, {"down to", "at most", BoundPhrase}, {"falls to", "at most", BoundPhrase}, {"drops to", "at most", BoundPhrase}, {"falls below", "below", BoundPhrase}, {"is below", "below", BoundPhrase},
	{"min", "at least", BoundPhrase}, {"minimum", "at least", BoundPhrase}, {"over", "above", BoundPhrase},
	{"more than", "above", BoundPhrase}, {"greater than", "above", BoundPhrase}, {"higher than", "above", BoundPhrase}, {"longer than", "above", BoundPhrase}, {"no less than", "at least", BoundPhrase}, {"not less than", "at least", BoundPhrase},
	{"not below", "at least", BoundPhrase}, {"not under", "at least", BoundPhrase}, {"or more", "at least", BoundPhrase}, {"or higher", "at least", BoundPhrase}, {"or above", "at least", BoundPhrase}, {"or over", "at least", BoundPhrase},
	{"at min", "at least", BoundPhrase}, {"at minimum", "at least", BoundPhrase}, {"no lower than", "at least", BoundPhrase}, {"not lower than", "at least", BoundPhrase}, {"rises to", "at least", BoundPhrase}, {"is above", "above", BoundPhrase},
	{"equals", "is", BoundPhrase}, {"equal to", "is", BoundPhrase}, {"exactly", "is", BoundPhrase},

	{"each", "every", ClausePhrase}, {"per", "every", ClausePhrase}, {"till", "until", ClausePhrase}, {"til", "until", ClausePhrase}, {"while", "when", ClausePhrase}, {"whenever", "when", ClausePhrase}, {"if", "when", ClausePhrase},
	{"incl", "in", ClausePhrase}, {"including", "in", ClausePhrase}, {"inclusive", "in", ClausePhrase}, {"during", "for", ClausePhrase}, {"lasting", "for", ClausePhrase}, {"using", "with", ClausePhrase}, {"into", "in", ClausePhrase}, {"inside", "in", ClausePhrase}, {"onto", "on", ClausePhrase}, {"upon", "on", ClausePhrase},
	{"out of", "of", ClausePhrase}, {"because of", "because", ClausePhrase}, {"reason", "because", ClausePhrase}, {"due to", "because", ClausePhrase}, {"since", "because", ClausePhrase},
}

// fillers add nothing to what stands beside them.
var fillers = []string{"a", "an", "the", "its", "is", "are", "be", "it", "about", "approx", "approximately", "around", "roughly", "circa", "ca", "some",
	"power", "curve", "height", "efficiency", "level", "value", "total", "time", "duration", "length", "volume", "area", "amount", "share", "then", "please",
	"temp", "temperature", "degrees", "set", "grain", "malt", "peat", "kernels", "corns", "them", "batch", "size", "of", "with", "at", "to", "for", "in", "dried", "yield", "content", "rate", "reading", "piece", "celsius", "fahrenheit", "pieces", "reason", "reaches", "hits", "gets", "water", "end", "after", "process", "vessel", "floor", "kiln", "site", "number"}

// idle are words that say nothing more in one statement, and may in others.
var idle = map[string][]string{
	"weighed": {"wet", "drained", "dripped", "dripping", "soaked", "net"},
	"sample":  {"wet", "raw"},
	VerbRest:  {"without water", "drained", "dry", "out of water", "with no water"},
}

// turning are words that say how often, or turn round what they stand beside.
var turning = []string{"no", "not", "never", "none", "without", "except", "unless", "minus", "and", "or", "but", "half", "double", "twice", "thrice", "once", "only",
	"daily", "hourly", "nightly", "weekly", "overnight", "every", "each", "per", "until", "other", "second", "third", "day", "days", "hour", "hours", "week", "night", "times", "least", "most", "above", "below", "any", "all", "yes",
	"per", "dry", "wet", "basis", "am", "pm", "noon", "midnight", "tomorrow", "today", "yesterday", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "twelve",
	"raw", "green", "untreated", "treated"}

var spans = map[string]string{"daily": "24 h", "hourly": "1 h", "weekly": "1 week", "day": "24 h", "hour": "1 h", "week": "1 week", "night": "24 h"}

var counts = map[string]int{"once": 1, "twice": 2, "thrice": 3, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "other": 2, "second": 2, "third": 3}

var ordinals = map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
	"1st": 1, "2nd": 2, "3rd": 3, "4th": 4, "5th": 5, "6th": 6, "7th": 7, "8th": 8}
