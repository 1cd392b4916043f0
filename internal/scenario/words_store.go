package scenario

// conveyorWords is a belt with places of its own.
type conveyorWords struct {
	at
	Name         text         `yaml:"conveyor" need:"yes" about:"Its name, unique in the line." eg:"transfer belt"`
	Like         text         `yaml:"like" about:"Copies every word of another conveyor that is not written here." eg:"branch 1"`
	From         fromWords    `yaml:"from" about:"What feeds it. Without it: the entry above." eg:"blister machine 2"`
	Length       length       `yaml:"length" need:"yes" above:"0 m" about:"Length of the belt." eg:"8 m"`
	Speed        speed        `yaml:"speed" need:"yes" above:"0 m/min" about:"Speed of the belt; length through speed is the time on the way." eg:"24 m/min"`
	Pitch        length       `yaml:"pitch" need:"yes" above:"0 mm" about:"Room that a piece takes when the belt is full; length through pitch, rounded down, is its number of places." eg:"62 mm"`
	Turns        turnsWords   `yaml:"turns" about:"Who of several feeders that wait for room goes first. Without it: longest waiting, ties by name." eg:"alternate"`
	Accumulating choice       `yaml:"accumulating" need:"yes" of:"yes|no" about:"yes: pieces close up while the exit stands. no: the belt stands with all that is on it until the piece at its exit is taken." eg:"yes"`
	Sensors      sensorsWords `yaml:"sensors" about:"Sensors that stop and release the stations before an accumulating belt." eg:"{full: {at: 3 m, delay: 2 s}, clear: {at: 1 m, delay: 2 s}}"`
}

type sensorsWords struct {
	at
	Full  sensorWords `yaml:"full" need:"yes" about:"Reports when standing pieces have reached it for its delay: the stations before the belt stop." eg:"{at: 3 m, delay: 2 s}"`
	Clear sensorWords `yaml:"clear" about:"Reports when standing pieces have not reached it for its delay: they start again. At the place of full, or nearer the exit; farther from it only with a delay. Without it: the sensor full itself, with its delay." eg:"{at: 1 m, delay: 2 s}"`
}

type sensorWords struct {
	at
	At    length   `yaml:"at" need:"yes" about:"Its distance from the exit of the belt." eg:"1 m"`
	Delay duration `yaml:"delay" most:"1 h" about:"How long it has to see the same before it reports. Without it: 0 s." eg:"2 s"`
}

// bufferWords is a store.
type bufferWords struct {
	at
	Name      text                  `yaml:"buffer" need:"yes" about:"Its name, unique in the line." eg:"transfer store"`
	Like      text                  `yaml:"like" about:"Copies every word of another buffer that is not written here." eg:"store 1"`
	From      fromWords             `yaml:"from" about:"What feeds it; a list is a merge. Without it: the entry above." eg:"[branch 1, branch 2]"`
	Holds     places                `yaml:"holds" need:"yes" about:"Its places: pieces, or unlimited. With 0 it counts as not written." eg:"720 blisters"`
	Transit   duration              `yaml:"transit" most:"1 day" about:"Time from its entrance to its exit. Without it: 0 s." eg:"20 s"`
	Levels    levelsWords           `yaml:"levels" about:"Its switching levels." eg:"{stop upstream: 100 %, restart upstream: 70 %}"`
	Turns     turnsWords            `yaml:"turns" about:"Who of several feeders that wait for room goes first. Without it: longest waiting, ties by name." eg:"branch 1 first"`
	Kind      choice                `yaml:"kind" of:"in line|beside the line|hand magazine" about:"in line: all pieces pass through it. beside the line: pieces go straight on while the exit takes them, into the store when it does not, and out of it when the exit takes more than comes. hand magazine: beside the line, and somebody carries the pieces. Without it: in line." eg:"in line"`
	Leaves    choice                `yaml:"leaves" of:"first in first out|last in first out" about:"Which pieces leave first; it changes how long pieces stay, not how many go. Without it: first in first out." eg:"last in first out"`
	Keeps     count                 `yaml:"keeps" about:"Pieces that always stay in it, unless no more input can come." eg:"60 blisters"`
	InAtMost  pieceRate             `yaml:"in at most" about:"Highest rate at which pieces go in. Without it: no limit." eg:"300/min"`
	OutAtMost pieceRate             `yaml:"out at most" about:"Highest rate at which pieces come out. Without it: no limit." eg:"300/min"`
	Surplus   pieceRate             `yaml:"surplus" about:"Of a store beside the line: highest rate out of it while pieces also come straight. Without it: no limit." eg:"20/min"`
	HandRate  pieceRate             `yaml:"hand rate" about:"Of a hand magazine: pieces that one person carries in a minute." eg:"90/min"`
	Load      count                 `yaml:"load" least:"1" about:"Of a hand magazine: pieces that are carried at a time." eg:"30 blisters"`
	Crew      crewNeed              `yaml:"crew" about:"Of a hand magazine: who carries." eg:"operators"`
	Stock     count                 `yaml:"stock" about:"Of a hand magazine: pieces in it at the start. Without it: 0." eg:"600 blisters"`
	Returns   returnsWords          `yaml:"returns" about:"Of a hand magazine: what comes back from cycles that the station behind it has rejected." eg:"{share: 50 %, inspection: 0.2 min, crew: operators}"`
	Stops     named[storeStopWords] `yaml:"stops" about:"The store's own stops, by name: nothing goes in or out meanwhile." eg:"{jam: {every: 20000 blisters, lasts: 2 min}}"`
}

