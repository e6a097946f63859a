package golden

import "flag"

var long = flag.Bool("long", false, "run the long studies and hunts whole, as .ci/nightly does")

// Long tells whether the long studies are to be run whole; otherwise each runs a share
// of its cases, the same ones each time.
func Long() bool { return *long }

// Whole tells whether a study must run whole because its table is a golden file that is
// written anew, or because all of them do.
func Whole() bool { return Long() || Updating() }
