package part

// A web store lies between the splice and the machine. While a splice is made the cycles draw
// on it and the reel stands; afterwards the reel runs faster than the machine until the
// store is full again.

// drawWeb draws the web of n cycles.
func (s *stock) drawWeb(n, amount int64) {
	if s.asked {
		s.store -= amount
		return
	}
	gained := min(n*s.plan.Gains, s.plan.Length-s.store, s.left-amount)
	s.left -= amount + gained
	s.store += gained
}

// quietWeb is the number of cycles that all gain the same and after which the reel, or
// while it is spliced the store, serves one more.
func (s *stock) quietWeb() int64 {
	per, lacks := s.plan.PerCycle, s.plan.Length-s.store
	switch {
	case s.asked:
		return max(0, s.store/per-1)
	case lacks == 0:
		return max(0, s.left/per-1)
	}
	return max(0, min(lacks/s.plan.Gains, (s.left-per)/(per+s.plan.Gains)))
}
