package vocabulary

import (
	"slices"

	q "maltwright/lang/quantity"
)

// What a laboratory finds in malt.
const (
	AnalysisMoisture  = MeasureMoisture
	AnalysisExtract   = "extract"
	AnalysisFriable   = "friability"
	AnalysisColour    = "colour"
	AnalysisDiastatic = "diastatic"
	AnalysisGlucan    = "glucan"
	AnalysisDON       = "don"
	AnalysisNDMA      = "ndma"
	AnalysisProtein   = "protein"
)

// Analysis is a figure of malt that is tested.
type Analysis struct {
	Word  string
	Sense *Sense // its first band is that of its dimension
	Doc   string
}

// Dims are the dimensions in which it is written.
func (a Analysis) Dims() []q.Dimension {
	if a.Word == AnalysisMoisture {
		return moisture
	}
	return []q.Dimension{a.Sense.Can.High.Dimension}
}

var analyses = []Analysis{
	{AnalysisMoisture, bandsOf("a tested moisture", "0.1 to 60 %", "1.5 to 50 %", "finished malt keeps below 6 %, green malt up to 50 %: "+practice), "water in the malt, finished or under way, on the whole weight unless it says dry basis"},
	{AnalysisExtract, bandsOf("an extract", "5 to 100 %", "55 to 90 %", "78 to 83 % for malt of barley, more for wheat, less for oats: "+practice).ofDry(), "extract of the fine grind, of the dry malt"},
	{AnalysisFriable, bandsOf("a friability", "0 to 100 %", "25 to 100 %", "above 80 % is well modified: "+practice), "share of the malt that a friabilimeter rubs through"},
	{AnalysisColour, bandsOf("a colour", "0.5 to 3000 EBC", "1.5 to 1700 EBC", practice), "colour of the wort; °L is read as Lovibond here"},
	{AnalysisDiastatic, bandsOf("a diastatic power", "0 to 1200 °WK", "0 to 700 °WK", practice), "how much starch its enzymes break down"},
	{AnalysisGlucan, bandsOf("a content of beta-glucan", "0 to 10000 mg/l", "5 to 1500 mg/l", "below 200 mg/l for an even malt: "+practice), "beta-glucan of the wort"},
	{AnalysisDON, bandsOf("a content of DON", "0 to 200 mg/kg", "0 to 10 mg/kg", practice), "deoxynivalenol, a poison of mould"},
	{AnalysisNDMA, bandsOf("a content of NDMA", "0 to 5000 µg/kg", "0 to 50 µg/kg", practice), "N-nitrosodimethylamine, which flue gas makes in malt"},
	{AnalysisProtein, protein, "protein of the dry malt"},
}

// Analyses lists what is tested of malt, in the order in which it is shown.
func Analyses() []Analysis { return slices.Clone(analyses) }

// FindAnalysis finds an analysis by its word.
func FindAnalysis(word string) (Analysis, bool) {
	i := slices.IndexFunc(analyses, func(a Analysis) bool { return a.Word == word })
	if i < 0 {
		return Analysis{}, false
	}
	return analyses[i], true
}

func analysisWords() (list []string) {
	for _, a := range analyses {
		list = append(list, a.Word)
	}
	return list
}

// analysisDims are the dimensions of all of them, each once.
func analysisDims() (list []q.Dimension) {
	for _, a := range analyses {
		for _, d := range a.Dims() {
			if !slices.Contains(list, d) {
				list = append(list, d)
			}
		}
	}
	return list
}
