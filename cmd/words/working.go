package words

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer/sums"
	"maltwright/sim/reckon"
)

// WorkingStep is a step of a working as one would write it down: its name, and the
// equation with its numbers.
func WorkingStep(s sums.Step) Labelled {
	switch s := s.Step.(type) {
	case reckon.WetBasis:
		plain := strings.TrimSuffix(value(s.Dry), " dry basis")
		return Labelled{"wet basis", fmt.Sprintf("%s / (1 + %s) = %s", plain, plain, value(s.Wet))}
	case reckon.DryBasis:
		return equation("dry basis", "%s / (1 − %s) = %s", s.Wet, s.Wet, s.Dry)
	case reckon.DryMatter:
		label := "dry matter"
		if s.Of != reckon.Batch {
			label = string(s.Of) + ", dry"
		}
		return equation(label, "%s × (1 − %s) = %s", s.Weight, s.Moisture, s.DryMatter)
	case reckon.Left:
		return equation("of it left", "%s × (1 − %s) = %s", s.DryMatter, s.Lost, s.Left)
	case reckon.WeightAt:
		return equation("weight", "%s / (1 − %s) = %s", s.DryMatter, s.Moisture, s.Weight)
	case reckon.Change:
		if s.Loses() {
			return equation("to lose", "%s − %s = %s, %s of %s", s.From, s.To, s.By, s.Share, s.From)
		}
		return equation("to gain", "%s − %s = %s, %s of %s", s.To, s.From, s.By, s.Share, s.From)
	case reckon.OfWeight:
		return equation("moisture", "1 − %s / %s = %s", s.DryMatter, s.Weight, s.Moisture)
	case reckon.Part:
		label := string(s.Of)
		if s.Of == reckon.AsIs {
			label = "yield " + label
		}
		return equation(label, "%s / %s = %s", s.Malt, s.Barley, s.Share)
	case reckon.Lost:
		return equation("lost", "100 %% − %s = %s", s.Kept, s.Lost)
	}
	return sampled(s)
}

// sampled are the steps of samples and counts.
func sampled(s sums.Step) Labelled {
	switch s := s.Step.(type) {
	case reckon.Water:
		return equation("water"+numbered(s.Sample), "%s − %s = %s", s.Wet, s.Dried, s.Water)
	case reckon.Net:
		return equation("grain"+numbered(s.Sample), "%s − %s = %s", s.Wet, s.Tare, s.Grain)
	case reckon.OfSample:
		return equation("moisture"+numbered(s.Sample), "%s / %s = %s", s.Water, s.Grain, s.Moisture)
	case reckon.Mean:
		return Labelled{"mean", fmt.Sprintf("of %d samples = %s", s.Samples, value(s.Moisture))}
	case reckon.Scatter:
		return Labelled{"spread", fmt.Sprintf("%s to %s, standard deviation %s points", value(s.Lowest), value(s.Highest), points(s.Deviation))}
	case reckon.Germinated:
		return Labelled{"germinated", fmt.Sprintf("%.0f / %.0f = %s", s.Corns, s.Of, value(s.Share))}
	case reckon.Centre:
		return Labelled{"centre", fmt.Sprintf("(%.0f + 1.96²/2) / (%.0f + 1.96²) = %s", s.Corns, s.Of, value(s.Centre))}
	case reckon.Half:
		return Labelled{"half", fmt.Sprintf("1.96 × √(%.0f × %.0f / %.0f + 1.96²/4) / (%.0f + 1.96²) = %s points", s.Corns, s.Of-s.Corns, s.Of, s.Of, points(s.Half))}
	case reckon.Interval:
		return Labelled{"95 % interval", fmt.Sprintf("%s ± %s = %s to %s", value(s.Centre), points(s.Half), value(s.Low), value(s.High))}
	}
	return Labelled{}
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
