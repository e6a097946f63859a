package value

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/syntax"
)

func at(text string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	if err != nil {
		panic(err)
	}
	return t
}

func TestATimeWithoutItsDateFollowsTheLineAbove(t *testing.T) {
	for _, c := range []struct {
		before, clock, want string
	}{
		{"2026-03-10 21:05", "21:05", "2026-03-10 21:05"},
		{"2026-03-10 21:05", "23:59", "2026-03-10 23:59"},
		{"2026-03-10 21:05", "06:15", "2026-03-11 06:15"},
		{"2026-12-31 21:05", "09:05", "2027-01-01 09:05"},
		{"2026-03-10 21:05", "09:06", ""},
		{"2026-03-10 21:05", "21:04", ""},
		{"2026-03-10 07:00", "06:59", ""},
	} {
		second, ok := Second(syntax.Word{Text: c.clock})
		require.True(t, ok)
		got, ok := Follow(at(c.before), second)
		assert.Equal(t, c.want != "", ok, "%s after %s", c.clock, c.before)
		if ok {
			assert.Equal(t, at(c.want), got, "%s after %s", c.clock, c.before)
		}
	}
}
