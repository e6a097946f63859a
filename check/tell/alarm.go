package tell

import (
	"regexp"
	"strings"
)

// Alarm is a danger that free words of a record tell of.
type Alarm struct {
	Kind   AlarmKind
	Word   string // as it is written
	Means  string // why it is a danger
	Do     string // what to do, before anything else
	People bool   // people can be hurt; else only the grain is
}

// AlarmKind says what the danger is.
type AlarmKind string

// The dangers that are known by their words.
const (
	AlarmErgot AlarmKind = "ergot"
	AlarmGas   AlarmKind = "gas"
	AlarmSmoke AlarmKind = "smoke"
	AlarmMould AlarmKind = "mould"
	AlarmSour  AlarmKind = "sour"
	AlarmPests AlarmKind = "pests"
)

// alarms are the words of each danger, the worst first, and what to do (common practice; of gas
// and smoke that of fire services). British and American spellings stand side by side.
var alarms = []struct {
	Alarm
	words *regexp.Regexp
}{
	{Alarm{Kind: AlarmGas, People: true, Means: "carbon monoxide and carbon dioxide kill, and have no smell",
		Do: "leave at once with everybody, open doors and windows on the way, and get help from outside; do not go back in for the malt"},
		wordsOf(`carbon monoxide|(?:co2?|co₂|gas|carbon dioxide)[ -]+(?:alarm|alert|detector|warning|warner)s?|(?:alarm|detector)s? (?:for|of) (?:co2?|co₂|gas|carbon dioxide)|(?:felt |feel |feeling |got )?dizzy|(?:nearly |almost )?fainted`)},
	{Alarm{Kind: AlarmSmoke, People: true, Means: "where it smokes it may burn, and smoke holds carbon monoxide, which has no smell",
		Do: "heat off if that is safe, leave, shut the door, and call the fire service; go back in only when the room is aired"},
		wordsOf(`smoke|smoking|smokes|smou?lder(?:s|ed|ing)?|on fire|caught fire|flames?`)},
	{Alarm{Kind: AlarmErgot, People: true, Means: "ergot is a poison, and neither kiln nor mash destroys it",
		Do: "do not use this grain, not as feed either, and do not taste it; wash your hands"},
		wordsOf(`ergots?|ergoty|black horns?|sclerotia|sclerotium`)},
	{Alarm{Kind: AlarmMould, People: true, Means: "mould leaves poisons, and neither kiln nor mash destroys them",
		Do: "throw the grain away, do not breathe the dust, do not taste it; clean the vessel before the next batch"},
		wordsOf(`mou?ld|mou?lds|mou?ldy|mou?lded|mou?lding|mildew|mildewed|mildewy|fungus|fungi`)},
	{Alarm{Kind: AlarmSour, Means: "it stands without air and goes bad",
		Do: "drain it, rinse it with fresh cold water and air it at once; if the smell or the slime stays, throw it away, and taste none of it"},
		wordsOf(`sour|soured|souring|slim[ey]|slimey|slimy|rotten|rotting|rotted|rot|rots|putrid|vinegar|vinegary|foul|stinks?|stinking|stench`)},
	{Alarm{Kind: AlarmPests, Means: "they go on into other grain and malt, and leave dirt and moisture",
		Do: "keep this grain away from all other, sieve it or throw it away, and clean the place before anything else goes into it"},
		wordsOf(`pests?|weevils?|(?:grain|flour) (?:beetle|borer|moth|mite)s?|(?:mouse|mice|rat|rodent)[ -]droppings|rodents?`)},
}

// AlarmOf is what there is to say of a danger of a kind.
func AlarmOf(kind AlarmKind) (found Alarm) {
	for _, a := range alarms {
		if a.Kind == kind {
			found = a.Alarm
		}
	}
	return found
}

func wordsOf(list string) *regexp.Regexp { return regexp.MustCompile(`(?i)\b(?:` + list + `)\b`) }

var (
	// denied is what stands before a word that is said not to be there; unsure is what looks so and is not.
	denied = regexp.MustCompile(`(?i)\b(?:no|not|never|without|neither|nor|none|nothing|free (?:of|from)|isn['’]?t|wasn['’]?t|aren['’]?t|doesn['’]?t|didn['’]?t)\b`)
	unsure = regexp.MustCompile(`(?i)\b(?:not|no|isn['’]?t) (?:only|just|sure|certain|known|doubt|idea|longer free)\b|\bn['’]?t (?:know|tell|sure|certain)\b|\bnot (?:know|tell)\b`)
	// after is what says so behind the word.
	after = regexp.MustCompile(`(?i)^(?:[\s:,?-]*free\b|[\s:,?-]*(?:is |was |are |were |found |seen )?(?:none|no|not (?:seen|found|there|any)|nothing|absent)\b(?:[^\w\s]|\s*$|\s+(?:seen|found|there|yet)\b|\s*$))`)
	// parts are where one thing that is said ends; what is denied goes on over a list of such words alone.
	parts  = regexp.MustCompile(`(?i)[.;,:!?()]+|\b(?:but|though|although|yet it|however|then)\b`)
	goesOn = regexp.MustCompile(`(?i)^\s*(?:$|[,.;!]|(?:or|nor|and)\b)`)
	links  = regexp.MustCompile(`(?i)\b(?:or|and|nor|any|smell|of)\b|\W+`)
)

// deniedWithin is how many words stand at the most between a no and what it denies.
const deniedWithin = 5

// Alarms lists the dangers that free words tell of, the worst first, each once. What the words say
// is not there is none: no mould, mould-free, ergot none.
func Alarms(text string) (list []Alarm) {
	for _, a := range alarms {
		for _, at := range a.words.FindAllStringIndex(text, -1) {
			if isDenied(text[:at[0]], goesOn.MatchString(text[at[1]:])) || after.MatchString(text[at[1]:]) {
				continue
			}
			found := a.Alarm
			found.Word = strings.ToLower(text[at[0]:at[1]])
			list = append(list, found)
			break
		}
	}
	return list
}

// isDenied tells whether words end in what denies the next one; so does the head of a list that the
// next one is of: no mould, slime or rot.
func isDenied(before string, listed bool) bool {
	said := before
	for {
		cuts := parts.FindAllStringIndex(said, -1)
		if len(cuts) == 0 {
			return denies(said)
		}
		last := cuts[len(cuts)-1]
		piece := said[last[1]:]
		if denies(piece) {
			return true
		}
		said = said[:last[0]]
		if !listed || before[last[0]:last[1]] != "," || !onlyNames(piece) || !endsInName(said) {
			return false
		}
	}
}

// onlyNames tells whether a piece of a list holds nothing but names of dangers.
func onlyNames(piece string) bool {
	for _, a := range alarms {
		piece = a.words.ReplaceAllString(piece, " ")
	}
	return links.ReplaceAllString(piece, "") == ""
}

func endsInName(piece string) bool {
	words := strings.Fields(piece)
	return len(words) > 0 && onlyNames(words[len(words)-1])
}

func denies(piece string) bool {
	at := denied.FindAllStringIndex(piece, -1)
	if len(at) == 0 || unsure.MatchString(piece) {
		return false
	}
	return len(strings.Fields(piece[at[len(at)-1][1]:])) <= deniedWithin
}
