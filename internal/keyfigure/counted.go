package keyfigure

// Counted is what key figures are computed from: the times and pieces of one machine, or of a line at the
// station that limits it, in one window.
type Counted struct {
	Times  ISOTimes
	Counts ISOCounts
	Run    ENRun
	// Running is the time in which it ran, Scheduled that in which it was not off shift, in minutes.
	Running, Scheduled float64
	// Weight is by what the times of this are multiplied where several stations side by side limit a line: answer
	// pieces a minute; 1 otherwise.
	Weight float64
}

// Figure is one key figure: what it is called where, how it is computed, and how its formula is known.
type Figure struct {
	// Key is its stable name, Name what people say, Standard whose it is.
	Key, Name, Standard string
	// Formula is for people, Source says how it is known.
	Formula, Source string
	// Unit is empty for a share, otherwise "per hour" or "per minute", of pieces.
	Unit string
	of   func(Counted) (float64, bool)
}

// Of is its value; ok is false when there is nothing to divide by.
func (f Figure) Of(c Counted) (value float64, ok bool) { return f.of(c) }

const (
	iso        = "ISO 22400-2"
	en         = "EN 415-11"
	trade      = "common practice"
	quoted     = "as quoted in the OPC UA companion specification, annex C.2.4; the standard itself was not seen, check a licensed copy"
	fromMemory = "from memory of the standard, check a licensed copy"
	clauseThat = "clause 4.3 seen in an excerpt, its terms read by us; check a licensed copy"
	clauseTech = "clause 4.4 seen in an excerpt, formula by us; check a licensed copy"
	noSource   = "common practice, no source"
)

// KeyFigureList are the key figures, in the order in which they are shown.
var KeyFigureList = []Figure{
	{"availability", "availability", iso, "APT / PBT", quoted, "", func(c Counted) (float64, bool) { return ISOAvailability(c.Times) }},
	{"performance", "performance (effectiveness)", iso, "PRI × PQ / APT", quoted, "", func(c Counted) (float64, bool) { return ISOEffectiveness(c.Times, c.Counts) }},
	{"quality", "quality ratio", iso, "GQ / PQ", quoted, "", func(c Counted) (float64, bool) { return ISOQualityRatio(c.Counts) }},
	{"oee", "OEE index", iso, "availability × effectiveness × quality ratio = PRI × GQ / PBT", quoted, "", func(c Counted) (float64, bool) { return ISOOEE(c.Times, c.Counts) }},
	{"nee", "NEE index", iso, "(APT + AUST) / PBT × effectiveness × quality ratio", fromMemory, "", func(c Counted) (float64, bool) { return ISONEE(c.Times, c.Counts) }},
	{"allocation_efficiency", "allocation efficiency", iso, "(APT + AUST + ADET) / PBT", fromMemory, "", func(c Counted) (float64, bool) { return ISOAllocationEfficiency(c.Times) }},
	{"utilisation_efficiency", "utilisation efficiency", iso, "APT / (APT + AUST + ADET)", fromMemory, "", func(c Counted) (float64, bool) { return ISOUtilisationEfficiency(c.Times) }},
	{"technical_efficiency_iso", "technical efficiency of ISO 22400-2", iso, "APT / (APT + ADET)", fromMemory, "", func(c Counted) (float64, bool) { return ISOTechnicalEfficiency(c.Times) }},
	{"setup_ratio", "set-up ratio", iso, "AUST / (APT + AUST)", fromMemory, "", func(c Counted) (float64, bool) { return ISOSetupRatio(c.Times) }},
	{"en_quality", "quality Q", en, "good / made", clauseThat, "", func(c Counted) (float64, bool) { return ENQuality(c.Run) }},
	{"en_performance", "performance P", en, "made / (operating time × set output)", clauseThat, "", func(c Counted) (float64, bool) { return ENPerformance(c.Run) }},
	{"en_efficiency", "efficiency E", en, "Q × P", clauseThat, "", func(c Counted) (float64, bool) { return ENEfficiency(c.Run) }},
	{"en_availability", "availability R", en, "running / operating time", clauseThat, "", func(c Counted) (float64, bool) { return ENAvailability(c.Run, c.Running) }},
	{"en_quality_output", "quality output p_Q", en, "good / operating time", clauseThat, "per minute", func(c Counted) (float64, bool) { return weighed(c, ENQualityOutput) }},
	{"technical_efficiency_en", "technical efficiency E_S of EN 415-11", en, "(good + external rejects) / ((operating time − external) × set output)", fromMemory, "", func(c Counted) (float64, bool) { return ENTechnicalEfficiency(c.Run) }},
	{"en_technical_availability", "technical availability R_S", en, "running / (operating time − external)", clauseTech, "", func(c Counted) (float64, bool) { return ENTechnicalAvailability(c.Run, c.Running) }},
	{"en_technical_quality_output", "technical quality output p_QS", en, "(good + external rejects) / (operating time − external)", clauseTech, "per minute", func(c Counted) (float64, bool) { return weighed(c, ENTechnicalQualityOutput) }},
	{"good_per_scheduled_hour", "good output per scheduled hour", trade, "good / scheduled time", noSource, "per hour", func(c Counted) (float64, bool) { return perHour(c, c.Scheduled) }},
	{"good_per_run_hour", "good output per run hour", trade, "good / running time", noSource, "per hour", func(c Counted) (float64, bool) { return perHour(c, c.Running) }},
}

// weighed is a rate of pieces per minute of times that may be weighed.
func weighed(c Counted, rate func(ENRun) (float64, bool)) (float64, bool) {
	value, ok := rate(c.Run)
	return value * c.Weight, ok
}

func perHour(c Counted, minutes float64) (float64, bool) {
	value, ok := quotient(c.Run.Good, minutes)
	return 60 * value * c.Weight, ok
}

// Add puts together the stations side by side that limit a line: times weighed by what each could
// make in them, in pieces of the answer, so that a planned run time of 1 is that of one piece.
// set is its set output, in pieces of the answer per minute.
func (c *Counted) Add(o Counted, perMinute, set, perPiece float64) {
	add := func(into *float64, minutes float64) { *into += minutes * perMinute }
	add(&c.Times.PlannedBusy, o.Times.PlannedBusy)
	add(&c.Times.Production, o.Times.Production)
	add(&c.Times.Setup, o.Times.Setup)
	add(&c.Times.Delay, o.Times.Delay)
	add(&c.Times.Down, o.Times.Down)
	add(&c.Run.Operating, o.Run.Operating)
	add(&c.Run.External, o.Run.External)
	add(&c.Running, o.Running)
	add(&c.Scheduled, o.Scheduled)
	c.Counts.Produced += o.Counts.Produced * perPiece
	c.Run.Made += o.Run.Made * perPiece
	c.Run.SetOutput = (c.Run.SetOutput*c.Weight + set) / (c.Weight + perMinute)
	c.Counts.PlannedRunTime = 1
	c.Weight += perMinute
}
