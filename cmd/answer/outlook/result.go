// Package outlook answers what is to be expected of a process: its steps with their
// times, moistures and weights, what comes of it, what had to be assumed, and on request
// how sure that is and the course of the batch at even intervals.
package outlook

import (
	"fmt"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// Result is a forecast. Times are s from the beginning of the first soak, moistures on
// the wet basis; what is not known is NaN.
type Result struct {
	Head
	Start       time.Time `json:",omitempty" doc:"when the first soak begins"`
	Complete    bool      `doc:"whether the forecast came to the end of the process"`
	BrokenOff   *Break    `doc:"where and why it did not"`
	NotForecast *ModelEnd `json:",omitempty" doc:"where the malt came to where the model ends: what is known of it from there on is times"`
	NoMalt      *NoMalt   `json:",omitempty" doc:"where what comes off the kiln is too wet to be malt: stages behind the kiln and figures of malt are then missing or null"`
	Stages      []Stage
	Asked
	Totals      Totals
	Growth      *Growth      `doc:"what a count of a hundred kernels should show at the end of growth, withering and all"`
	Indications *Indications `doc:"what the heat did to the malt, each share against green malt"`
	Enzymes     *Enzymes     `json:",omitempty" doc:"what its enzymes suffice for; left out where they are not forecast"`
	Rest        string       `json:"rest_in_store,omitempty" doc:"how long the malt is to rest, as written"`
	Assumed     []Assumption
	Cautions    []Caution
	Spread      *Spread  `json:",omitempty"`
	Corners     []Corner `json:",omitempty"`
	Course      []Point  `json:",omitempty"`
}

// Head says of which process and batch an answer is.
type Head struct {
	Process string
	Make    string           `doc:"the malt type"`
	Charge  answer.Kilograms `doc:"raw grain"`
	Grain   string

	Written string `json:"-"` // the charge, as written
	Green   bool   `json:"-"` // the lot comes as malt, green or kilned
}

// Break says where a forecast broke off.
type Break struct {
	Stage string
	At    answer.Seconds
	File  string `doc:"of the statement that could not be forecast"`
	Line  int
	Why   Trouble
}

// ModelEnd says where malt came to where the model ends.
type ModelEnd struct {
	StageName
	At   answer.Seconds
	File string `doc:"of the step in which it did"`
	Line int
	Why  Trouble
}

// StageName names a stage.
type StageName struct {
	Stage  string
	Number int `json:"stage_number,omitempty" doc:"which of its kind it is, where there are several"`
}

// NameOf names a stage of a process.
func NameOf(p *model.Process, st model.Stage) StageName {
	if st == nil {
		return StageName{}
	}
	name := StageName{Stage: string(st.Kind())}
	if p.Count(st.Kind()) > 1 {
		name.Number = p.Number(st)
	}
	return name
}

// Called is the name as it is read: germinate, germinate 2.
func (n StageName) Called() string {
	if n.Number == 0 {
		return n.Stage
	}
	return fmt.Sprintf("%s %d", n.Stage, n.Number)
}

// Stage is one stage with its steps.
type Stage struct {
	StageName
	Steps  []Step
	Energy *Energy  `json:",omitempty" doc:"what it took; missing of stages that take nothing"`
	Below  *Below   `json:"floor_below,omitempty" doc:"the floor of the kiln whose exhaust it took; missing of stages that took fresh air"`
	Bed    *BedHeat `json:"bed_heat,omitempty" doc:"what the breath of a growing or withering bed made"`
	Air    *KilnAir `json:"kiln_air,omitempty" doc:"of a kiln whose fan or draught is known"`
}

// StepName names a step as a record does.
type StepName struct {
	Kind   string `json:"step" doc:"its word; wait for the time that a gate is waited for"`
	Number int    `json:"step_number" doc:"which of the steps of that kind; 0 for a wait"`
}

// Step is one step as it runs.
type Step struct {
	Label string `json:"-"` // soak 1, but plain cure
	StepName
	Start, End    answer.Seconds
	Temperature   *answer.Temperature `doc:"as it is set: the ends of its band or its rise"`
	Given         *answer.Celsius     `json:",omitempty" doc:"what the kiln gave in the mean where for most of the step it was not what is set"`
	MoistureStart answer.Share        `json:"moisture_start_wb"`
	MoistureEnd   answer.Share        `json:"moisture_end_wb"`
	WeightEnd     answer.Kilograms    `doc:"of the whole batch, drained"`
	OnScale[answer.Kilograms]
	EndedBy   string    `doc:"time, gate, guard, record, or broken off where the forecast could not go on"`
	StartTime time.Time `json:",omitempty"`
	EndTime   time.Time `json:",omitempty"`
}

// Row is a step as a line of a table.
type Row struct {
	Stage string
	Step
}

// Rows calls for each step in the order of the process.
func (r Result) Rows(each func(Row)) {
	for _, st := range r.Stages {
		for _, s := range st.Steps {
			each(Row{st.Stage, s})
		}
	}
}

// Asked is what a process asks for, and whether the forecast gives it.
type Asked struct {
	Gates    []Gate
	Expects  []Expect
	Left     []Left    `json:"-"` // conditions that did not hold when a record left them
	NotGiven []Trouble `doc:"what kiln, floor and fan were asked for and do not give, kernels that drown, and malt that lies wet without air"`
}

// Gate is a hold point, or a condition that ends a step or a stage, and how it went.
type Gate struct {
	StageName
	Step     string         `json:",omitempty" doc:"the step that it ends, as a record names it; left out of a gate statement and of what ends a whole stage"`
	Text     string         `doc:"the condition, as written"`
	Hold     bool           `doc:"a gate statement; otherwise an until"`
	Met      bool           `doc:"whether it held in time"`
	Reached  answer.Seconds `doc:"when it held"`
	Moisture answer.Share   `json:"moisture_wb" doc:"then, or when it was given up"`
	Waited   answer.Seconds `doc:"from the beginning of the step to when it held or was given up"`
	Measure  string         `json:",omitempty" doc:"which measure of it failed"`
	Measured *Amount        `json:",omitempty" doc:"what that came to, in the unit of the condition"`
	Needs    answer.Seconds `doc:"how much longer it would have taken, in hours; null where that was not looked for, or never is"`
	Never    bool           `doc:"it does not come about like this"`
	Unjudged bool           `json:"not_judged,omitempty" doc:"it asks what is not forecast, and the forecast goes on as if it were met"`
}

// Expect is a promise of the process, and whether it is kept.
type Expect struct {
	Text     string `doc:"the promise, as written"`
	Holds    bool
	Forecast *Amount `doc:"what the forecast gives, in the unit of the promise"`
	Unjudged bool    `json:"not_judged,omitempty" doc:"it promises what is not forecast: holds says nothing then"`
}

// Amount is a figure in SI that is told in the unit in which another was written.
type Amount struct {
	SI   float64
	Like quantity.Quantity
}

// Told marks it as put into words.
func (Amount) Told() {}

// Growth is what a count of a hundred kernels should show when the kiln takes the grain.
type Growth struct {
	Chitted   answer.Share
	Acrospire answer.Number `json:"acrospire_mean" doc:"a part of the kernel"`
	Classes   Classes       `json:"acrospire_classes"`
	Rub       string        `doc:"gummy, gritty or chalky"`
}

// Classes are shares of the kernels, by how far the acrospire has come.
type Classes struct {
	None, ToQuarter, ToHalf, ToThreeQuarters, ToWhole, Overgrown answer.Share
}

// Unit is that of its members.
func (Classes) Unit() answer.Unit { return answer.Share(0).Unit() }

// Indications are what heat does to malt.
type Indications struct {
	Standing  string       `doc:"calibrated: to practice; no laboratory values"`
	Diastatic answer.Share `json:"diastatic_kept"`
	Alpha     answer.Share `json:"alpha_amylase_kept"`
	Precursor answer.Share `json:"dms_precursor_left"`
	Colour    answer.Colour
}

// unknown is the figure that is not known.
func unknown[T ~float64]() T { return T(math.NaN()) }
