package scenario

// stationWords is a machine.
type stationWords struct {
	at
	Name            text                  `yaml:"station" need:"yes" about:"Its name, unique in the line." eg:"cartoner"`
	Like            text                  `yaml:"like" about:"Copies every word of another station that is not written here; the random numbers are its own." eg:"blister machine 1"`
	From            fromWords             `yaml:"from" about:"What feeds it: a buffer, a conveyor or a station; supply is input without limit, {supply: 252000 blisters} a finite one. Without it: the entry above; the first entry has supply." eg:"transfer store"`
	Cycle           cycleLaw              `yaml:"cycle" need:"yes" about:"Set speed, time of a cycle, or a law of that time; from 1 ms to 1 day." eg:"60/min"`
	TopSpeed        pace                  `yaml:"top speed" about:"Highest speed; not below the set speed." eg:"100/min"`
	SpeedSteps      oneOrMore[stepWords]  `yaml:"speed steps" about:"Other speeds by the level of the buffer before the station. Of several that are on, the last of the list counts." eg:"[{from level: 50 %, back at: 40 %, run at: top speed}]"`
	Takes           takesWords            `yaml:"takes" least:"1" about:"Pieces taken at the start of a cycle. Without it: 1. A station that assembles names the buffers, conveyors or stations that it takes from, the main one first, and has no from: {transfer store: 3 blisters, leaflets: 1}." eg:"3 blisters"`
	Gives           count                 `yaml:"gives" least:"1" about:"Pieces given at the end of a cycle. Without it: 1." eg:"1 carton"`
	Sends           sendsWords            `yaml:"sends" about:"How it chooses where its pieces go, if several places or stations are behind it: at the end of a cycle, or when the first place becomes free." eg:"{to: [branch a, branch b], rule: in turn}"`
	Priority        whole                 `yaml:"priority" least:"1" most:"9" about:"Order among stations that take from the same place; smaller takes first, ties by name. Without it: 5." eg:"1"`
	Blocks          choice                `yaml:"blocks" of:"before cycle" about:"The station starts a cycle only if there is room for all that it gives. Without it: it works and keeps what finds no room." eg:"before cycle"`
	Group           groupWords            `yaml:"group" about:"Every n-th cycle takes longer, for example for a case change." eg:"{every: 12 cycles, adds: 3 s}"`
	Ramp            duration              `yaml:"ramp" most:"1 h" about:"Time from standstill to set speed; half of it is lost." eg:"15 s"`
	HeatRecovery    duration              `yaml:"heat recovery" most:"1 h" about:"Time after a standstill longer than a cycle in which nothing moves, until the tools are warm again; the ramp follows it. It counts as running." eg:"20 s"`
	Loads           choice                `yaml:"loads" of:"while stopped" about:"The station takes its input as soon as it is empty, in any state. Without it: only when it is up." eg:"while stopped"`
	Coupled         text                  `yaml:"coupled" about:"Name of a drive. Stations directly one behind the other that name the same drive are one unit: one cycle, the longest, no place between them; a stop of one stops all." eg:"main drive"`
	StopsWith       text                  `yaml:"stops with" about:"A stop of either station stops both; each keeps its own speed." eg:"cartoner"`
	StopRateFactor  factor                `yaml:"stop rate factor" above:"0" most:"1000" about:"Multiplies how often all its stops come." eg:"1.2"`
	RandomNumbersAs text                  `yaml:"random numbers as" about:"Draws its random numbers as the station of this name does in another layout, so that both meet the same stops. Without it: its own name." eg:"blister machine 1"`
	Stops           named[stopWords]      `yaml:"stops" about:"Its causes of stops, by name." eg:"{minor stop: {every: 1000 cycles, lasts: 2 min}}"`
	Rejects         share                 `yaml:"rejects" most:"100 %" about:"Share of the pieces given that is rejected at the station; with reject runs that outside of them." eg:"0.8 %"`
	RejectRuns      rejectRunsWords       `yaml:"reject runs" about:"Rejects that come in runs: a disturbance begins, lasts some cycles and is over." eg:"{enter: 0.3 per 1000 cycles, share: 30 %, length: 12 cycles}"`
	StopAfter       cycles                `yaml:"stop after" least:"1 cycle" about:"So many cycles in a row with a reject found stop the station, under the cause rejects in a row. It needs reset." eg:"3 cycles"`
	Reset           resetWords            `yaml:"reset" about:"The work after such a stop: a time, or its law and who does it." eg:"{lasts: 1 min, crew: operators}"`
	Inspection      inspectionWords       `yaml:"inspection" about:"Where a reject leaves the station." eg:"{rejects after: 8 cycles}"`
	NoReads         share                 `yaml:"no-reads" most:"100 %" about:"Share of the pieces given whose code cannot be read; rejected, and counted apart." eg:"0.3 %"`
	LostPerStop     count                 `yaml:"lost per stop" about:"Pieces that lose their place when the station stops: the next ones given are rejected. Own stops count, those of stations that stop with it, and a full exit for longer than a cycle; not a stop while it is starved if all have left by then, one a cycle." eg:"4 cartons"`
	Checks          named[checkWords]     `yaml:"checks" about:"In-process tests, by name: they take good pieces off the line while the station runs." eg:"{leak test: {every: 45 min running, takes: 12 blisters, lasts: 3 min}}"`
	AfterStop       oneOrMore[scrapWords] `yaml:"after stop" about:"Scrap after own stops; a list is allowed." eg:"{if longer than: 1 min, scrap: 8 cycles}"`
	AfterStandstill oneOrMore[scrapWords] `yaml:"after standstill" about:"Scrap after any standstill, blocked and starved included; a list is allowed." eg:"{if longer than: 1 min, scrap: 8 cycles}"`
	Consumes        named[materialWords]  `yaml:"consumes" about:"Its materials, by name: reels, magazines, hoppers." eg:"{leaflets: {magazine: {holds: 800 leaflets}, per cycle: 1 leaflet, refill: {amount: 400 leaflets, lasts: 0.5 min}}}"`
	IncompleteStack stackWords            `yaml:"incomplete stack" about:"What the station does when its input is not complete: wait, or let an empty pocket run through, for one cycle, so many in a row at most; empty pocket alone is 5 of them. Without it: wait." eg:"{empty pocket: 5 cycles}"`
	Closing         closingWords          `yaml:"closing" about:"How the cartons are closed." eg:"{by: hot melt, heat-up: 45 min}"`
	Lanes           lanesWords            `yaml:"lanes" about:"The pieces of a cycle land in lanes that merge into one: a station of its own, called NAME lanes, through which they pass one by one." eg:"{rate: 300/min, holds: 8 blisters}"`
	Guaranteed      share                 `yaml:"guaranteed" above:"0 %" most:"100 %" about:"Contract efficiency of the machine alone; it is shown beside what the model gives and changes nothing." eg:"92 %"`
	Web             webWords              `yaml:"web" about:"The format of the web; across times along is checked against gives, index against the reels." eg:"{width: 264 mm, index: 132 mm, across: 4, along: 1}"`
	Forming         choice                `yaml:"forming" of:"thermoform|cold form" about:"How pockets are formed." eg:"thermoform"`
	Sealing         sealingWords          `yaml:"sealing" about:"How long the sealing tool is closed; gives the highest allowed speed." eg:"{dwell share: 0.45, qualified dwell: 0.40 s to 0.60 s}"`
}

