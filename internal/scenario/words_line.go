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
	Loads           choice                `yaml:"loads" of:"while stopped" about:"The station takes its input as soon as it is empty, in any state. Without it: only when it is up." eg:"while stopped"`
	Coupled         text                  `yaml:"coupled" about:"Name of a drive. Stations directly one behind the other that name the same drive are one unit: one cycle, the longest, no place between them; a stop of one stops all." eg:"main drive"`
	StopsWith       text                  `yaml:"stops with" about:"A stop of either station stops both; each keeps its own speed." eg:"cartoner"`
	StopRateFactor  factor                `yaml:"stop rate factor" above:"0" most:"1000" about:"Multiplies how often all its stops come." eg:"1.2"`
	RandomNumbersAs text                  `yaml:"random numbers as" about:"Draws its random numbers as the station of this name does in another layout, so that both meet the same stops. Without it: its own name." eg:"blister machine 1"`
	Stops           named[stopWords]      `yaml:"stops" about:"Its causes of stops, by name." eg:"{minor stop: {every: 1000 cycles, lasts: 2 min}}"`
	Rejects         share                 `yaml:"rejects" most:"100 %" about:"Share of the pieces given that is rejected at the station." eg:"0.8 %"`
	AfterStop       oneOrMore[scrapWords] `yaml:"after stop" about:"Scrap after own stops; a list is allowed." eg:"{if longer than: 1 min, scrap: 8 cycles}"`
	AfterStandstill oneOrMore[scrapWords] `yaml:"after standstill" about:"Scrap after any standstill, blocked and starved included; a list is allowed." eg:"{if longer than: 1 min, scrap: 8 cycles}"`
	Consumes        named[materialWords]  `yaml:"consumes" about:"Its materials, by name: reels, magazines, hoppers." eg:"{leaflets: {magazine: {holds: 800 leaflets}, per cycle: 1 leaflet, refill: {amount: 400 leaflets, lasts: 0.5 min}}}"`
	Web             webWords              `yaml:"web" about:"The format of the web; across times along is checked against gives, index against the reels." eg:"{width: 264 mm, index: 132 mm, across: 4, along: 1}"`
	Forming         choice                `yaml:"forming" of:"thermoform|cold form" about:"How pockets are formed." eg:"thermoform"`
	Sealing         sealingWords          `yaml:"sealing" about:"How long the sealing tool is closed; gives the highest allowed speed." eg:"{dwell share: 0.45, qualified dwell: 0.40 s to 0.60 s}"`
}

