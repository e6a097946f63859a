package merge

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/layout"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
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

// notesOf draws the lines that somebody notes behind 14:00 of the first day, and when
// each of them was.
func notesOf(t *rapid.T, who string) (lines, said []string) {
	at := time.Date(2026, 11, 23, 14, 0, 0, 0, time.Local)
	for range rapid.IntRange(0, 5).Draw(t, who) {
		gap := rapid.IntRange(0, 30).Draw(t, "h")
		at = at.Add(time.Duration(gap) * time.Hour)
		what, stamp := rapid.SampledFrom([]string{"turned", "read bed 15 °C", "read bed 16 °C"}).Draw(t, "what"), at.Format("15:04")
		if gap >= 12 || rapid.Bool().Draw(t, "dated") {
			stamp = at.Format("2006-01-02 15:04")
		}
		lines, said = append(lines, what+" at "+stamp), append(said, what+" "+at.String())
	}
	return lines, said
}

// No reading is lost or has another time, and none goes back.
func TestNotesOfTwoPeopleKeepTheirTimes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		x, saidX := notesOf(rt, "ours")
		y, saidY := notesOf(rt, "theirs")
		text, unsettled := merged(rt, noted, with(x...), with(y...))
		require.Zero(rt, unsettled, text)
		batch := tree(rt, text).Top.Statements[0].Body.Statements
		times := value.Times(batch)
		var last time.Time
		got := map[string]bool{}
		for _, s := range batch {
			at := times[s]
			assert.False(rt, at.Before(last), text)
			last = at
			got[said(s)+" "+at.String()] = true
		}
		for _, want := range append(saidX, saidY...) {
			assert.True(rt, got[want], "%s is not in\n%s", want, text)
		}
	})
}

func said(s *syntax.Statement) string {
	if len(s.Terms) < 2 {
		return s.Verb.Text
	}
	return "read bed " + map[bool]string{true: "15 °C", false: "16 °C"}[strings.Contains(layout.Statement(s, vocabulary.Batch), "15 °C")]
}
