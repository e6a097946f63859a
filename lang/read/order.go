package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// stageOrder reports the stages that stand in the wrong place: as few of them as
// would have to be moved. The others are the longest run, with gaps, that is in
// the order of the work.
func (b *builder) stageOrder(p *model.Process) {
	order, ranks := model.Order(), make([]int, len(p.Stages))
	for i, st := range p.Stages {
		ranks[i] = slices.Index(order, st.Kind())
	}
	kept := longestRun(ranks)
	for i, st := range p.Stages {
		if _, ok := slices.BinarySearch(kept, i); ok {
			continue
		}
		for _, k := range kept {
			if k < i && ranks[k] > ranks[i] || k > i && ranks[k] < ranks[i] {
				b.note(outOfOrder(st, p.Stages[k], k < i))
				break
			}
		}
	}
}

func outOfOrder(st, other model.Stage, below bool) finding.Finding {
	side := map[bool]string{true: "below", false: "above"}[below]
	f := stageOutOfOrder.At(st.Place(), fmt.Sprintf("%s stands %s %s", st.Kind(), side, other.Kind()))
	f.Related = []finding.Related{{Place: other.Place(), Message: fmt.Sprintf("%s is here", other.Kind())}}
	return f
}

// longestRun gives the places of a longest run of ranks, with gaps, that never
// falls. Behind each place only the best run that ends in each rank matters.
func longestRun(ranks []int) []int {
	length, before := make([]int, len(ranks)), make([]int, len(ranks))
	lastOf := map[int]int{} // by rank, the place where the longest run that ends in it ends
	end := -1
	for i, rank := range ranks {
		before[i] = -1
		for r, j := range lastOf {
			if r <= rank && (length[j] > length[i] || length[j] == length[i] && j < before[i]) {
				length[i], before[i] = length[j], j
			}
		}
		length[i]++
		if j, ok := lastOf[rank]; !ok || length[i] > length[j] {
			lastOf[rank] = i
		}
		if end < 0 || length[i] > length[end] {
			end = i
		}
	}
	var run []int
	for ; end >= 0; end = before[end] {
		run = append(run, end)
	}
	slices.Reverse(run)
	return run
}
