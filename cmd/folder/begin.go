package folder

import "maltwright/cmd/words"

// Start is a batch that is to be begun.
type Start struct {
	At     string // when the grain goes in, as people say it; "" for now
	Name   string // of the batch; "" for the next number of its year
	Weight string // how much grain goes in, "5.8 kg"; "" for as the process says
	Sure   bool   // though another batch is still in its vessel
}

// Begun is what was begun, and what comes first.
type Begun struct {
	ID     ID
	Batch  string
	File   string   // of the record, below the folder
	Says   []string // what to have ready, and what is due first
	Before []string // what is not known of the lots and can be asked until it is wet
	First  string   // the first line to note, with what the scale should show; "" where nothing is weighed
}

// Supposed is what a process would come to with changes, beside what is written.
type Supposed struct {
	Process string
	House   words.House
	Rows    []words.EffectRow // what is otherwise
	Says    []string          // what else is told of it
}
