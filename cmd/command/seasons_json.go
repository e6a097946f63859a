package command

import (
	"encoding/json"
	"strings"

	"maltwright/cmd/words"
	"maltwright/sim/seasons"
)

// The JSON of batches side by side, as docs/json.md describes it.
type jsonSeasons struct {
	Batches []jsonBatch `json:"batches"`
}

type jsonBatch struct {
	File     string                      `json:"file"`
	Batch    string                      `json:"batch"`
	Process  string                      `json:"process"`
	Began    *string                     `json:"began"`
	Rub      *string                     `json:"rub"`
	Figures  map[string]jsonSeasonFigure `json:"figures"`
	Changes  []jsonStepChange            `json:"changes"`
	Doubtful []jsonDoubt                 `json:"doubtful"`
}

// jsonSeasonFigure is a figure with its standing; both are null where it is missing.
type jsonSeasonFigure struct {
	Value    *float64 `json:"value"`
	Standing *string  `json:"standing"`
}

type jsonStepChange struct {
	Step    string `json:"step"`
	To      string `json:"to"`
	Because string `json:"because"`
}

type jsonDoubt struct {
	What   string  `json:"what"`
	Weight float64 `json:"weight_kg"`
	Dry    float64 `json:"dry_matter_kg"`
}

func writeSeasonsJSON(w *World, rows []recordRow) error {
	var out jsonSeasons
	for i := range rows {
		out.Batches = append(out.Batches, rows[i].json())
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func (r *recordRow) json() jsonBatch {
	b := r.Batch
	j := jsonBatch{File: words.Safe(r.file), Batch: words.Safe(b.Name), Process: words.Safe(b.Process.Name),
		Figures: map[string]jsonSeasonFigure{}, Changes: []jsonStepChange{}, Doubtful: []jsonDoubt{}}
	if !b.Began.IsZero() {
		s := stamp(b.Began.Time)
		j.Began = &s
	}
	if r.Rub != "" {
		j.Rub = &r.Rub
	}
	for _, m := range seasonMeasures {
		var x jsonSeasonFigure
		if f := m.of(r); f.Standing != seasons.Missing {
			s := string(f.Standing)
			x = jsonSeasonFigure{known(m.kind.forPrograms(f.Value)), &s}
		}
		j.Figures[m.key] = x
	}
	for _, c := range b.Changes {
		step, to := saidOf(c)
		j.Changes = append(j.Changes, jsonStepChange{step, to, words.Safe(c.Because)})
	}
	for _, d := range r.Doubts {
		what := "cast"
		if d.Clean {
			what = "clean malt"
		}
		j.Doubtful = append(j.Doubtful, jsonDoubt{what, rounded(d.Weight, 3), rounded(d.Dry, 3)})
	}
	return j
}

// writeSeasonsCSV writes a line a batch, with the units in the heads. The last column
// names each figure that is not measured outright, with its standing: break_h=under.
func writeSeasonsCSV(w *World, rows []recordRow) error {
	head := []string{"file", "batch", "process", "began", "rub"}
	for _, m := range seasonMeasures {
		head = append(head, m.key)
	}
	list := [][]string{append(head, "standing")}
	for i := range rows {
		r := &rows[i]
		began := ""
		if !r.Batch.Began.IsZero() {
			began = stamp(r.Batch.Began.Time)
		}
		cells := []string{words.Safe(r.file), words.Safe(r.Batch.Name), words.Safe(r.Batch.Process.Name), began, r.Rub}
		var standing []string
		for _, m := range seasonMeasures {
			f := m.of(r)
			if f.Standing == seasons.Missing {
				cells = append(cells, "")
				continue
			}
			cells = append(cells, figureCell(m.kind.forPrograms(f.Value), -1))
			if f.Standing != seasons.Measured {
				standing = append(standing, m.key+"="+string(f.Standing))
			}
		}
		list = append(list, append(cells, strings.Join(standing, " ")))
	}
	return writeCSV(w.Out, list)
}
