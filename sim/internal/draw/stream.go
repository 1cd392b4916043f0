package draw

import (
	"crypto/sha256"
	"encoding/binary"
	"math/rand/v2"
)

// Stream is a stream of uniform numbers of its own for one purpose. It is a
// value: it may be embedded, and copying it copies its state.
type Stream struct {
	source rand.PCG
}

// NewStream starts the stream that belongs to the names (station, purpose, name
// of the stop …) in one replication of one seed. The state is the first 128 bits
// of SHA-256 over seed, replication and names, each name led by its length, so
// that ("a", "bc") and ("ab", "c") are different streams. Other streams are
// never touched: a station more or less changes nothing elsewhere.
func NewStream(seed uint64, replication int, names ...string) Stream {
	text := binary.BigEndian.AppendUint64(nil, seed)
	text = binary.BigEndian.AppendUint64(text, uint64(replication))
	for _, name := range names {
		text = binary.BigEndian.AppendUint64(text, uint64(len(name)))
		text = append(text, name...)
	}
	sum := sha256.Sum256(text)
	var s Stream
	s.source.Seed(binary.BigEndian.Uint64(sum[0:8]), binary.BigEndian.Uint64(sum[8:16]))
	return s
}

// The numbers between which every uniform number lies, both included.
const (
	lowest  = 1.0 / (1 << 54)
	highest = 1 - 1.0/(1<<53)
)

// Uniform gives the next number strictly between 0 and 1: (k + 1/2) / 2^53,
// k being the top 53 bits of the generator.
func (s *Stream) Uniform() float64 {
	return uniform(s.source.Uint64())
}

// uniform rounds the one k whose exact value, 1 - 2^-54, would become 1 down to
// the largest number below 1.
func uniform(bits uint64) float64 {
	return min((float64(bits>>11)+0.5)/(1<<53), highest)
}
