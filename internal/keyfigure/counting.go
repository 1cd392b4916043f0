package keyfigure

import "slices"

// counting is where the pieces of the answer are counted.
type counting struct {
	// stations are those after which they are counted, in the order of the line.
	stations []int
	// to and from say of every node whether its pieces reach a count, and
	// whether counted pieces reach it; a station that is counted is in both. beside are the
	// nodes from which other pieces come that are put together with counted ones.
	to, from, beside []bool
}

// newCounting leaves out what is not a station.
func (f *flow) newCounting(stations []int) *counting {
	c := &counting{to: make([]bool, len(f.before)), from: make([]bool, len(f.before)), beside: make([]bool, len(f.before))}
	for _, i := range stations {
		if i >= 0 && i < len(f.line.Stations) {
			c.stations = append(c.stations, i)
			mark(c.to, i, f.before)
			mark(c.from, i, f.after)
		}
	}
	for i := range f.line.Stations {
		for _, node := range f.before[i] {
			if c.from[i] && len(f.before[i]) > 1 && !c.from[node] && !c.to[node] {
				mark(c.beside, node, f.before)
			}
		}
	}
	return c
}

// union marks what is marked in either.
func union(a, b []bool) []bool {
	all := make([]bool, len(a))
	for i := range all {
		all[i] = a[i] || b[i]
	}
	return all
}

// mark marks a node and all that follow it.
func mark(marked []bool, node int, next [][]int) {
	marked[node] = true
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, other := range next[queue[0]] {
			if !marked[other] {
				marked[other] = true
				queue = append(queue, other)
			}
		}
	}
}

// counted says that pieces are counted after a station.
func (c *counting) counted(station int) bool { return slices.Contains(c.stations, station) }

// stationWay lists the stations in the order of the product.
func (f *flow) stationWay() []int {
	return slices.DeleteFunc(f.way(), func(node int) bool { return node >= len(f.line.Stations) })
}
