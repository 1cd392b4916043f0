package plain

import "math/bits"

// set is a set of small numbers.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }
func (s set) has(i int) bool { return s[i>>6]&(1<<(i&63)) != 0 }

// first is the smallest member among those of word w that are in the mask, and the
// mask of those above it; ok is false if there is none.
func (s set) first(w int, mask uint64) (member int, above uint64, ok bool) {
	word := s[w] & mask
	if word == 0 {
		return 0, 0, false
	}
	b := bits.TrailingZeros64(word)
	return w<<6 + b, ^uint64(1) << b, true
}

// members lists all, for rare use.
func (s set) members() []int {
	var all []int
	for w := range s {
		for k, above, ok := s.first(w, ^uint64(0)); ok; k, above, ok = s.first(w, above) {
			all = append(all, k)
		}
	}
	return all
}
