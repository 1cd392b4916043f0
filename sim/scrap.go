package sim

// ScrapRule scraps the next Cycles cycles, or all that start or go on within Lasts of running, after a
// pause longer than LongerThan.
type ScrapRule struct {
	LongerThan Micros
	Cycles     int64
	Lasts      Micros
}