type levelsWords struct {
	at
	StopUpstream    level  `yaml:"stop upstream" about:"Level of the buffer from which its feeders stop. Without it, or with 100 %: only when a piece finds no place." eg:"100 %"`
	StartDownstream level  `yaml:"start downstream" about:"Level, of pieces that have arrived, at which a station behind the buffer that has been starved starts again; at least one take, as which a smaller percentage counts. Without it: as soon as it finds its pieces." eg:"20 %"`
	EmptyOut        choice `yaml:"empty out at batch end" of:"yes|no" about:"Whether what the buffer keeps, and what waits for start downstream, leaves through the line at the end of an order. no: it is taken out by hand and counted as cleared. Without it: yes." eg:"yes"`
	RestartUpstream level  `yaml:"restart upstream" about:"Level, belts before it included, at which they start again. Without it: at the first free place." eg:"70 %"`
}

type returnsWords struct {
	at
	Share      share       `yaml:"share" need:"yes" most:"100 %" about:"Share of the rejected cycles of which everything that they took comes back." eg:"50 %"`
	Inspection durationLaw `yaml:"inspection" need:"yes" about:"How long the inspection of what one cycle took lasts." eg:"0.2 min"`
	Crew       crewNeed    `yaml:"crew" about:"Who inspects. Without it: nobody is needed." eg:"operators"`
}

type storeStopWords struct {
	at
	Every    ageLaw      `yaml:"every" need:"yes" about:"Law of the age at which it strikes: pieces that went in, or calendar time." eg:"{dist: exponential, mean: 20000 blisters}"`
	Lasts    durationLaw `yaml:"lasts" need:"yes" about:"Law of the work; waiting for the crew comes on top." eg:"2 min"`
	Crew     crewNeed    `yaml:"crew" about:"Who does the work. Without it: nobody is needed." eg:"operators"`
	Priority whole       `yaml:"priority" least:"1" most:"9" about:"Who is served first when people are short; smaller goes first. Without it: 5." eg:"1"`
	Class    choice      `yaml:"class" of:"minor|breakdown|material|quality|external" about:"For the sums in reports. Without it: minor." eg:"breakdown"`
}

func (*conveyorWords) section() string  { return "a conveyor" }
func (*bufferWords) section() string    { return "a buffer" }
func (*levelsWords) section() string    { return "levels" }
func (*sensorsWords) section() string   { return "sensors" }
func (*sensorWords) section() string    { return "a sensor" }
func (*returnsWords) section() string   { return "returns" }
func (*storeStopWords) section() string { return "a stop of a store" }
