// Package effect answers what changed between two seasons, and what that does to the malt.
//
// # How it works
//
// What changed is told by package contrast of the language. Processes that stand on both
// sides are forecast as each has them (forecasts.go), their gates matched (gates.go), and
// of the findings those are kept that one side alone has (findings.go).
package effect

import (
	"context"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Result is what is otherwise.
type Result struct {
	Old, New string // the sides as they were given
	Changes  []Change
	Effects  []Effect
	Findings []Finding

	OldFile, NewFile string         `json:"-"` // the file of each side in places
	Written          *model.Process `json:"-"` // the house is spoken to in its units; nil where there is none
}

// Change is a statement that is otherwise.
type Change struct {
	Kind     string   `doc:"changed, new, gone or moved"`
	Path     []string `doc:"the statements around it"`
	Of       string   `json:",omitempty" doc:"the lot or kiln that both sides are a figure of"`
	Old      string   `json:",omitempty"` // as written; "" where it does not stand there
	New      string   `json:",omitempty"`
	OldPlace *Place   `json:",omitempty" doc:"where it stands"`
	NewPlace *Place   `json:",omitempty"`
	Parts    []Part   `json:",omitempty" doc:"what differs in a statement that changed"`
}

// Place is where something stands; line and column count from 1.
type Place struct {
	File         string
	Line, Column int
}

// Part is a value or a clause; a side where it does not stand is "".
type Part struct{ What, Old, New string }

// Effect is what the forecasts of one process, as each side has it, come to. A figure is
// NaN where a side has no such thing; none is known where one of them is not complete.
type Effect struct {
	Process string

	Complete    bool `doc:"whether both forecasts came to their end"`
	NotForecast Side `json:",omitempty" doc:"the side whose process cannot be forecast: old or new"`

	SteepOut         Pair[answer.Seconds]
	SteepOutMoisture Pair[answer.Share] `json:"steep_out_moisture_wb"`
	Total            Pair[answer.Seconds]
	FinalMoisture    Pair[answer.Share] `json:"final_moisture_wb"`
	Malt             Pair[answer.Kilograms]
	Yield            Pair[answer.Share] `json:"yield_as_is"`
	DryMatterLost    Pair[answer.Share]
	DiastaticKept    Pair[answer.Share]
	AlphaKept        Pair[answer.Share] `json:"alpha_amylase_kept"`
	Colour           Pair[answer.Colour]
	SteepWater       Pair[answer.Litres]    `doc:"drawn for the soaks"`
	Sprinkled        Pair[answer.Kilograms] `doc:"water given to the growing grain"`
	Fan              Pair[answer.Seconds]   `json:"fan_h" doc:"for which fans blew through beds"`
	FanEnergy        Pair[answer.Joules]    `doc:"that they drew"`
	AirHeat          Pair[answer.Joules]    `doc:"given to the air that they blew"`
	AirCold          Pair[answer.Joules]    `doc:"taken out of it"`
	Sprayed          Pair[answer.Kilograms] `doc:"water sprayed into it"`
	Apart            Pair[answer.Kelvin]    `json:"bottom_to_top_k" doc:"the most by which the faces of such a bed differed"`
	KilnHeat         Pair[answer.Joules]
	FuelPerTonne     Pair[answer.Joules] `doc:"of malt"`
	PowerPerTonne    Pair[answer.Joules] `doc:"of malt"`
	BedPeak          Pair[answer.Watts]  `json:"bed_heat_peak" doc:"the most heat that the breath of a growing bed makes"`
	NightVisits      Counts              `doc:"at the best hour to begin"`
	Gates            []Gates

	OldKilned, NewKilned bool `json:"-"` // malt came on to a kiln: what is then not known of it is not forecast
}

// Side is one of the two.
type Side string

// The sides.
const (
	OldSide Side = "old"
	NewSide Side = "new"
)

// Pair is one figure of both sides.
type Pair[T answer.Single] struct{ Old, New T }

// Unit is that of both.
func (Pair[T]) Unit() answer.Unit {
	var one T
	return one.Unit()
}

// Plain gives both without their kind, in SI.
func (p Pair[T]) Plain() (old, new float64) { return float64(p.Old), float64(p.New) }

// Counts are one count of both sides, nil where a side has no such thing.
type Counts struct{ Old, New *int }

// Gates are a gate of one side and the one on the other that stands for it; one of them
// may be nil.
type Gates struct{ Old, New *outlook.Gate }

// Finding is one that a single side has, or that has other figures on each.
type Finding struct {
	Kind     Came `doc:"came, went, or stays with other figures"`
	Severity string
	Rule     string
	Message  string
	Before   string `json:",omitempty" doc:"what it said before, where it stays"`
	Place    *Place `json:",omitempty"`
}

// Came is what became of a finding.
type Came string

// A finding came or went, or says the same of other figures.
const (
	CameUp Came = "came"
	Went   Came = "went"
	Stays  Came = "stays"
)

// Season is one side as it was read.
type Season struct {
	Name  string // as it was given
	File  string // the name of the file itself in places
	Trees []*syntax.Tree
	Found []finding.Finding
	House *model.House
	Pool  *work.Pool // what its forecasts may spend
}

// Compare tells what is otherwise; briefly, without forecasts and findings. An interrupt
// leaves it unfinished.
func Compare(ctx context.Context, old, new Season, brief bool) Result {
	r := Result{Old: source.Text(old.Name), New: source.Text(new.Name), OldFile: source.Text(old.File), NewFile: source.Text(new.File)}
	for _, c := range contrast.Files(old.Trees, new.Trees) {
		r.Changes = append(r.Changes, change(c))
	}
	if list := new.House.Processes; len(list) > 0 {
		r.Written = list[0]
	}
	if !brief {
		r.Effects = effects(ctx, old, new)
		r.Findings = Findings(old.Found, new.Found)
	}
	return r
}

// OfForecasts sets two forecasts of a process side by side; one that could not be made is
// nil.
func OfForecasts(process string, old, new *forecast.Forecast) Result {
	e := compared(old, new)
	e.Process = process
	return Result{Effects: []Effect{e}}
}

func change(c contrast.Change) Change {
	out := Change{Kind: c.Kind.String(), Path: c.Path, Of: c.Of, Old: c.Old.Text, New: c.New.Text, OldPlace: placed(c.Old.Place), NewPlace: placed(c.New.Place)}
	for _, p := range c.Parts {
		out.Parts = append(out.Parts, Part(p))
	}
	return out
}

func placed(p source.Place) *Place {
	if !p.Known() {
		return nil
	}
	at := p.File.Position(p.Start, source.Characters)
	return &Place{source.Text(p.File.Name()), at.Line, at.Column}
}
