package folder

import (
	"time"

	"maltwright/cmd/words"
)

// State is how the folder stands.
type State struct {
	At        time.Time
	Version   string  // another one where anything that is shown is otherwise
	Due       []Due   // of all batches under way, the earliest first: what is late, then what is next
	Underway  []Batch // by the name of the file
	Over      []Brief // and those of which nothing was written for long; the latest first
	Processes []Process
	Unread    []Unread
}

// Due is something to be done at a batch.
type Due struct {
	Batch    ID
	Name     string // of the batch
	At       time.Time
	Says     string // what to do: drain and weigh
	Expected string // on the scale then, as a line would have it; "" where nothing is weighed
	When     string // seen from now: at 23:00, on Sat at 06:30
	Left     string // how long until then, or since then: 3 h 10 min
	Late     bool   // it is over, and nothing in the record tells of it
	Night    bool   // nobody is awake then
	Kind     string // of the first task, as the timetable names it
}

// Brief is a batch in a list.
type Brief struct {
	ID      ID
	Name    string
	File    string // below the folder, with /
	Process string
	Began   time.Time
	Last    time.Time // the last that is written of it
}

// Batch is one that is under way.
type Batch struct {
	Brief
	Of       ID        // its process; "" where that is not in the folder
	At       time.Time // as of when it is told
	AsOf     string    // why as of then; "" for now
	House    words.House
	Now      Now
	Due      []Due // all visits to come
	Late     []Due // what is over without a word in the record
	Missed   []Due // what is over for more than a day, and should have left a line
	Readings []Noted
	Remarks  []Noted
	Doubts   []string // what is found of the record as it stands
	Dangers  []string // that its remarks tell of
	Short    string   // that it came out of the steep too dry, as long as it steeps or grows
	Unsound  string   // why there is no forecast; "" where there is one
	Followed *Followed
}

// Now is how a batch stands.
type Now struct {
	Stage    string // as a record names it
	Step     string
	Until    time.Time // the end of the step by the forecast; zero where it is open
	Moisture string    // 43.2 %, "" where it is not known
	Weight   string    // what it should weigh now, drained
	Gross    string    // the same as a line would have it, with the vessel: 9.55 kg in "blue tub"
	Ready    time.Time // when all of it is done by the forecast
	Left     string    // until then
}

// Noted is a line of the record.
type Noted struct {
	Line   int // of its file, from 1
	At     time.Time
	Words  string
	Says   string // what it comes to beside the forecast
	Doubt  string // why it may not be right
	Danger string
}

// Process is one that can be begun.
type Process struct {
	ID       ID
	Name     string
	File     string // below the folder, with /
	Charge   string // "" where it says none
	Faults   int    // findings of its file that must be put right first
	Cautions int
	Checked  bool // they are all; else they are those of its words alone, and Process finds the others
}

// Unread is a file that cannot be used as it stands.
type Unread struct {
	File string
	Says string
}
