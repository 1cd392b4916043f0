package keyfigure

// ENAvailability is R, the share of the operating time in which the system ran (reading of EN 415-11 ours,
// check a licensed copy); running is in the unit of the operating time. ok is false, here and below, when there is nothing to
// divide by.
func ENAvailability(r ENRun, running float64) (share float64, ok bool) {
	return quotient(running, r.Operating)
}

// ENTechnicalAvailability is R_S, the same without the time lost by causes outside the limits of the machine
// system (clause 4.4 seen in an excerpt; formula ours).
func ENTechnicalAvailability(r ENRun, running float64) (share float64, ok bool) {
	return quotient(running, r.Operating-r.External)
}

// ENTechnicalQualityOutput is p_QS, good pieces and externally caused rejects per minute of operating time without
// the time lost by external causes (clause 4.4 seen in an excerpt; formula ours).
func ENTechnicalQualityOutput(r ENRun) (perMinute float64, ok bool) {
	return quotient(r.Good+r.ExternalRejects, r.Operating-r.External)
}
