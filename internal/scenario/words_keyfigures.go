package scenario

// keyFiguresWords say how availability, performance, quality and OEE are counted: the choices in which figures
// of one name differ.
type keyFiguresWords struct {
	at
	RunTimeFrom choice            `yaml:"planned run time from" of:"set speed|top speed" about:"The speed from which the planned run time of a piece comes. Without it: set speed." eg:"set speed"`
	ShorterThan duration          `yaml:"minor stop shorter than" most:"8 h" about:"A standstill shorter than this is a minor stop, whatever its causes: from when a station stops running until it runs again, breaks left out. Without it: 5 min." eg:"5 min"`
	MinorAs     choice            `yaml:"minor stops count as" of:"performance|availability" about:"What minor stops take away. OEE is the same, its parts are not. Without it: performance." eg:"performance"`
	MaterialAs  choice            `yaml:"material counts as" of:"performance|availability|planned" about:"What stops for material and changes of reels take away; planned: they are left out of the planned busy time. Without it: availability." eg:"availability"`
	NotBusy     oneOrMore[choice] `yaml:"not counted as planned busy time" of:"breaks|start-up|tidy|cleaning|changeover|nothing" about:"Scheduled time that is left out of the planned busy time, one or several. Without it: breaks and cleaning." eg:"[breaks, start-up, tidy, cleaning]"`
	AsReported  reportedWords     `yaml:"as reported" about:"How the plant's own report counts; what is not said is as above. The report of a run then leads from one OEE to the other, a step for each choice." eg:"{OEE: 61 %, planned run time from: top speed}"`
}

// reportedWords are the same choices as another report makes them.
type reportedWords struct {
	at
	OEE         share             `yaml:"OEE" above:"0 %" most:"100 %" about:"The OEE that it shows." eg:"61 %"`
	RunTimeFrom choice            `yaml:"planned run time from" of:"set speed|top speed" about:"The speed from which the planned run time of a piece comes." eg:"top speed"`
	ShorterThan duration          `yaml:"minor stop shorter than" most:"8 h" about:"A standstill shorter than this is a minor stop there." eg:"30 s"`
	MinorAs     choice            `yaml:"minor stops count as" of:"performance|availability" about:"What minor stops take away. OEE is the same, its parts are not." eg:"availability"`
	MaterialAs  choice            `yaml:"material counts as" of:"performance|availability|planned" about:"What stops for material and changes of reels take away; planned: they are left out of the planned busy time." eg:"performance"`
	NotBusy     oneOrMore[choice] `yaml:"not counted as planned busy time" of:"breaks|start-up|tidy|cleaning|changeover|nothing" about:"Scheduled time that is left out of the planned busy time, one or several." eg:"[breaks, changeover]"`
}

// agreementWords are what an acceptance run has to show.
type agreementWords struct {
	at
	Efficiency share    `yaml:"efficiency" need:"yes" above:"0 %" below:"100 %" about:"The line efficiency that is agreed: good output of what the slowest station would make in the time of the run." eg:"85 %"`
	Of         choice   `yaml:"of" of:"set speed|top speed" about:"The speed of the slowest station that it refers to. Without it: set speed." eg:"set speed"`
	Run        duration `yaml:"run" need:"yes" least:"1 min" most:"4 week" about:"Length of the agreed run, in scheduled hours." eg:"8 h"`
	From       duration `yaml:"scheduled from" most:"4 week" about:"Scheduled time after the start of the line at which the run begins, so that the line is primed. Without it: 1 h." eg:"1 h"`
}

func (*keyFiguresWords) section() string { return "key figures" }
func (*reportedWords) section() string   { return "as reported" }
func (*agreementWords) section() string  { return "agreement" }
