package plain

import "math/bits"

// set is a set of small numbers.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }
func (s set) has(i int) bool { return s[i>>6]&(1<<(i&63)) != 0 }

// from is the smallest member from i on, or -1.
func (s set) from(i int) int {
	w := i >> 6
	if w >= len(s) {
		return -1
	}
	word := s[w] >> (i & 63) << (i & 63)
	for word == 0 {
		w++
		if w == len(s) {
			return -1
		}
		word = s[w]
	}
	return w<<6 + bits.TrailingZeros64(word)
}
