// Package founding begins a house: it knows what must be asked of somebody who has no
// process file yet, and writes from the answers a house and a process that fit it.
//
// # How it works
//
// Questions are data. Next gives the first one that the answers leave open, Take reads one
// answer and refuses what cannot be, and Write makes the files. A conversation, a file of
// answers and a starter by name are only three ways to come by the same Answers.
//
// Write does not fill in a form. It lays out a first plan from what is usual for the grain
// and the malt, puts it into words, and has it checked and forecast as any file is. What is
// found names what may be changed - a soak, a band, the time of a dry, at last the charge -
// and each change is tried in the same way. What is left stands in Result.WhyNot.
package founding

import (
	"maltwright/check"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// Answers are answers by the key of their question, each as Take gave it.
type Answers map[string]string

// DontKnow is the answer to a question that somebody cannot answer: the usual value stands
// for it, with a comment how to find it out.
const DontKnow = "don't know"

// There is what a folder holds already. Its zero value is an empty folder.
type There struct {
	Files []File       // texts of the language in it, by the alphabet
	Taken []string     // the names of all that is in it
	Main  string       // the file of the house that is added to; "" where there is no house
	House *model.House // as that file and what it uses read; nil where there is none
	Root  read.Reader  // reads what stands in the folder; nil of an empty one
}

// File is a text of the language.
type File struct {
	Name string // within the folder
	Text []byte
	Was  []byte // what stood there before; nil of a new file
}

// Result is what Write gives.
type Result struct {
	Files    []File // the house first, then the process; those that stay as they are are left out
	Process  string // the name of the process; "" where none is written
	In       string // the name of the file that it stands in
	Forecast *forecast.Forecast
	Report   check.Report // of the file with the process, or else of the house
	Changed  []string     // what is otherwise than answered, as sentences: less grain than there is
	WhyNot   []string     // what check still finds of the new, as sentences with what to do; empty where it finds nothing
	Use      string       // a line of a process that uses what was added to a house; "" where a process is written
	Before   []string     // what is not known of the lot and is to be found out before it is wet, as sentences
}
