package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAsFewStagesAsCanBeAreOutOfPlace(t *testing.T) {
	for _, c := range []struct{ ranks, kept []int }{
		{nil, nil},
		{[]int{0, 1, 2, 3}, []int{0, 1, 2, 3}},
		{[]int{4, 0, 1, 3}, []int{1, 2, 3}},
		{[]int{0, 3, 1, 4}, []int{0, 1, 3}},
		{[]int{1, 0}, []int{0}},
		{[]int{0, 1, 1, 3}, []int{0, 1, 2, 3}},
		{[]int{5, 4, 3}, []int{0}},
	} {
		assert.Equal(t, c.kept, longestRun(c.ranks), "%v", c.ranks)
	}
}
