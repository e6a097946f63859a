package command

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/sim/reckon"
)

// writeReckonText writes the figures, the working below them, then the notes.
func writeReckonText(w *World, _ string, a reckon.Answer) error {
	var b strings.Builder
	aligned(&b, "", len(a.Figures), func(i int) (string, string) { return a.Figures[i].Label, a.Figures[i].Text })
	b.WriteString("\n")
	aligned(&b, "  ", len(a.Working), func(i int) (string, string) { return a.Working[i].Label, a.Working[i].Sum })
	for _, n := range a.Notes {
		b.WriteString("\n")
		for i, line := range words.Wrap("note: "+n, w.width()-2) {
			fmt.Fprintf(&b, "%s%s\n", strings.Repeat("  ", min(i, 1)), line)
		}
	}
	_, err := fmt.Fprint(w.Out, b.String())
	return err
}

// aligned writes rows of a label and a text, the texts below each other.
func aligned(b *strings.Builder, indent string, n int, row func(int) (label, text string)) {
	width := 0
	for i := range n {
		label, _ := row(i)
		width = max(width, uniseg.StringWidth(label))
	}
	for i := range n {
		label, text := row(i)
		fmt.Fprintf(b, "%s%s%s  %s\n", indent, label, strings.Repeat(" ", width-uniseg.StringWidth(label)), text)
	}
}

type jsonReckoning struct {
	Reckoning string                `json:"reckoning"`
	Figures   map[string]jsonFigure `json:"figures"`
	Working   []jsonLine            `json:"working"`
	Notes     []string              `json:"notes"`
}

type jsonFigure struct {
	Label string  `json:"label"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	SI    float64 `json:"si"`
	Text  string  `json:"text"`
}

type jsonLine struct {
	Label string `json:"label"`
	Sum   string `json:"sum"`
}

func writeReckonJSON(w *World, kind string, a reckon.Answer) error {
	out := jsonReckoning{kind, map[string]jsonFigure{}, []jsonLine{}, append([]string{}, a.Notes...)}
	for _, f := range a.Figures {
		out.Figures[f.Key] = jsonFigure{f.Label, f.Value, f.Unit, f.SI, f.Text}
	}
	for _, l := range a.Working {
		out.Working = append(out.Working, jsonLine(l))
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}
