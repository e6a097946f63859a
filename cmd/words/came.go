package words

import (
	"fmt"

	"maltwright/cmd/answer/effect"
)

// CameRow is a finding that came, went or stays with other figures.
type CameRow struct{ Kind, Severity, Text string }

// CameRows tells them. Where several say the same, each tells where.
func CameRows(list []effect.Finding) (rows []CameRow) {
	times := map[string]int{}
	for _, f := range list {
		times[f.Rule+f.Message]++
	}
	for _, f := range list {
		text := fmt.Sprintf("%s [%s]", f.Message, f.Rule)
		if times[f.Rule+f.Message] > 1 && f.Place != nil {
			text += fmt.Sprintf(" at %s:%d", f.Place.File, f.Place.Line)
		}
		if f.Before != "" {
			text += "; before: " + f.Before
		}
		rows = append(rows, CameRow{string(f.Kind), f.Severity, Safe(text)})
	}
	return rows
}
