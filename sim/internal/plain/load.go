package plain

// load lets a station that is stopped take its input; it works when the stop is over and, where it
// blocks before the cycle, there is room.
func (e *Engine) load(s *station) {
	lacked := s.lacked
	if e.inputThere(s) {
		e.loadNow(s)
		return
	}
	s.lacked = lacked // what it lacks while stopped does not starve it: no start level holds it for that
}

func (e *Engine) loadNow(s *station) {
	s.loadedAt = e.takeInput(s)
	s.phase = loaded
}

// beginLoaded starts the work of a station that has its input already.
func (e *Engine) beginLoaded(s *station) {
	if s.plan.BlocksBefore && !e.reserve(s) {
		return
	}
	s.waited = false
	e.begin(s, s.loadedAt)
}
