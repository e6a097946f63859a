package ledger

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/seasons"
)

// Analyses are what a laboratory found in the finished malt, each by its last test. Its
// moisture stands among the figures of the batch.
type Analyses struct {
	Extract    Figure[answer.Share]          `doc:"of the dry malt"`
	Friability Figure[answer.Share]          `doc:"what a friabilimeter rubs through"`
	Colour     Figure[answer.Colour]         `doc:"of the wort"`
	Diastatic  Figure[answer.DiastaticPower] `json:"diastatic_power" doc:"by Windisch and Kolbach"`
	Glucan     Figure[answer.Concentration]  `json:"beta_glucan" doc:"of the wort"`
	DON        Figure[answer.Content]        `json:"don" doc:"deoxynivalenol"`
	NDMA       Figure[answer.Trace]          `json:"ndma" doc:"N-nitrosodimethylamine"`
	Protein    Figure[answer.Share]          `json:"malt_protein" doc:"of the dry malt"`
}

func analysesOf(b *model.Batch) Analyses {
	of := func(what string) seasons.Figure {
		if x := b.TestOf(what); x != nil {
			return seasons.Figure{Value: x.Found.SI, Standing: seasons.Measured}
		}
		return seasons.Figure{}
	}
	return Analyses{
		Extract: figure[answer.Share](of(vocabulary.AnalysisExtract)), Friability: figure[answer.Share](of(vocabulary.AnalysisFriable)),
		Colour: figure[answer.Colour](of(vocabulary.AnalysisColour)), Diastatic: figure[answer.DiastaticPower](of(vocabulary.AnalysisDiastatic)),
		Glucan: figure[answer.Concentration](of(vocabulary.AnalysisGlucan)), DON: figure[answer.Content](of(vocabulary.AnalysisDON)),
		NDMA: figure[answer.Trace](of(vocabulary.AnalysisNDMA)), Protein: figure[answer.Share](of(vocabulary.AnalysisProtein)),
	}
}

// Remark is something that was noticed, in words.
type Remark struct {
	At   time.Time
	Text string
	By   string `doc:"who noticed it; empty where it is not said"`
}

func remarksOf(b *model.Batch) (list []Remark) {
	for i := range b.Remarks {
		x := &b.Remarks[i]
		list = append(list, Remark{x.At.Time, x.Text.Text, x.By.Text})
	}
	return list
}

// lotsOf lists the lots of a mixture.
func lotsOf(b *model.Batch) (list []LotTaken) {
	for _, t := range b.Process.Lots {
		list = append(list, LotTaken{t.Grain.Name, answer.Kilograms(t.Weight.SI)})
	}
	return list
}

func lotOf(b *model.Batch) string {
	if g := b.Process.Grain; g != nil {
		return g.Name
	}
	return ""
}
