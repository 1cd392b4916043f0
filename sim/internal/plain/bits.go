package plain

import "math/bits"

// set is a set of small numbers.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }
func (s set) has(i int) bool { return s[i>>6]&(1<<(i&63)) != 0 }

// any says that the set is not empty.
func (s set) any() bool {
	all := uint64(0)
	for _, word := range s {
		all |= word
	}
	return all != 0
}

// lowest is the lowest bit of a word, 0 if there is none.
func lowest(word uint64) uint64 { return word & -word }

// position is that of the lowest bit.
func position(word uint64) int { return bits.TrailingZeros64(word) }
