package reckon

import "maltwright/lang/quantity"

// Value is a quantity of a reckoning.
type Value struct {
	SI    float64
	Like  quantity.Quantity // it is shown in the unit of this one, with digits as it has
	Given bool              // it is that one itself, as it was written
}

func given(q quantity.Quantity) Value { return Value{q.SI, q, true} }

func like(si float64, q quantity.Quantity) Value { return Value{SI: si, Like: q} }

func percents(share float64) Value { return like(share, Percent()) }

// Step is one step of the working: an equation with its values.
type Step interface{ step() }

// WetBasis turns a moisture of the dry basis: Dry / (1 + Dry) = Wet.
type WetBasis struct{ Dry, Wet Value }

// DryBasis turns a moisture of the wet basis: Wet / (1 − Wet) = Dry.
type DryBasis struct{ Wet, Dry Value }

// Water is what the oven took: Wet − Dried = Water. Sample is its number from 1, or 0
// where there is one.
type Water struct {
	Sample            int
	Wet, Dried, Water Value
}

// Net is the grain without its dish: Wet − Tare = Grain.
type Net struct {
	Sample           int
	Wet, Tare, Grain Value
}

// OfSample is the moisture of a sample: Water / Grain = Moisture.
type OfSample struct {
	Sample                 int
	Water, Grain, Moisture Value
}

// Mean is that of several samples.
type Mean struct {
	Samples  int
	Moisture Value
}

// Scatter is how far samples lie apart.
type Scatter struct {
	Lowest, Highest Value
	Deviation       float64 // standard deviation, as a share
}

// Grain is which grain a step is about.
type Grain string

// The grain of a step.
const (
	Batch  Grain = ""
	Barley Grain = "barley"
	Malt   Grain = "malt"
)

// DryMatter is Weight × (1 − Moisture) = DryMatter.
type DryMatter struct {
	Of                          Grain
	Weight, Moisture, DryMatter Value
}

// Left is what a loss leaves: DryMatter × (1 − Lost) = Left.
type Left struct{ DryMatter, Lost, Left Value }

// WeightAt is DryMatter / (1 − Moisture) = Weight.
type WeightAt struct{ DryMatter, Moisture, Weight Value }

// Change is To − From = By, or From − To where weight is lost; Share is By of From.
type Change struct{ From, To, By, Share Value }

// Loses tells whether weight is lost.
func (c Change) Loses() bool { return c.To.SI < c.From.SI }

// OfWeight is the moisture of a batch: 1 − DryMatter / Weight = Moisture.
type OfWeight struct{ DryMatter, Weight, Moisture Value }

// Part is one of the yields: Malt / Barley = Share.
type Part struct {
	Of                  Yielded
	Malt, Barley, Share Value
}

// Yielded is what is divided by what.
type Yielded string

// The yields.
const (
	AsIs    Yielded = "as it is"      // malt by barley, both as they are
	DryMalt Yielded = "dry malt"      // dry malt by barley as it is
	OfDry   Yielded = "of dry barley" // both dry
)

// Lost is 100 % − Kept = Lost.
type Lost struct{ Kept, Lost Value }

// Germinated is Kernels / Of = Share.
type Germinated struct {
	Kernels, Of float64
	Share       Value
}

// Centre is that of the interval; see Germination.
type Centre struct {
	Kernels, Of float64
	Centre      Value
}

// Half is half the width of the interval, as a share.
type Half struct {
	Kernels, Of float64
	Half        float64
}

// Interval is Centre ± Half = Low to High.
type Interval struct {
	Centre    Value
	Half      float64
	Low, High Value
}

func (WetBasis) step()   {}
func (DryBasis) step()   {}
func (Water) step()      {}
func (Net) step()        {}
func (OfSample) step()   {}
func (Mean) step()       {}
func (Scatter) step()    {}
func (DryMatter) step()  {}
func (Left) step()       {}
func (WeightAt) step()   {}
func (Change) step()     {}
func (OfWeight) step()   {}
func (Part) step()       {}
func (Lost) step()       {}
func (Germinated) step() {}
func (Centre) step()     {}
func (Half) step()       {}
func (Interval) step()   {}

// Note is what was taken for granted.
type Note interface{ note() }

// Lossless is that no loss of dry matter was reckoned: with Supposed lost it would be
// Moisture.
type Lossless struct{ Supposed, Moisture Value }

// OneCount is that another count of the same lot would differ.
type OneCount struct{}

func (Lossless) note() {}
func (OneCount) note() {}
