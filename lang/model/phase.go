package model

// Phase is how far a batch has come, in the order of the work.
type Phase int

// The phases of a batch. What may be read at any time tells of none.
const (
	AnyPhase Phase = iota
	Steeping
	Growing
	OnKiln // or past it
)

// phaseOf tells how far the batch had come where a step had ended, or where a
// thermometer stood.
var phaseOf = map[string]Phase{
	"soak": Steeping, "rest": Steeping, "water": Steeping,
	"germinate": Growing, "hold": Growing, "bed": Growing, "wither": Growing,
	"dry": OnKiln, "stew": OnKiln, "cure": OnKiln, "cool": OnKiln, "deculm": OnKiln,
	"air-on": OnKiln, "air-off": OnKiln, "malt": OnKiln, "oven": OnKiln,
}

// Shows tells how far the batch had come, by what was read.
func Shows(x Reading) Phase {
	switch {
	case After(x) != nil:
		return phaseOf[After(x).Kind.Text]
	case Clean(x):
		return OnKiln
	case Is[*Felt](x), Is[*Turned](x), CountOf(x, Acrospire) != nil:
		return Growing
	case Thermometer(x) != nil:
		return phaseOf[Thermometer(x).Where]
	}
	return AnyPhase
}
