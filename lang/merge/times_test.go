package merge

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const noted = `batch "b" of "p" {
  began 2026-11-23 07:00
  weighed 8.6 kg at 14:00 after soak 1
}
`

// with puts lines behind the last of a record.
func with(lines ...string) string {
	return strings.Replace(noted, "soak 1\n", "soak 1\n  "+strings.Join(lines, "\n  ")+"\n", 1)
}

func TestNotesOfTwoPeopleGoInTheOrderOfTheirTimes(t *testing.T) {
	for name, c := range map[string]struct{ ours, theirs, want string }{
		"a day apart": {with("read bed 15 °C at 2026-11-24 08:00"), with("counted chit 60 of 100 at 2026-11-25 08:00"),
			with("read bed 15 °C at 2026-11-24 08:00", "counted chit 60 of 100 at 2026-11-25 08:00")},
		"woven": {with("read bed 15 °C at 2026-11-24 08:00", "read bed 16 °C at 2026-11-25 20:00"), with("turned at 2026-11-24 21:00", "turned at 2026-11-26 06:00"),
			with("read bed 15 °C at 2026-11-24 08:00", "turned at 2026-11-24 21:00", "read bed 16 °C at 2026-11-25 20:00", "turned at 2026-11-26 06:00")},
		"times without a date": {with("read water 13 °C at 14:10", "read water 14 °C at 22:00"), with("read air 15 °C at 16:00", "read air 14 °C at 00:30"),
			with("read water 13 °C at 14:10", "read air 15 °C at 16:00", "read water 14 °C at 22:00", "read air 14 °C at 00:30")},
		"of one clock on two days": {with("read bed 15 °C at 2026-11-24 08:00", "turned at 20:00"), with("read bed 16 °C at 2026-11-25 08:00", "turned at 20:00"),
			with("read bed 15 °C at 2026-11-24 08:00", "turned at 20:00", "read bed 16 °C at 2026-11-25 08:00", "turned at 20:00")},
		"a line without a time stays where it was": {with("turned at 2026-11-25 08:00", `changed soak 3 to 5 h because "late"`), with("turned at 2026-11-24 08:00"),
			with("turned at 2026-11-24 08:00", "turned at 2026-11-25 08:00", `changed soak 3 to 5 h because "late"`)},
		"of one time": {with("turned at 2026-11-24 08:00"), with("read bed 15 °C at 2026-11-24 08:00"),
			with("read bed 15 °C at 2026-11-24 08:00", "turned at 2026-11-24 08:00")},
	} {
		t.Run(name, func(t *testing.T) {
			for _, sides := range [][2]string{{c.ours, c.theirs}, {c.theirs, c.ours}} {
				got, unsettled := merged(t, noted, sides[0], sides[1])
				assert.Equal(t, tidy(t, c.want), got)
				assert.Zero(t, unsettled)
			}
		})
	}
}

func TestNotesOfWhichNoTimeIsToldAreForAPersonToPlace(t *testing.T) {
	got, unsettled := merged(t, noted, with("turned at 2026-11-25 08:00"), with("weighed 8.9 kg after soak 2"))
	assert.Equal(t, 1, unsettled)
	assert.Contains(t, got, "# both:")
}

func TestTheSameNoteOnBothSidesIsOneReading(t *testing.T) {
	got, unsettled := merged(t, noted, with("turned at 20:00", "turned at 23:00"), with("turned at 20:00", "turned at 22:00"))
	assert.Equal(t, tidy(t, with("turned at 20:00", "turned at 22:00", "turned at 23:00")), got)
	assert.Zero(t, unsettled)
}
