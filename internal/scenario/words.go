package scenario

// The words of the format, as Go types: reading, --set, the JSON Schema and the
// page of all words are made from them. about is the meaning, eg an example that
// a test reads, need, least, above, most and below are what is checked.

// fileWords is the whole file.
type fileWords struct {
	at
	Format     formatNumber          `yaml:"tuckline" need:"yes" about:"Says that this is a scenario and which version of the format it has. It is the first key." eg:"1"`
	Title      text                  `yaml:"title" about:"What the scenario is; heads every report." eg:"Lowmere, hall 4"`
	Question   text                  `yaml:"question" about:"What is to be found out." eg:"How large must the store be?"`
	Project    projectWords          `yaml:"project" about:"For whom it is made." eg:"{client: Lowmere, number: L4-01, revision: A, status: draft}"`
	Product    productWords          `yaml:"product" about:"The format sheet; it is checked against the stations." eg:"{name: ALDER-30, tablet: {mass: 250 mg}, blister: {tablets: 10}, carton: {blisters: 3}}"`
	Answer     answerWords           `yaml:"answer" about:"What is counted, where, and per what. Without it: the good pieces of the last station, per hour." eg:"{in: cartons, counted after: tamper label, per: shift}"`
	Run        runWords              `yaml:"run" about:"How the line is simulated." eg:"{warm-up: 2 h, measure: 8 h, replications: 40, confidence: 95 %, seed: 4711}"`
	Calendar   calendarWords         `yaml:"calendar" about:"The working time. Without it: the line works always." eg:"{days: Mon-Fri, shifts: {early: {from: 06:00, to: 14:00}}, hours a year: 2000 h}"`
	Crews      named[crewWords]      `yaml:"crews" about:"The people who do the work of stops, changes and refills, by the name of the crew." eg:"{operators: 3}"`
	KeyFigures keyFiguresWords       `yaml:"key figures" about:"How OEE and its parts are counted." eg:"{planned run time from: set speed, minor stop shorter than: 5 min}"`
	Agreement  agreementWords        `yaml:"agreement" about:"What an acceptance run has to show; tuckline acceptance says how likely that is." eg:"{efficiency: 85 %, run: 8 h}"`
	Line       lineWords             `yaml:"line" need:"yes" about:"Stations, conveyors and buffers in the order of the product. Each is fed by the entry above it unless from says otherwise." eg:"[{station: filler, cycle: 60/min}]"`
	Lines      linesWords            `yaml:"lines" about:"Several lines by name in place of line, with the crews, the calendar and the orders in common. A line that is like another copies all its entries, with its own random numbers; what is other is written by the name of the entry. Names and paths begin with the name of the line, line 1.cartoner; a bare name means the own line, in answer and run all lines that have it." eg:"{line 1: [{station: filler, cycle: 60/min}], line 2: {like: line 1, filler: {cycle: 70/min}}}"`
	Orders     oneOrMore[orderWords] `yaml:"orders" about:"What has to be made, in this order. A line that is free takes the next; before it begins everything of the last one has left the line. Without it: the line makes one product without end." eg:"[{batch: 252000 blisters, product: ALDER-30, times: 4}]"`
	Changeover changeoverWords       `yaml:"changeover" about:"What is done between two orders of a line, while it stands empty. Without it: nothing." eg:"{same product: {lasts: 45 min, crew: 2 operators}}"`
}

type projectWords struct {
	at
	Client   text `yaml:"client" about:"Who asked." eg:"Lowmere"`
	Number   text `yaml:"number" about:"Number of the project." eg:"L4-01"`
	Revision text `yaml:"revision" about:"Revision of the study." eg:"A"`
	Status   text `yaml:"status" about:"How far it is." eg:"draft"`
}

type productWords struct {
	at
	Name    text         `yaml:"name" about:"Name of the product." eg:"ALDER-30"`
	Tablet  doseWords    `yaml:"tablet" about:"The product is tablets." eg:"{mass: 250 mg}"`
	Capsule doseWords    `yaml:"capsule" about:"The product is capsules." eg:"{}"`
	Blister blisterWords `yaml:"blister" about:"What is in a blister, and its size." eg:"{tablets: 10, length: 130 mm, width: 60 mm}"`
	Carton  cartonWords  `yaml:"carton" about:"What is in a carton." eg:"{blisters: 3}"`
	Bundle  bundleWords  `yaml:"bundle" about:"What is in a bundle." eg:"{cartons: 10}"`
	Case    caseWords    `yaml:"case" about:"What is in a case." eg:"{bundles: 10}"`
}

