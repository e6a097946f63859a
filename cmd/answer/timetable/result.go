// Package timetable answers when a batch needs somebody: every visit with what is to do,
// which of them fall in the night, and the hour to begin at so that the fewest do.
package timetable

import (
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// Result is the timetable of a forecast that begins at a time.
type Result struct {
	outlook.Head
	Complete bool            `doc:"whether the forecast came to the end of the process; one that did not has no timetable"`
	Start    time.Time       `doc:"when the first soak begins"`
	Ready    time.Time       `doc:"when the rootlets are off, or the end of a process without a kiln; of no malt, when it comes off the kiln"`
	NoMalt   *outlook.NoMalt `json:",omitempty" doc:"where what comes off the kiln is too wet to be malt: the visits end there"`
	Back     bool            `json:"reckoned_back" doc:"the start follows from the time at which the malt is to be ready"`
	Rested   time.Time       `doc:"when the rest in store is over; null where there is none"`
	Visits   []Visit
	Night    *Nights `doc:"how many visits fall in the night, by the start; null where the site does not say when somebody is awake, and of a batch under way"`
	Ahead    bool    `json:"-"` // of a batch under way: no other start is sought
	outlook.Asked
}

// Visit is one time at which somebody goes to the batch.
type Visit struct {
	Time     time.Time
	At       answer.Seconds   `doc:"from the beginning of the first soak, in hours"`
	Awake    *bool            `doc:"whether somebody is awake then; null where it is not known"`
	Night    *bool            `doc:"nobody is awake then nor an hour before or after, and it cannot wait; null where it is not known"`
	Away     bool             `json:",omitempty" doc:"nobody works on that day"`
	Hands    *int             `json:",omitempty" doc:"how many are there then; left out where the site does not say, or nobody is"`
	Short    bool             `json:",omitempty" doc:"more is to be done at once than there are hands"`
	Moisture answer.Share     `json:"moisture_wb" doc:"to be expected, of the whole weight"`
	Weight   answer.Kilograms `doc:"to be expected of the whole batch, drained"`
	outlook.OnScale[answer.Kilograms]
	Tasks []Task
}

// Task is one thing to do, with the words for it.
type Task struct {
	Do
	Words Sentence `doc:"what to do, in a sentence"`
}

// Do is one thing to do.
type Do struct {
	Stage       model.StageKind
	Kind        visits.Kind
	Name        string              `json:",omitempty" doc:"of the step"`
	Where       string              `json:",omitempty" doc:"the vessel, floor, kiln or store, as named"`
	Temperature *answer.Temperature `json:",omitempty" doc:"to be set"`
	Lasts       answer.Seconds      `json:",omitempty" doc:"hours that the step takes by its own statement"`
	Rise        answer.Seconds      `json:",omitempty" doc:"hours that the temperature takes to rise"`
	Within      answer.Seconds      `json:",omitempty" doc:"hours in which it must be done"`
	Until       string              `json:",omitempty" doc:"the condition, as written"`
	Earliest    answer.Seconds      `json:",omitempty" doc:"hours before which the condition ends nothing"`
	Latest      answer.Seconds      `json:",omitempty" doc:"hours beyond which it is not waited for"`
	Missed      bool                `json:",omitempty" doc:"of a gate, a look or the end of a piece: the forecast gives up waiting here"`
	Amount      string              `json:",omitempty" doc:"of water to sprinkle, to soak in, or to pour on hot malt, as written"`
	Shares      []Portion           `json:",omitempty" doc:"what goes into each vessel, where a steep is shared out among several"`
	With        string              `json:",omitempty" doc:"what a soak or a rest is with; of a kiln the floor below, whose exhaust it takes or to which the malt goes down"`

	Each []outlook.Gross[answer.Kilograms] `json:",omitempty" doc:"what each vessel weighs with its part of the drained grain, where a steep is shared out among several"`
}

// Portion is what goes into one of several vessels.
type Portion struct {
	In    string `doc:"the vessel, as named"`
	Grain answer.Kilograms
	Water answer.Litres
}

// Sentence is what is to do, to be put into words.
type Sentence Do

// Told marks it as put into words.
func (Sentence) Told() {}

// TaskOf is a task of the simulator.
func TaskOf(t visits.Task) Task {
	do := Do{Stage: t.Stage, Kind: t.Kind, Name: t.Name, Where: t.Where, Temperature: outlook.TemperatureOf(t.Temperature), Lasts: answer.Seconds(t.Lasts),
		Rise: answer.Seconds(t.Over), Within: answer.Seconds(t.Within), Until: t.Until, Earliest: answer.Seconds(t.Earliest), Latest: answer.Seconds(t.Latest), Missed: t.Missed, With: t.With}
	for _, p := range t.Shares {
		do.Shares = append(do.Shares, Portion{p.In, answer.Kilograms(p.Grain), answer.Litres(1000 * p.Water)})
	}
	for _, w := range t.Each {
		do.Each = append(do.Each, outlook.Gross[answer.Kilograms]{In: w.In, Weight: answer.Kilograms(w.Gross)})
	}
	if t.Water != nil {
		do.Amount = t.Water.String()
	}
	return Task{do, Sentence(do)}
}

// VisitOf is a visit of the simulator to a batch that began at a time; whether it falls
// in the night is not known.
func VisitOf(v visits.Visit, began time.Time, bag outlook.Bag) Visit {
	out := Visit{Time: outlook.ClockAt(began, answer.Seconds(v.At)), At: answer.Seconds(v.At), Moisture: answer.Share(v.Moisture), Weight: answer.Kilograms(v.Weight), Tasks: []Task{}}
	if !math.IsNaN(v.Weight) {
		out.OnScale = bag.On(v.In, v.Weight)
	}
	for _, t := range v.Tasks {
		out.Tasks = append(out.Tasks, TaskOf(t))
	}
	return out
}

// Nights is how many visits fall in the night, for the start that was asked for and for
// those of that day, or of the 24 h before it, with the fewest and the most.
type Nights struct{ Given, Best, Worst Start }

// Start is when a batch may begin, when it is ready then, and what falls in the night.
type Start struct {
	Start, Ready time.Time
	Visits       int
}
