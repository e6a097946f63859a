package check

import (
	"strings"

	"maltwright/lang/finding"
)

// A kind is a slip that a maltster can make: of the hand, of the unit, of the copied
// line, of the misunderstood word. Kinds are never dropped: one that is missed stands
// in testdata/mutation.txt by its name until it is caught.
type kind struct {
	name  string
	do    change
	fits  string           // the rules that name this slip, or what comes of it
	least finding.Severity // the mildest that fits
	at    string           // first words of lines, beside the changed ones, where it may be told
}

// fitting tells whether a finding is one that names the slip, however mild.
func (k kind) fitting(f finding.Finding) bool { return hasWord(k.fits, f.Rule) }

func hasWord(list, word string) bool {
	for w := range strings.FieldsSeq(list) {
		if w == word {
			return true
		}
	}
	return false
}

const (
	note    = finding.Note
	caution = finding.Caution
	fault   = finding.Fault
	danger  = finding.Danger
)

// What a class of slips is told by, beside what its kinds name of their own. A rule
// that is written for such a class is added here, and fits all of its kinds.
const (
	heldAlready  = " guard-came-first test-holds-already earliest-too-late"                                // its test holds as it begins, or long before its earliest time
	backwards    = " range-upside-down bound-wrong-way rise-falls"                                         // a bound or a rise that points the other way
	oddTime      = " step-time-odd interval-too-short earliest-too-late"                                   // a time out of sense for its kind of step
	notAsMade    = " cure-cool-or-short cure-too-hot-for-claim claim-not-kept cure-before-drying stew-odd" // the schedule is not that of the malt that is claimed
	oddFact      = " out-of-range unusual-figure out-of-proportion"                                        // a fact of the house out of the ordinary
	tooDeep      = " piece-too-deep equipment-cannot kiln-too-deep out-of-proportion"                      // a kiln far too small for its load
	oddLimit     = " out-of-range unusual-figure"                                                          // a limit that switches a rule off
	kilnAsked    = " equipment-cannot"                                                                     // a kiln that is asked for what it does not reach
	neverReached = " gate-not-reached guard-came-first hold-not-reached"                                   // a hold or a gate that the process never comes to
	oddWeighing  = " out-of-range reading-impossible reading-doubtful"                                     // a record's weight that the batch cannot have
	oddOrder     = " time-goes-back record-out-of-order written-twice"                                     // a record that contradicts the order of its steps
	oddReading   = " out-of-range reading-impossible reading-doubtful change-doubtful sample-doubtful"     // a record's reading or count that cannot be
	leftUndone   = " malt-not-weighed piece-unturned"                                                      // what a record should say and does not
	coldRoom     = " bed-too-cold room-too-cold-for-bed"                                                   // a room too cold for the bed that is held in it
	noFlue       = " direct-fired flue-not-said"                                                           // a fire of which nothing says where its smoke goes
	sunAtNight   = " equipment-cannot sun-at-night"                                                        // a kiln without the sun at night
	tooLittle    = " out-of-range unusual-figure out-of-proportion"                                        // a charge, or a piece, far below what the house is for
	tooMuchWater = " target-overshot out-of-proportion"                                                    // more water sprinkled than a piece can take up
	otherKiln    = " heat-of-another-kiln"                                                                 // heat taken where this kind of kiln has none
	stageTwice   = " stage-order said-twice"                                                               // a stage that stands there twice
)
