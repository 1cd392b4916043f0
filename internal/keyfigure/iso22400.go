package keyfigure

// ISO 22400-2:2014. Availability, effectiveness, quality ratio and OEE follow the
// definitions quoted in the OPC UA companion specification, annex C.2.4; the text
// of the standard was not seen. Everything else here is provisional: formulas from
// memory of the standard, to be checked against a licensed copy.

// ISOTimes are the time elements of ISO 22400-2 for one work unit, all in the same
// unit of time, each at least 0.
type ISOTimes struct {
	// PlannedBusy is PBT, the time in which the unit was planned to work.
	PlannedBusy float64
	// Production is APT, the time in which it produced.
	Production float64
	// Setup is AUST, the time in which it was set up.
	Setup float64
	// Delay is ADET, stops caused by malfunctions, minor ones included.
	Delay float64
	// Down is ADOT, the time in which it stood though orders were waiting.
	Down float64
}

// ISOCounts are the quantities of ISO 22400-2 in pieces.
type ISOCounts struct {
	// Produced is PQ, Good is GQ, at most Produced.
	Produced, Good float64
	// PlannedRunTime is PRI, the planned time for one piece, in the unit of the times.
	PlannedRunTime float64
}

// UnitProcessing is AUPT = APT + AUST (provisional).
func (t ISOTimes) UnitProcessing() float64 { return t.Production + t.Setup }

// UnitBusy is AUBT = APT + AUST + ADET (provisional).
func (t ISOTimes) UnitBusy() float64 { return t.UnitProcessing() + t.Delay }

// OrderExecution is AOET = APT + AUST + ADET + ADOT (provisional), the time from the
// start of an order to its end.
func (t ISOTimes) OrderExecution() float64 { return t.UnitBusy() + t.Down }

// ISOAvailability is APT / PBT. ok is false, here and below, when there is nothing
// to divide by.
func ISOAvailability(t ISOTimes) (share float64, ok bool) {
	return quotient(t.Production, t.PlannedBusy)
}

// ISOEffectiveness is PRI × PQ / APT. It passes 1 when the unit ran faster than planned.
func ISOEffectiveness(t ISOTimes, c ISOCounts) (share float64, ok bool) {
	return quotient(c.PlannedRunTime*c.Produced, t.Production)
}

// ISOQualityRatio is GQ / PQ.
func ISOQualityRatio(c ISOCounts) (share float64, ok bool) {
	return quotient(c.Good, c.Produced)
}

// ISOOEE is the OEE index, availability × effectiveness × quality ratio, which
// comes to PRI × GQ / PBT.
func ISOOEE(t ISOTimes, c ISOCounts) (share float64, ok bool) {
	return product(quotients{{t.Production, t.PlannedBusy}, {c.PlannedRunTime * c.Produced, t.Production}, {c.Good, c.Produced}})
}

// ISONEE is the net equipment effectiveness index AUPT / PBT × effectiveness ×
// quality ratio: OEE without the loss by set-up (provisional).
func ISONEE(t ISOTimes, c ISOCounts) (share float64, ok bool) {
	return product(quotients{{t.UnitProcessing(), t.PlannedBusy}, {c.PlannedRunTime * c.Produced, t.Production}, {c.Good, c.Produced}})
}
