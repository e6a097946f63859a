package folder

import (
	"strings"

	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
)

// Reading is a reading as it was typed.
type Reading struct {
	Words []string // of a command line, or all of it as one
	Text  string   // in the place of Words: many readings, a line each
	At    string   // its time, as people say it; "" where the words say it, or it is now
	Fix   int      // the number of the line that it takes the place of; 0 for one line more
	Was   string   // the words of that line, which is refused where it has others; "" for whatever it is
	Own   string   // what its sender calls it, so that it is written once however often it is sent; "" for nothing
	Asked string   // what its form asks about it, beside what is doubted of the record; "" for nothing
}

// Answer is what a reading comes to.
type Answer struct {
	Batch   string   // its name
	Lines   []string // what is new in the record, as it stands there
	Was     string   // the line that it took the place of, "" where it is one more
	Says    string   // what it comes to and what is next; "" where nothing can be said
	Doubts  []Doubt  // what may be wrong, and what is told of the batch besides
	Offer   string   // the line as it may have been meant, "" where there is none
	Written bool
	There   bool // it was in the record already, and nothing was written
}

// Doubt is what may be wrong with a reading.
type Doubt struct {
	Rule     string
	Severity finding.Severity
	Message  string
	Hint     string
	Asks     bool // it is asked about before the reading is written
	Danger   bool // it is no doubt, but the danger that a remark tells of
}

// Says is the doubt in a sentence.
func (d Doubt) Says() string { return words.Joined("; ", d.Message, d.Hint) }

// Asks tells whether there is a doubt that is asked about before the reading is written.
func (a Answer) Asks() bool {
	for _, d := range a.Doubts {
		if d.Asks {
			return true
		}
	}
	return false
}

// Doubted says all doubts, each with its rule.
func (a Answer) Doubted() string {
	var told []string
	for _, d := range a.Doubts {
		told = append(told, d.Says()+" ["+d.Rule+"]")
	}
	return strings.Join(told, "; ")
}

// Undone is what was taken back.
type Undone struct {
	Batch string
	Gone  []journal.Line // what is not in the record any more
	Again []journal.Line // what is there again in its place
}
