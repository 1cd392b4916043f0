package draw

// Law is a law of a random value.
type Law struct{}
