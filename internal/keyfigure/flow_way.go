package keyfigure

import "slices"

// downstream lists the stations that take from a buffer, through other buffers too.
func (f *flow) downstream(node int) []int { return f.reach(node, f.after) }

func (f *flow) reach(node int, next [][]int) []int {
	var found []int
	seen := map[int]bool{node: true}
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, other := range next[queue[0]] {
			switch {
			case seen[other]:
				continue
			case other < len(f.line.Stations):
				found = append(found, other)
			default:
				queue = append(queue, other)
			}
			seen[other] = true
		}
	}
	return found
}

// way is the order of the product: every node after all that feed it, and
// otherwise as declared.
func (f *flow) way() []int {
	var order []int
	seen := make([]bool, len(f.before))
	var visit func(int)
	visit = func(node int) {
		if seen[node] {
			return
		}
		seen[node] = true
		for _, from := range f.before[node] {
			visit(from)
		}
		order = append(order, node)
	}
	for node := range f.before {
		visit(node)
	}
	return order
}

// aside are the stations all of whose pieces go into an assembly beside its main flow; they
// make what it needs.
func (f *flow) aside() []bool {
	aside := make([]bool, len(f.line.Stations))
	for _, i := range slices.Backward(f.stationWay()) {
		takers := f.joints[f.out[i]].takers
		aside[i] = len(takers) > 0 && !slices.ContainsFunc(takers, func(k int) bool { return f.in[k] == f.out[i] && !aside[k] })
	}
	return aside
}
