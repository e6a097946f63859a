package tell

import "maltwright/sim/visits"

// Due names what falls due with a task that no choice of the maltster can shift: the
// end of soak 1, a turn.
func Due(t visits.Task) string {
	if t.Ends != "" {
		return "the end of " + t.Ends
	}
	return again[t.Kind]
}

// again has the work that comes at even intervals.
var again = map[visits.Kind]string{visits.Turn: "a turn", visits.Sprinkle: "a sprinkling", visits.Stir: "a stirring"}
