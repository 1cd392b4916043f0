package part

import (
	"math"

	"tuckline/sim/internal/draw"
)

// gaps picks a share of what goes by: it draws how many go free before the next
// that is picked.
type gaps struct {
	share  float64
	stream draw.Stream
	free   int64
}

func newGaps(share float64, s draw.Stream) gaps {
	g := gaps{share: share, stream: s}
	g.free = g.next()
	return g
}

// noGaps picks nothing and needs no stream.
func noGaps() gaps { return gaps{free: math.MaxInt64} }

func (g *gaps) next() int64 { return draw.Gap(g.stream.Uniform(), g.share) }

// passed says that n went by and none of them was picked.
func (g *gaps) passed(n int64) {
	if g.share > 0 {
		g.free -= n
	}
}

// of says how many of the next n are picked.
func (g *gaps) of(n int64) (picked int64) {
	for g.free < n {
		picked++
		n -= g.free + 1
		g.free = g.next()
	}
	g.passed(n)
	return picked
}

// mayGap makes gaps if there is a share, so that a stream is found only where it is needed.
func mayGap(share float64, stream streams, names ...string) gaps {
	if share > 0 {
		return newGaps(share, stream(names...))
	}
	return noGaps()
}

// streams finds a stream by its names.
type streams func(names ...string) draw.Stream