type doseWords struct {
	at
	Mass mass `yaml:"mass" above:"0 mg" about:"Mass of one." eg:"250 mg"`
}

type blisterWords struct {
	at
	Tablets  whole  `yaml:"tablets" least:"1" about:"Tablets in a blister." eg:"10"`
	Capsules whole  `yaml:"capsules" least:"1" about:"Capsules in a blister." eg:"10"`
	Length   length `yaml:"length" above:"0 mm" about:"Its length; checked against web and index, either way round." eg:"130 mm"`
	Width    length `yaml:"width" above:"0 mm" about:"Its width." eg:"60 mm"`
}

type cartonWords struct {
	at
	Blisters whole `yaml:"blisters" least:"1" about:"Blisters in a carton." eg:"3"`
}

type bundleWords struct {
	at
	Cartons whole `yaml:"cartons" least:"1" about:"Cartons in a bundle." eg:"10"`
}

type caseWords struct {
	at
	Bundles whole `yaml:"bundles" least:"1" about:"Bundles in a case." eg:"10"`
	Cartons whole `yaml:"cartons" least:"1" about:"Cartons in a case, where there is no bundle." eg:"100"`
}

type answerWords struct {
	at
	In           text            `yaml:"in" about:"The pieces that are counted. Without it: what the station gives." eg:"cartons"`
	CountedAfter oneOrMore[text] `yaml:"counted after" about:"The station behind which good pieces are counted, or several in branches side by side, which are added up. Without it: the last one." eg:"[tamper label 1, tamper label 2]"`
	Per          choice          `yaml:"per" of:"hour|shift|week" about:"The span of the answer, in scheduled hours. Without a calendar, a shift and a week are the measured window. Without it: hour." eg:"shift"`
}

type runWords struct {
	at
	WarmUp       warmUp            `yaml:"warm-up" most:"1 year" about:"Time before the measured window, so that the line is under way; auto finds it by a pilot, without calendar and orders. Without it: 0 h." eg:"2 h"`
	Measure      runTime           `yaml:"measure" least:"1 s" most:"10 years" about:"Length of the measured window. Without it: until the orders are finished, or 8 h where there are none that end." eg:"8 h"`
	AtMost       duration          `yaml:"at most" least:"1 min" most:"10 years" about:"Without measure: when a replication ends, orders finished or not, in calendar time. Without it: 52 weeks." eg:"26 weeks"`
	Starts       weekClock         `yaml:"starts" about:"Day and time at which the line starts, with a calendar. Without it: with the first shift of the first day." eg:"Thu 06:00"`
	Replications replicationsWords `yaml:"replications" least:"2" most:"1000000" about:"How many times the same window is simulated with other random numbers, or how exact the answer is to be: {half-width: 2 %, at most: 400}. Without it: 40." eg:"40"`
	Confidence   share             `yaml:"confidence" least:"50 %" most:"99.9 %" about:"Confidence of every interval. Without it: 95 %." eg:"95 %"`
	Seed         whole             `yaml:"seed" about:"Where the random numbers begin; the same seed gives the same results. Without it: 1." eg:"4711"`
	AtStart      startWords        `yaml:"at start" about:"What the line holds when it starts. Without it: everything empty, all reels and magazines full." eg:"{reels: part used, magazines: part used, transfer store: 40 %}"`
}

type startWords struct {
	at
	Reels     choice       `yaml:"reels" of:"new|part used" about:"part used draws what is left of each first reel evenly between nothing and a whole one." eg:"part used"`
	Magazines choice       `yaml:"magazines" of:"new|part used" about:"The same for magazines and hoppers." eg:"part used"`
	Levels    named[level] `yaml:"*" about:"NAME of a buffer: its level at the start: empty, a percentage of its places, or pieces." eg:"transfer store: 40 %"`
}

func (*fileWords) section() string    { return "a scenario" }
func (*projectWords) section() string { return "project" }
func (*productWords) section() string { return "product" }
func (*doseWords) section() string    { return "tablet or capsule" }
func (*blisterWords) section() string { return "blister" }
func (*cartonWords) section() string  { return "carton" }
func (*bundleWords) section() string  { return "bundle" }
func (*caseWords) section() string    { return "case" }
func (*answerWords) section() string  { return "answer" }
func (*runWords) section() string     { return "run" }
func (*startWords) section() string   { return "at start" }