type stepWords struct {
	at
	FromLevel level    `yaml:"from level" need:"yes" about:"Level of the buffer before the station from which the step is on." eg:"50 %"`
	BackAt    level    `yaml:"back at" need:"yes" about:"Level at which it is off again; below from level." eg:"40 %"`
	RunAt     stepPace `yaml:"run at" need:"yes" about:"The speed meanwhile: top speed, or a speed up to it." eg:"top speed"`
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

type materialWords struct {
	at
	Reel     reelWords   `yaml:"reel" about:"A reel of web, or of pieces." eg:"{outer: 600 mm, core: 76 mm, thickness: 250 um, unusable: 12 m}"`
	Magazine stockWords  `yaml:"magazine" about:"A magazine that is refilled." eg:"{holds: 800 leaflets}"`
	Hopper   stockWords  `yaml:"hopper" about:"A hopper that is refilled." eg:"{holds: 80000 tablets}"`
	PerCycle use         `yaml:"per cycle" need:"yes" about:"What a cycle draws." eg:"132 mm"`
	Change   durationLaw `yaml:"change" about:"How long the change of a reel lasts; the station stands." eg:"4 min"`
	Crew     crewNeed    `yaml:"crew" about:"Who changes the reel." eg:"operators"`
	Refill   refillWords `yaml:"refill" about:"How a magazine or hopper is refilled." eg:"{amount: 400 leaflets, lasts: 0.5 min, alarm at: 300 leaflets, crew: operators}"`
}

type reelWords struct {
	at
	Outer     length `yaml:"outer" above:"0 mm" about:"Outer diameter." eg:"600 mm"`
	Core      length `yaml:"core" above:"0 mm" about:"Diameter of the core." eg:"76 mm"`
	Thickness length `yaml:"thickness" above:"0 um" about:"Thickness of the web. Its length is π(outer² − core²)/(4 thickness), less what is unusable." eg:"250 um"`
	Unusable  length `yaml:"unusable" about:"Length that cannot be used, lead and tail. Without it: 0 m." eg:"12 m"`
	Holds     count  `yaml:"holds" least:"1" about:"Pieces on the reel, in place of the diameters." eg:"10000 labels"`
}

type stockWords struct {
	at
	Holds count `yaml:"holds" need:"yes" least:"1" about:"Pieces in a full one." eg:"800 leaflets"`
}

type refillWords struct {
	at
	Amount  count       `yaml:"amount" need:"yes" least:"1" about:"Pieces that a refill adds; it must not overfill." eg:"400 leaflets"`
	Lasts   durationLaw `yaml:"lasts" need:"yes" about:"How long it takes." eg:"0.5 min"`
	AlarmAt count       `yaml:"alarm at" about:"Stock at which the refill is asked for; it counts as filled in time. Without it the station stops when the stock is used up." eg:"300 leaflets"`
	Crew    crewNeed    `yaml:"crew" about:"Who refills." eg:"operators"`
}

// conveyorWords is a belt with places of its own.
type conveyorWords struct {
	at
	Name         text       `yaml:"conveyor" need:"yes" about:"Its name, unique in the line." eg:"transfer belt"`
	Like         text       `yaml:"like" about:"Copies every word of another conveyor that is not written here." eg:"branch 1"`
	From         fromWords  `yaml:"from" about:"What feeds it. Without it: the entry above." eg:"blister machine 2"`
	Length       length     `yaml:"length" need:"yes" above:"0 m" about:"Length of the belt." eg:"8 m"`
	Speed        speed      `yaml:"speed" need:"yes" above:"0 m/min" about:"Speed of the belt; length through speed is the time on the way." eg:"24 m/min"`
	Pitch        length     `yaml:"pitch" need:"yes" above:"0 mm" about:"Room that a piece takes when the belt is full; length through pitch, rounded down, is its number of places." eg:"62 mm"`
	Turns        turnsWords `yaml:"turns" about:"Who of several feeders that wait for room goes first. Without it: longest waiting, ties by name." eg:"alternate"`
	Accumulating choice     `yaml:"accumulating" need:"yes" of:"yes" later:"no" about:"Pieces close up while the exit stands." eg:"yes"`
}

// bufferWords is a store.
type bufferWords struct {
	at
	Name    text        `yaml:"buffer" need:"yes" about:"Its name, unique in the line." eg:"transfer store"`
	Like    text        `yaml:"like" about:"Copies every word of another buffer that is not written here." eg:"store 1"`
	From    fromWords   `yaml:"from" about:"What feeds it; a list is a merge. Without it: the entry above." eg:"[branch 1, branch 2]"`
	Holds   places      `yaml:"holds" need:"yes" about:"Its places: pieces, or unlimited. With 0 it counts as not written." eg:"720 blisters"`
	Transit duration    `yaml:"transit" most:"1 day" about:"Time from its entrance to its exit. Without it: 0 s." eg:"20 s"`
	Levels  levelsWords `yaml:"levels" about:"Its switching levels." eg:"{stop upstream: 100 %, restart upstream: 70 %}"`
	Turns   turnsWords  `yaml:"turns" about:"Who of several feeders that wait for room goes first. Without it: longest waiting, ties by name." eg:"branch 1 first"`
	Kind    choice      `yaml:"kind" of:"in line" later:"beside the line|hand magazine" about:"All pieces pass through it." eg:"in line"`
}

type levelsWords struct {
	at
	StopUpstream    level `yaml:"stop upstream" about:"Level of the buffer from which its feeders stop. Without it, or with 100 %: only when a piece finds no place." eg:"100 %"`
	StartDownstream level `yaml:"start downstream" about:"Level, of pieces that have arrived, at which a station behind the buffer that has been starved starts again; at least one take, as which a smaller percentage counts. Without it: as soon as it finds its pieces." eg:"20 %"`
	RestartUpstream level `yaml:"restart upstream" about:"Level, belts before it included, at which they start again. Without it: at the first free place." eg:"70 %"`
}

// crewWords is a number of people.
type crewWords struct {
	at
	People        whole          `yaml:"people" need:"yes" least:"1" most:"1000" about:"How many; NAME: 3 says the same as NAME: {people: 3}." eg:"1"`
	BusyElsewhere elsewhereWords `yaml:"busy elsewhere" about:"Other work outside the line that takes each of them away." eg:"{share: 50 %, spell: 20 min}"`
}

type elsewhereWords struct {
	at
	Share share    `yaml:"share" need:"yes" below:"100 %" about:"Share of the time of each person." eg:"50 %"`
	Spell duration `yaml:"spell" need:"yes" above:"0 s" most:"1 week" about:"Mean length of one such work." eg:"20 min"`
}

func (*stationWords) section() string   { return "a station" }
func (*stepWords) section() string      { return "a speed step" }
func (*groupWords) section() string     { return "group" }
func (*scrapWords) section() string     { return "after stop or after standstill" }
func (*webWords) section() string       { return "web" }
func (*sealingWords) section() string   { return "sealing" }
func (*stopWords) section() string      { return "a stop" }
func (*materialWords) section() string  { return "a material" }
func (*reelWords) section() string      { return "a reel" }
func (*stockWords) section() string     { return "a magazine or hopper" }
func (*refillWords) section() string    { return "refill" }
func (*conveyorWords) section() string  { return "a conveyor" }
func (*bufferWords) section() string    { return "a buffer" }
func (*levelsWords) section() string    { return "levels" }
func (*crewWords) section() string      { return "a crew" }
func (*elsewhereWords) section() string { return "busy elsewhere" }
