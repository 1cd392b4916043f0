package keyfigure

// ISOAllocationEfficiency is AUBT / PBT: how much of the planned time the unit was
// in use (ISO 22400-2, provisional, see ISOTimes).
func ISOAllocationEfficiency(t ISOTimes) (share float64, ok bool) {
	return quotient(t.UnitBusy(), t.PlannedBusy)
}

// ISOUtilisationEfficiency is APT / AUBT: how much of the time in use was
// production (ISO 22400-2, provisional).
func ISOUtilisationEfficiency(t ISOTimes) (share float64, ok bool) {
	return quotient(t.Production, t.UnitBusy())
}

// ISOTechnicalEfficiency is APT / (APT + ADET) (ISO 22400-2, provisional). EN 415-11
// gives the same name to something else, see ENTechnicalEfficiency.
func ISOTechnicalEfficiency(t ISOTimes) (share float64, ok bool) {
	return quotient(t.Production, t.Production+t.Delay)
}

// ISOSetupRatio is AUST / AUPT (ISO 22400-2, provisional).
func ISOSetupRatio(t ISOTimes) (share float64, ok bool) {
	return quotient(t.Setup, t.UnitProcessing())
}

// ISOThroughputRate is PQ / AOET, pieces per unit of time (ISO 22400-2, provisional).
func ISOThroughputRate(t ISOTimes, c ISOCounts) (rate float64, ok bool) {
	return quotient(c.Produced, t.OrderExecution())
}

// ISOProductionProcessRatio is APT / AOET (ISO 22400-2, provisional).
func ISOProductionProcessRatio(t ISOTimes) (share float64, ok bool) {
	return quotient(t.Production, t.OrderExecution())
}

// quotient is above / below; ok is false unless below is above 0.
func quotient(above, below float64) (q float64, ok bool) {
	if !(below > 0) {
		return 0, false
	}
	return above / below, true
}

// quotients are pairs of above and below.
type quotients [][2]float64

// product multiplies them; ok is false if one cannot be formed.
func product(factors quotients) (p float64, ok bool) {
	p = 1
	for _, f := range factors {
		q, ok := quotient(f[0], f[1])
		if !ok {
			return 0, false
		}
		p *= q
	}
	return p, true
}
