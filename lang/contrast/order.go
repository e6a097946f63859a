package contrast

import "sort"

// anchor links the equal ends of both sides, then what says the same and stands
// once on each side, as far as the order is kept, and the equal neighbours of these.
func anchor(old, new []line, link func(int, int)) {
	head, tailOld, tailNew := 0, len(old), len(new)
	for head < tailOld && head < tailNew && old[head].say == new[head].say {
		link(head, head)
		head++
	}
	for tailOld > head && tailNew > head && old[tailOld-1].say == new[tailNew-1].say {
		tailOld--
		tailNew--
		link(tailOld, tailNew)
	}
	points := rising(once(old, new, head, tailOld, tailNew))
	i, j := head, head
	for _, p := range append(points, point{tailOld, tailNew}) {
		// forward from the last point, then back from this one
		for i < p.old && j < p.new && old[i].say == new[j].say {
			link(i, j)
			i, j = i+1, j+1
		}
		a, b := p.old, p.new
		for a > i && b > j && old[a-1].say == new[b-1].say {
			a, b = a-1, b-1
			link(a, b)
		}
		if p.old < tailOld {
			link(p.old, p.new)
		}
		i, j = p.old+1, p.new+1
	}
}

type point struct{ old, new int }

// once lists the sayings that stand once on each side, in the order of the old.
func once(old, new []line, head, tailOld, tailNew int) []point {
	count := map[string]int{}
	at := map[string]int{}
	for j := head; j < tailNew; j++ {
		count[new[j].say]++
		at[new[j].say] = j
	}
	seen := map[string]int{}
	for i := head; i < tailOld; i++ {
		seen[old[i].say]++
	}
	var out []point
	for i := head; i < tailOld; i++ {
		if s := old[i].say; seen[s] == 1 && count[s] == 1 {
			out = append(out, point{i, at[s]})
		}
	}
	return out
}

// rising is the longest run of points that rises on both sides.
func rising(points []point) []point {
	var tails []int // index of the point that ends the best run of each length
	back := make([]int, len(points))
	for i, p := range points {
		k := sort.Search(len(tails), func(k int) bool { return points[tails[k]].new >= p.new })
		back[i] = -1
		if k > 0 {
			back[i] = tails[k-1]
		}
		if k == len(tails) {
			tails = append(tails, i)
		} else {
			tails[k] = i
		}
	}
	if len(tails) == 0 {
		return nil
	}
	out := make([]point, len(tails))
	for i, k := tails[len(tails)-1], len(tails)-1; k >= 0; i, k = back[i], k-1 {
		out[k] = points[i]
	}
	return out
}

// between links, in each gap between linked statements, those of the same verb and
// name, in order.
func between(old, new []line, toNew []int, name func(line) string, link func(int, int)) {
	i, j := 0, 0
	for i <= len(old) {
		end := i
		for end < len(old) && toNew[end] < 0 {
			end++
		}
		endNew := len(new)
		if end < len(old) {
			endNew = toNew[end]
		}
		gap(old, new, i, end, j, endNew, name, link)
		i, j = end+1, endNew+1
	}
}

// gap pairs by name: the statements of one name of the old side wait in a queue for
// those of the new.
func gap(old, new []line, i, end, j, endNew int, name func(line) string, link func(int, int)) {
	queue := map[string][]int{}
	for ; i < end; i++ {
		k := name(old[i])
		queue[k] = append(queue[k], i)
	}
	last := -1
	for ; j < endNew; j++ {
		k := name(new[j])
		q := queue[k]
		for len(q) > 0 && q[0] < last {
			q = q[1:]
		}
		if len(q) > 0 {
			link(q[0], j)
			last, q = q[0], q[1:]
		}
		queue[k] = q
	}
}
