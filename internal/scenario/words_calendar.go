package scenario

// calendarWords are the working time of a week, which comes again and again.
type calendarWords struct {
	at
	Days     daysWords                `yaml:"days" need:"yes" about:"The days on which shifts begin: Mon-Fri, or a list." eg:"Mon-Fri"`
	Shifts   named[shiftWords]        `yaml:"shifts" need:"yes" about:"The shifts of a working day, by name. Two cannot overlap." eg:"{early: {from: 06:00, to: 14:00}, late: {from: 14:00, to: 22:00}}"`
	During   duringWords              `yaml:"during breaks" about:"line stands, or who works meanwhile: {relief: 1 person}. Without it: the line stands." eg:"line stands"`
	Cleaning oneOrMore[cleaningWords] `yaml:"cleaning" about:"Regular cleaning, once or a list. Within a shift the line stands; outside of all shifts it is scheduled time that comes on top, without people." eg:"{on: Fri, at: 20:00, lasts: 2 h}"`
	Overtime oneOrMore[overtimeWords] `yaml:"overtime" about:"Work of every week beside the shifts, once or a list: a shift called overtime." eg:"{on: Sat, from: 06:00, to: 12:00}"`
	Hours    duration                 `yaml:"hours a year" above:"0 h" most:"8784 h" about:"Scheduled hours of a year, which is what a year means in run. Without it: 52 weeks." eg:"4000 h"`
}

type shiftWords struct {
	at
	From    clockTime             `yaml:"from" need:"yes" about:"When it begins." eg:"06:00"`
	To      clockTime             `yaml:"to" need:"yes" about:"When it ends. If that is not after from it is on the next day, and the shift belongs to the day on which it begins." eg:"14:00"`
	Days    daysWords             `yaml:"days" about:"The days on which it begins. Without it: those of the calendar." eg:"Mon-Thu"`
	Breaks  oneOrMore[breakWords] `yaml:"breaks" about:"Breaks of the people, each within the shift." eg:"[{at: 10:00, lasts: 30 min}]"`
	StartUp duration              `yaml:"start-up" most:"1 day" about:"Time at its beginning in which people get the line ready, and it stands. Without it: none." eg:"20 min"`
	Tidy    duration              `yaml:"tidy" most:"1 day" about:"Time at its end in which people tidy up, and the line stands. Without it: none." eg:"15 min"`
}

type breakWords struct {
	at
	At    clockTime `yaml:"at" need:"yes" about:"When it begins." eg:"10:00"`
	Lasts duration  `yaml:"lasts" need:"yes" least:"1 s" most:"1 day" about:"How long it lasts." eg:"30 min"`
}

// duringWords say what the line does in breaks.
type duringWords struct {
	at
	Relief persons `yaml:"relief" need:"yes" about:"So many people come for the breaks and do the work of all crews; the line works on." eg:"1 person"`
}

type cleaningWords struct {
	at
	On    daysWords `yaml:"on" need:"yes" about:"The days on which it begins." eg:"Fri"`
	At    clockTime `yaml:"at" need:"yes" about:"When it begins." eg:"20:00"`
	Lasts duration  `yaml:"lasts" need:"yes" least:"1 s" most:"1 day" about:"How long it lasts." eg:"2 h"`
}

type overtimeWords struct {
	at
	On      daysWords             `yaml:"on" need:"yes" about:"The days on which it begins." eg:"Sat"`
	From    clockTime             `yaml:"from" need:"yes" about:"When it begins." eg:"06:00"`
	To      clockTime             `yaml:"to" need:"yes" about:"When it ends, as for a shift." eg:"12:00"`
	Breaks  oneOrMore[breakWords] `yaml:"breaks" about:"Breaks of the people, each within it." eg:"[{at: 09:00, lasts: 15 min}]"`
	StartUp duration              `yaml:"start-up" most:"1 day" about:"As for a shift." eg:"20 min"`
	Tidy    duration              `yaml:"tidy" most:"1 day" about:"As for a shift." eg:"15 min"`
}

// crewWords are the people of a crew; a bare number is people.
type crewWords struct {
	at
	People        whole              `yaml:"people" need:"yes" least:"1" most:"1000" about:"How many on every shift; NAME: 3 says the same as NAME: {people: 3}." eg:"1"`
	Walk          durationLaw        `yaml:"walk" about:"The way to each work, which binds who goes. Without it: none." eg:"20 s"`
	Response      durationLaw        `yaml:"response" about:"The time until somebody who was free when called sets out; who comes from other work only walks. Without it: none." eg:"{dist: exponential, mean: 5 min}"`
	CanAlso       oneOrMore[text]    `yaml:"can also" about:"Crews whose work its people do too, when these have nobody free." eg:"operators"`
	BusyElsewhere elsewhereWords     `yaml:"busy elsewhere" about:"Other work outside the line that takes each of them away, while they are on shift." eg:"{share: 50 %, spell: 20 min}"`
	OnShift       named[shiftPeople] `yaml:"*" about:"NAME of a shift of the calendar: how many on that shift, in place of people." eg:"late: 3"`
}

type elsewhereWords struct {
	at
	Share share    `yaml:"share" need:"yes" below:"100 %" about:"Share of the time of each person." eg:"50 %"`
	Spell duration `yaml:"spell" need:"yes" above:"0 s" most:"1 week" about:"Mean length of one such work." eg:"20 min"`
}

func (*calendarWords) section() string  { return "calendar" }
func (*shiftWords) section() string     { return "a shift" }
func (*breakWords) section() string     { return "a break" }
func (*duringWords) section() string    { return "during breaks" }
func (*cleaningWords) section() string  { return "cleaning" }
func (*overtimeWords) section() string  { return "overtime" }
func (*crewWords) section() string      { return "a crew" }
func (*elsewhereWords) section() string { return "busy elsewhere" }