type stepWords struct {
	at
	FromLevel level    `yaml:"from level" need:"yes" about:"Level of the buffer before the station from which the step is on." eg:"50 %"`
	BackAt    level    `yaml:"back at" need:"yes" about:"Level at which it is off again; below from level." eg:"40 %"`
	RunAt     stepPace `yaml:"run at" need:"yes" about:"The speed meanwhile: top speed, or a speed up to it." eg:"top speed"`
	Delay     duration `yaml:"delay" most:"1 h" about:"How long the level has to stay at or beyond from level, or back at, before the step switches. Without it: 0 s." eg:"5 s"`
}

type groupWords struct {
	at
	Every cycles   `yaml:"every" need:"yes" least:"1 cycle" about:"Which cycles take longer." eg:"12 cycles"`
	Adds  duration `yaml:"adds" need:"yes" above:"0 s" most:"1 h" about:"How much longer." eg:"3 s"`
}

type scrapWords struct {
	at
	IfLongerThan duration    `yaml:"if longer than" about:"Pauses up to this long cost nothing. Without it: 0 s." eg:"1 min"`
	Scrap        scrapAmount `yaml:"scrap" need:"yes" about:"How many cycles are scrapped, the interrupted one first; or a time: all cycles that start or go on within so much running." eg:"8 cycles"`
}

type webWords struct {
	at
	Width  length `yaml:"width" above:"0 mm" about:"Width of the web." eg:"264 mm"`
	Index  length `yaml:"index" above:"0 mm" about:"Web drawn by a cycle." eg:"132 mm"`
	Across whole  `yaml:"across" least:"1" most:"1000" about:"Blisters side by side." eg:"4"`
	Along  whole  `yaml:"along" least:"1" most:"1000" about:"Blisters one behind the other in a cycle." eg:"1"`
}

type sealingWords struct {
	at
	DwellShare     fraction `yaml:"dwell share" above:"0" most:"1" about:"Share of the cycle in which the tool is closed." eg:"0.45"`
	QualifiedDwell span     `yaml:"qualified dwell" about:"The qualified range of that time." eg:"0.40 s to 0.60 s"`
}

type stopWords struct {
	at
	Every    ageLaw          `yaml:"every" need:"yes" about:"Law of the age at which it strikes: cycles, pieces given, running or calendar time." eg:"{dist: exponential, mean: 20 min running}"`
	Lasts    durationLaw     `yaml:"lasts" need:"yes" about:"Law of the work; waiting for the crew comes on top." eg:"{dist: lognormal, mean: 2 min, cv: 0.9}"`
	Crew     crewNeed        `yaml:"crew" about:"Who does the work: one of a crew, or 2 NAME. Without it: nobody is needed." eg:"operators"`
	Priority whole           `yaml:"priority" least:"1" most:"9" about:"Who is served first when people are short; smaller goes first. Without it: 5." eg:"1"`
	Class    choice          `yaml:"class" of:"minor|breakdown|material|quality|external" about:"For the sums in reports. Without it: minor." eg:"breakdown"`
	Scraps   choice          `yaml:"scraps" of:"yes|no" about:"The cycle that it strikes is lost, and its input is scrap. Without it: no, the cycle goes on after the stop." eg:"yes"`
	Renews   oneOrMore[text] `yaml:"renews" about:"Other stops of the station whose clocks it starts anew. Without it: only its own." eg:"[breakdown]"`
}

func (*stationWords) section() string { return "a station" }
func (*stepWords) section() string    { return "a speed step" }
func (*groupWords) section() string   { return "group" }
func (*scrapWords) section() string   { return "after stop or after standstill" }
func (*webWords) section() string     { return "web" }
func (*sealingWords) section() string { return "sealing" }
func (*stopWords) section() string    { return "a stop" }
