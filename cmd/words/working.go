package words

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"maltwright/cmd/answer/sums"
	"maltwright/sim/reckon"
)

// WorkingStep is a step of a working as one would write it down: its name, and the
// equation with its numbers.
func WorkingStep(s sums.Step) Labelled {
	if write := labellers[reflect.TypeOf(s.Step)]; write != nil {
		return write(s.Step)
	}
	return Labelled{Text: fmt.Sprintf("%+v", s.Step)} // a row is missing below: its values are better than nothing
}

// labeller is how the steps of one type are written.
type labeller struct {
	of    reflect.Type
	write func(reckon.Step) Labelled
}

func labellerOf[T reckon.Step](write func(T) Labelled) labeller {
	return labeller{reflect.TypeFor[T](), func(s reckon.Step) Labelled { return write(s.(T)) }}
}

// labellers are all there are, by type.
var labellers = labellersByType(slices.Concat(byWeight, bySample))

func labellersByType(list []labeller) map[reflect.Type]func(reckon.Step) Labelled {
	table := map[reflect.Type]func(reckon.Step) Labelled{}
	for _, w := range list {
		table[w.of] = w.write
	}
	return table
}

// byWeight are the steps of weights and moistures.
var byWeight = []labeller{
	labellerOf(func(s reckon.WetBasis) Labelled {
		plain := strings.TrimSuffix(value(s.Dry), " dry basis")
		return Labelled{"wet basis", fmt.Sprintf("%s / (1 + %s) = %s", plain, plain, value(s.Wet))}
	}),
	labellerOf(func(s reckon.DryBasis) Labelled {
		return equation("dry basis", "%s / (1 − %s) = %s", s.Wet, s.Wet, s.Dry)
	}),
	labellerOf(func(s reckon.DryMatter) Labelled {
		label := "dry matter"
		if s.Of != reckon.Batch {
			label = string(s.Of) + ", dry"
		}
		return equation(label, "%s × (1 − %s) = %s", s.Weight, s.Moisture, s.DryMatter)
	}),
	labellerOf(func(s reckon.Left) Labelled {
		return equation("of it left", "%s × (1 − %s) = %s", s.DryMatter, s.Lost, s.Left)
	}),
	labellerOf(func(s reckon.WeightAt) Labelled {
		return equation("weight", "%s / (1 − %s) = %s", s.DryMatter, s.Moisture, s.Weight)
	}),
	labellerOf(func(s reckon.Change) Labelled {
		if s.Loses() {
			return equation("to lose", "%s − %s = %s, %s of %s", s.From, s.To, s.By, s.Share, s.From)
		}
		return equation("to gain", "%s − %s = %s, %s of %s", s.To, s.From, s.By, s.Share, s.From)
	}),
	labellerOf(func(s reckon.OfWeight) Labelled {
		return equation("moisture", "1 − %s / %s = %s", s.DryMatter, s.Weight, s.Moisture)
	}),
	labellerOf(func(s reckon.Part) Labelled {
		label := string(s.Of)
		if s.Of == reckon.AsIs {
			label = "yield " + label
		}
		return equation(label, "%s / %s = %s", s.Malt, s.Barley, s.Share)
	}),
	labellerOf(func(s reckon.Lost) Labelled {
		return equation("lost", "100 %% − %s = %s", s.Kept, s.Lost)
	}),
}

// bySample are those of samples and counts.
var bySample = []labeller{
	labellerOf(func(s reckon.Water) Labelled {
		return equation("water"+numbered(s.Sample), "%s − %s = %s", s.Wet, s.Dried, s.Water)
	}),
	labellerOf(func(s reckon.Net) Labelled {
		return equation("grain"+numbered(s.Sample), "%s − %s = %s", s.Wet, s.Tare, s.Grain)
	}),
	labellerOf(func(s reckon.OfSample) Labelled {
		return equation("moisture"+numbered(s.Sample), "%s / %s = %s", s.Water, s.Grain, s.Moisture)
	}),
	labellerOf(func(s reckon.Mean) Labelled {
		return Labelled{"mean", fmt.Sprintf("of %d samples = %s", s.Samples, value(s.Moisture))}
	}),
	labellerOf(func(s reckon.Scatter) Labelled {
		return Labelled{"spread", fmt.Sprintf("%s to %s, standard deviation %s points", value(s.Lowest), value(s.Highest), points(s.Deviation))}
	}),
	labellerOf(func(s reckon.Germinated) Labelled {
		return Labelled{"germinated", fmt.Sprintf("%.0f / %.0f = %s", s.Kernels, s.Of, value(s.Share))}
	}),
	labellerOf(func(s reckon.Centre) Labelled {
		return Labelled{"centre", fmt.Sprintf("(%.0f + 1.96²/2) / (%.0f + 1.96²) = %s", s.Kernels, s.Of, value(s.Centre))}
	}),
	labellerOf(func(s reckon.Half) Labelled {
		return Labelled{"half", fmt.Sprintf("1.96 × √(%.0f × %.0f / %.0f + 1.96²/4) / (%.0f + 1.96²) = %s points", s.Kernels, s.Of-s.Kernels, s.Of, s.Of, points(s.Half))}
	}),
	labellerOf(func(s reckon.Interval) Labelled {
		return Labelled{"95 % interval", fmt.Sprintf("%s ± %s = %s to %s", value(s.Centre), points(s.Half), value(s.Low), value(s.High))}
	}),
}

func equation(label, form string, values ...reckon.Value) Labelled {
	texts := make([]any, len(values))
	for i, v := range values {
		texts[i] = value(v)
	}
	return Labelled{label, fmt.Sprintf(form, texts...)}
}

// numbered is " 2" for the second of several samples.
func numbered(sample int) string {
	if sample == 0 {
		return ""
	}
	return fmt.Sprintf(" %d", sample)
}
