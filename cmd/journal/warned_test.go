package journal

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFreeWordsOfADangerAreARemark(t *testing.T) {
	for _, c := range []struct{ given, want []string }{
		{[]string{"mould", "seen"}, []string{"remark", `"mould seen"`}},
		{[]string{"bed smells sour at 14:00"}, []string{"remark", `"bed smells sour"`, "at", "14:00"}},
		{[]string{"black", "horns", "at", "the", "edge"}, []string{"remark", `"black horns at the edge"`}},
		{[]string{"no", "mould"}, []string{"no", "mould"}},
		{[]string{"remark", "mould seen"}, []string{"remark", "mould seen"}},
		{[]string{"weighed", "5 kg"}, []string{"weighed", "5 kg"}},
		{nil, nil},
	} {
		assert.Equal(t, c.want, warned(c.given))
	}
}
