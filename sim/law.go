package sim

import "tuckline/sim/internal/draw"

// Law is the law of a random value.
type Law = draw.Law
