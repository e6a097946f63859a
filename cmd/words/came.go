package words

import (
	"fmt"
	"regexp"

	"maltwright/cmd/answer/effect"
)

// CameRow is a finding that came, went or moved: it says the same with other figures.
type CameRow struct{ Kind, Severity, Text string }

// CameRows tells them. Where several say the same, each tells where.
func CameRows(list []effect.Finding) (rows []CameRow) {
	times := map[string]int{}
	for _, f := range list {
		times[f.Rule+f.Message]++
	}
	for _, f := range list {
		kind, message := string(f.Kind), f.Message
		if f.Before != "" {
			kind, message = "moved", moved(f.Before, f.Message)
		}
		text := fmt.Sprintf("%s [%s]", message, f.Rule)
		if times[f.Rule+f.Message] > 1 && f.Place != nil {
			text += fmt.Sprintf(" at %s:%d", f.Place.File, f.Place.Line)
		}
		rows = append(rows, CameRow{kind, f.Severity, Safe(text)})
	}
	return rows
}

var figure = regexp.MustCompile(`-?\d[\d.,]*\d|-?\d`)

// moved is a message that says the same with other figures: each of those as old → new.
func moved(before, now string) string {
	old, new := figure.FindAllStringIndex(before, -1), figure.FindAllStringIndex(now, -1)
	if len(old) != len(new) {
		return before + " → " + now
	}
	out, from := "", 0
	for i, at := range new {
		out += now[from:at[0]]
		if was := before[old[i][0]:old[i][1]]; was != now[at[0]:at[1]] {
			out += was + " → "
		}
		out, from = out+now[at[0]:at[1]], at[1]
	}
	return out + now[from:]
}
