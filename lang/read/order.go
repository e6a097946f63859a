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
	ranks := ranksOf(p.Stages)
	kept := longestRun(ranks)
	for i, st := range p.Stages {
		if _, ok := slices.BinarySearch(kept, i); ok {
			continue
		}
		for _, k := range kept {
			if k < i && ranks[k] > ranks[i] || k > i && ranks[k] < ranks[i] {
				f := outOfOrder(st, p.Stages[k], k < i)
				if st.Kind() == model.SteepStage && slices.ContainsFunc(p.Stages[:i], func(s model.Stage) bool { return s.Kind() == model.SteepStage }) {
					f.Hint = "grain that is steeped again germinates again: write another germinate behind it, or move the stage"
				}
				b.note(f)
				break
			}
		}
	}
}

// ranksOf gives each stage its place in the order of the work. A steep that wets growing
// grain again, for another germinate behind it, ranks as the growing that it is part of.
func ranksOf(stages []model.Stage) []int {
	order, ranks := model.Order(), make([]int, len(stages))
	steeped, grown := false, false
	for i, st := range stages {
		ranks[i] = slices.Index(order, st.Kind())
		switch {
		case st.Kind() == model.GerminateStage:
			grown = grown || steeped
		case st.Kind() == model.SteepStage && grown && growsAfter(stages[i:]):
			ranks[i] = slices.Index(order, model.GerminateStage)
		}
		steeped = steeped || st.Kind() == model.SteepStage
	}
	return ranks
}

// growsAfter tells whether grain germinates behind the steeps that a list begins with.
func growsAfter(stages []model.Stage) bool {
	i := slices.IndexFunc(stages, func(st model.Stage) bool { return st.Kind() != model.SteepStage })
	return i >= 0 && stages[i].Kind() == model.GerminateStage
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
