package golden

import "os"

// Long tells whether the long studies are to be run whole, as .ci/nightly does with
// MALTWRIGHT_LONG; otherwise each runs a share of its cases.
func Long() bool { return os.Getenv("MALTWRIGHT_LONG") != "" }
