package folder

import (
	"context"
	"errors"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

var errLater = errors.New("not written yet")

// Folder is a folder that is open.
type Folder struct{}

// Open opens a folder. The error is a *Failed.
func Open(path string, o Options) (*Folder, error) { return nil, errLater }

// Close ends what is done in the background, and lets go of the folder.
func (d *Folder) Close() error { return nil }

// Look says how the folder stands at a time. The error is a *Failed, or that of the context.
func (d *Folder) Look(ctx context.Context, now time.Time) (State, error) { return State{}, errLater }

// Judge says what a reading would come to, and writes nothing. Errors: *Refused, *Gone, *Failed.
func (d *Folder) Judge(ctx context.Context, id ID, x Reading) (Answer, error) {
	return Answer{}, errLater
}

// Note judges a reading and writes it. Errors: *Refused, *Doubtful where it is not sure, *Gone, *Busy, *Failed.
func (d *Folder) Note(ctx context.Context, id ID, x Reading, sure bool) (Answer, error) {
	return Answer{}, errLater
}

// Undo takes back what was noted last. Errors: *Refused, *Gone, *Busy, *Failed.
func (d *Folder) Undo(ctx context.Context, id ID) (Undone, error) { return Undone{}, errLater }

// Lines lists the lines of a record with their numbers. Errors: *Refused, *Gone, *Failed.
func (d *Folder) Lines(id ID) ([]journal.Line, error) { return nil, errLater }

// Begin opens the record of a new batch. Errors: *Refused, *Doubtful-like *Held where another batch lies in the
// vessel, *Unsound, *Gone, *Busy, *Failed.
func (d *Folder) Begin(ctx context.Context, process ID, s Start) (Begun, error) {
	return Begun{}, errLater
}

// WhatIf says what a process would come to with lines such as "soak 1 to 6 h". Errors: *Refused, *Unsound, *Gone, *Failed.
func (d *Folder) WhatIf(ctx context.Context, process ID, begun time.Time, lines []string) (Supposed, error) {
	return Supposed{}, errLater
}

// Opened is a batch or a process as it stands, for whatever draws or writes it: chart, sheet, report.
type Opened struct {
	Name     string
	File     string // below the folder, with /
	House    *model.House
	Process  *model.Process
	Batch    *model.Batch // nil where it is a process
	Findings []finding.Finding
	Words    words.House
	At       time.Time // as of when a batch is told
	AsOf     progress.AsOf
	Follow   *follow.Following // by the watcher; nil where there is none, or it is older than the record
}

// Batch opens a batch. Errors: *Gone, *Unsound, *Failed.
func (d *Folder) Batch(ctx context.Context, id ID, now time.Time) (Opened, error) {
	return Opened{}, errLater
}

// Process opens a process. Errors: *Gone, *Failed; what is wrong with it stands in its findings.
func (d *Folder) Process(ctx context.Context, id ID) (Opened, error) { return Opened{}, errLater }

// Held is another batch that is still in the vessel by its record; Begin is asked once more by who is sure.
type Held struct{ Says string }

func (e *Held) Error() string { return "not begun: " + e.Says }
