package plain

import "tuckline/sim/internal/plan"

// scanned is up to how many timers a linear scan beats a tree of winners.
const scanned = 24

// calendar holds one pending time for each timer. Few timers are scanned; many
// play a tournament, whose inner nodes keep the smaller time of two.
type calendar struct {
	next []plan.Micros
	tree []plan.Micros // tree[1] is the smallest; the leaves begin at len/2
	base int
}

func (c *calendar) reset(n int) {
	if len(c.next) != n {
		c.next = make([]plan.Micros, n)
		if n > scanned {
			c.base = 1
			for c.base < n {
				c.base *= 2
			}
			c.tree = make([]plan.Micros, 2*c.base)
		}
	}
	for i := range c.next {
		c.next[i] = plan.Never
	}
	for i := range c.tree {
		c.tree[i] = plan.Never
	}
}

// set gives a timer its time.
func (c *calendar) set(i int, t plan.Micros) {
	c.next[i] = t
	if c.tree == nil {
		return
	}
	k := c.base + i
	c.tree[k] = t
	for k > 1 {
		k /= 2
		smaller := min(c.tree[2*k], c.tree[2*k+1])
		if c.tree[k] == smaller {
			return
		}
		c.tree[k] = smaller
	}
}

// first is the smallest time, the first timer that has it, and whether others
// may have it too.
func (c *calendar) first() (t plan.Micros, timer int, more bool) {
	if c.tree != nil {
		return c.tree[1], c.dueInTree(0, c.tree[1]), true
	}
	t, timer = plan.Never, -1
	for i, n := range c.next {
		if n < t {
			t, timer, more = n, i, false
		} else if n == t {
			more = true
		}
	}
	return t, timer, more
}

// due is the first timer from i on whose time is t, or -1.
func (c *calendar) due(i int, t plan.Micros) int {
	if c.tree != nil {
		return c.dueInTree(i, t)
	}
	for ; i < len(c.next); i++ {
		if c.next[i] == t {
			return i
		}
	}
	return -1
}

func (c *calendar) dueInTree(i int, t plan.Micros) int {
	k := c.base + i
	for {
		if k >= 2*c.base {
			return -1
		}
		if c.tree[k] == t {
			break
		}
		// Go right, and up as long as that leaves the level.
		k++
		for k&1 == 0 && k > 1 {
			k /= 2
		}
		if k == 1 {
			return -1
		}
	}
	for k < c.base {
		k *= 2
		if c.tree[k] != t {
			k++
		}
	}
	if k-c.base >= len(c.next) {
		return -1
	}
	return k - c.base
}
