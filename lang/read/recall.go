package read

import "maltwright/lang/model"

// Recaller is a Reader that knows the past too. It takes a batch back to the process by
// which it was begun, before its record is looked at as a whole.
type Recaller interface{ Recall(*model.Batch) }
