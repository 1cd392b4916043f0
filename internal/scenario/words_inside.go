package scenario

// Words of what happens inside a station: rejects, tests, pockets, lanes.

type rejectRunsWords struct {
	at
	Enter  perCycles  `yaml:"enter" need:"yes" about:"How often a run begins, among the cycles outside of runs." eg:"0.3 per 1000 cycles"`
	Share  share      `yaml:"share" need:"yes" most:"100 %" about:"Share of the pieces given that is rejected in a run." eg:"30 %"`
	Length meanCycles `yaml:"length" need:"yes" least:"1 cycle" about:"Mean length of a run; single ones differ: at each cycle it ends with the same chance." eg:"12 cycles"`
}

type inspectionWords struct {
	at
	RejectsAfter cycles `yaml:"rejects after" need:"yes" most:"10000 cycles" about:"Cycles from the camera that finds a reject to the place where it leaves. What is on the way survives a stop. The camera looks at every cycle, since what is scrap where rejects leave is other web." eg:"8 cycles"`
}

// resetWords is the work after rejects in a row; a bare time is allowed.
type resetWords struct {
	at
	Lasts durationLaw `yaml:"lasts" need:"yes" about:"How long it takes; reset: 1 min says the same as reset: {lasts: 1 min}." eg:"1 min"`
	Crew  crewNeed    `yaml:"crew" about:"Who resets. Without it: nobody is needed." eg:"operators"`
}

type checkWords struct {
	at
	Every ageLaw      `yaml:"every" need:"yes" about:"Law of the age at which it is due: cycles, pieces given, running or calendar time." eg:"45 min running"`
	Takes count       `yaml:"takes" need:"yes" least:"1" about:"The next good pieces that the station gives are taken; they do not come back." eg:"12 blisters"`
	Lasts durationLaw `yaml:"lasts" need:"yes" about:"How long the test takes." eg:"3 min"`
	Crew  crewNeed    `yaml:"crew" about:"Who tests. Without it: nobody is needed." eg:"operators"`
}

// stackWords is what happens when the input is not complete: wait, empty pocket, or
// how many of these.
type stackWords struct {
	at
	EmptyPocket cycles `yaml:"empty pocket" need:"yes" least:"1 cycle" most:"1000 cycles" about:"So many in a row at most; then it waits." eg:"5 cycles"`
	empty       bool
}

type closingWords struct {
	at
	By     choice `yaml:"by" need:"yes" of:"tuck-in|hot melt" about:"tuck-in, or hot melt, which has to be heated up." eg:"hot melt"`
	HeatUp heatUp `yaml:"heat-up" most:"1 day" about:"Of hot melt: time at the start before which the station cannot work, or none if it is kept hot." eg:"45 min"`
}

type lanesWords struct {
	at
	Rate  pieceRate        `yaml:"rate" need:"yes" about:"Highest rate of the one lane into which they merge." eg:"300/min"`
	Holds count            `yaml:"holds" least:"1" about:"Places of the lanes together. Without it: twice what a cycle gives, so that the next cycle finds room." eg:"8 blisters"`
	Stops named[stopWords] `yaml:"stops" about:"Stops of the lanes, by name; cycles are single pieces, and the stop rate factor of the machine is not theirs." eg:"{jam: {every: 8000 blisters, lasts: 1 min}}"`
}

func (*rejectRunsWords) section() string { return "reject runs" }
func (*inspectionWords) section() string { return "inspection" }
func (*resetWords) section() string      { return "reset" }
func (*checkWords) section() string      { return "a check" }
func (*stackWords) section() string      { return "incomplete stack" }
func (*closingWords) section() string    { return "closing" }
func (*lanesWords) section() string      { return "lanes" }
