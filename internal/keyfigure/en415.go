package keyfigure

// EN 415-11:2021, which replaced DIN 8743:2014. That efficiency is quality times
// performance, both referred to the operating time, and that the technical figures
// count only causes inside the limits of the machine system was seen in excerpts of
// clauses 4.3 and 4.4. How quality, performance and quality output are read here is
// ours, the technical efficiency is from memory; check both against a licensed copy.

// ENRun is a run as EN 415-11 counts it.
type ENRun struct {
	// Operating is the operating time in minutes.
	Operating float64
	// SetOutput is the output that was set, pieces/min.
	SetOutput float64
	// Made and Good are pieces, Good at most Made.
	Made, Good float64
	// External is the part of the operating time lost by causes outside the limits of
	// the machine system, minutes; ExternalRejects are the rejects by such causes.
	External, ExternalRejects float64
}

// ENQuality is Q = good / made (reading of EN 415-11 ours). ok is false, here and below, when
// there is nothing to divide by.
func ENQuality(r ENRun) (share float64, ok bool) { return quotient(r.Good, r.Made) }

// ENPerformance is P = made / (operating time × set output) (reading of EN 415-11 ours).
func ENPerformance(r ENRun) (share float64, ok bool) {
	return quotient(r.Made, r.Operating*r.SetOutput)
}

// ENEfficiency is E = Q × P (EN 415-11, 4.3): all causes count, wherever they lie.
func ENEfficiency(r ENRun) (share float64, ok bool) {
	return product(quotients{{r.Good, r.Made}, {r.Made, r.Operating * r.SetOutput}})
}

// ENQualityOutput is p_Q, good pieces per minute of operating time (reading of EN 415-11 ours).
func ENQualityOutput(r ENRun) (perMinute float64, ok bool) { return quotient(r.Good, r.Operating) }

// ENTechnicalEfficiency is E_S = (good + external rejects) / ((operating time −
// external stops) × set output) (EN 415-11, 4.4; provisional). ISO 22400-2 gives the
// same name to something else, see ISOTechnicalEfficiency.
func ENTechnicalEfficiency(r ENRun) (share float64, ok bool) {
	return quotient(r.Good+r.ExternalRejects, (r.Operating-r.External)*r.SetOutput)
}
