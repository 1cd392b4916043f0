package plan

import "math/bits"

// LevelClasses is the number of classes of a level: 0, then 50 equal parts of
// the capacity, the last of which includes full.
const LevelClasses = 51

// BufferRecord measures one place between stations.
type BufferRecord struct {
	// In and Out count pieces that entered and left.
	In, Out int64
	// Level is the level at the first edge and at the last.
	Level [2]int64
	// LevelTime and TransitTime are integrals: pieces times microseconds. What goes
	// beyond 2^62 is counted in LevelCarry, in units of 2^62: a buffer without limit
	// may fill all year. MeanLevel puts both together.
	LevelTime, TransitTime int64
	LevelCarry             int64 `json:",omitempty"`
	// Full is the time in which the whole output of the (first) feeder does not
	// fit, Empty that in which fewer pieces than one take have arrived.
	Full, Empty Micros
	// Kept counts pieces that went into a store beside the line, GivenBack those that
	// came out of it; ByHand those of both that somebody carried. Returned counts pieces that came back from rejected cycles.
	Kept, GivenBack, ByHand, Returned int64
	// Cleared counts pieces that were taken out by hand between two orders.
	Cleared int64
	// HandTime is the time of the work of carrying, of whole loads even if fewer pieces came, by its beginning.
	HandTime Micros
	// RanDry is the time in which the exit lacked pieces and a store beside the line had none.
	RanDry Micros
	// SensorStops counts the reports of a full belt.
	SensorStops int64
	// Stops are those of the store.
	Stops []StopRecord `json:",omitempty"`
	// Max is the highest level.
	Max int64
	// Classes is the time in each class of level; nil unless asked for.
	Classes []Micros `json:",omitempty"`
}

// MeanLevel is the mean level in a window of this length.
func (b *BufferRecord) MeanLevel(window Micros) float64 {
	return (float64(b.LevelTime) + float64(b.LevelCarry)*(1<<62)) / float64(window)
}

// AddLevel counts a level, at least 0, that lasted for a time.
func (b *BufferRecord) AddLevel(level int64, lasted Micros) {
	high, low := bits.Mul64(uint64(level), uint64(lasted))
	b.LevelTime += int64(low & (1<<62 - 1))
	b.LevelCarry += int64(high<<2|low>>62) + b.LevelTime>>62
	b.LevelTime &= 1<<62 - 1
}
