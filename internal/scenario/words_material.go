package scenario

type materialWords struct {
	at
	Reel        reelWords     `yaml:"reel" about:"A reel of web, or of pieces." eg:"{outer: 600 mm, core: 76 mm, thickness: 250 um, unusable: 12 m}"`
	Magazine    stockWords    `yaml:"magazine" about:"A magazine that is refilled." eg:"{holds: 800 leaflets}"`
	Hopper      stockWords    `yaml:"hopper" about:"A hopper that is refilled." eg:"{holds: 80000 tablets}"`
	PerCycle    use           `yaml:"per cycle" need:"yes" about:"What a cycle draws." eg:"132 mm"`
	Change      durationLaw   `yaml:"change" about:"How long the change of a reel lasts; the station stands, unless it draws on a web store." eg:"4 min"`
	Crew        crewNeed      `yaml:"crew" about:"Who changes the reel." eg:"operators"`
	ChangeBy    choice        `yaml:"change by" of:"hand|prepared|web store" about:"How a reel is changed: hand, the station stands; prepared, the same with the next reel got ready meanwhile; web store, the splice is made while the station draws on a store of web. Without it: hand." eg:"prepared"`
	Prepare     prepareWords  `yaml:"prepare" about:"The work that gets the next reel ready while the station runs, with change by: prepared. Without it the next reel is always ready." eg:"{lasts: 4 min, crew: operators}"`
	WebStore    webStoreWords `yaml:"web store" about:"The store of web between splice and station, with change by: web store." eg:"{length: 8 m, refill: 1.3}"`
	SpliceScrap cycles        `yaml:"splice scrap" about:"Cycles that are scrap after each change of a reel. Without it: 0 cycles." eg:"8 cycles"`
	SpliceFails share         `yaml:"splice fails" below:"100 %" about:"Share of the changes that fail at their end and are done again. Without it: 0 %." eg:"2 %"`
	MisPicks    misPicksWords `yaml:"mis-picks" about:"Pieces of a magazine that the picker misses." eg:"{per 1000: 0.5, retries: 2}"`
	Refill      refillWords   `yaml:"refill" about:"How a magazine or hopper is refilled." eg:"{amount: 400 leaflets, lasts: 0.5 min, alarm at: 300 leaflets, crew: operators}"`
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
	AlarmAt count       `yaml:"alarm at" about:"Stock at which somebody is asked to refill it while the station runs; what is left then is the time there is. Without it the station stops when the stock is used up." eg:"300 leaflets"`
	Crew    crewNeed    `yaml:"crew" about:"Who refills." eg:"operators"`
}

type prepareWords struct {
	at
	Lasts durationLaw `yaml:"lasts" need:"yes" about:"How long it takes." eg:"4 min"`
	Crew  crewNeed    `yaml:"crew" about:"Who does it. Without it: nobody is needed." eg:"operators"`
}

type webStoreWords struct {
	at
	Length length `yaml:"length" need:"yes" above:"0 m" most:"1000 m" about:"Web in the full store." eg:"8 m"`
	Refill factor `yaml:"refill" need:"yes" above:"1" most:"10" about:"Speed of the web into the store over that out of it, while it fills again after a splice." eg:"1.3"`
}

type misPicksWords struct {
	at
	Per1000 factor      `yaml:"per 1000" need:"yes" below:"1000" about:"Picks of a thousand that fail." eg:"0.5"`
	Retries whole       `yaml:"retries" most:"100" about:"How often a failed pick is tried again; each try takes a cycle and uses its material. If all fail the cycle gives nothing. Without it: 0." eg:"2"`
	Lasts   durationLaw `yaml:"lasts" about:"How long the station stops when all tries have failed. Without it: it does not stop." eg:"1 min"`
	Crew    crewNeed    `yaml:"crew" about:"Who clears it." eg:"operators"`
}

func (*materialWords) section() string { return "a material" }
func (*reelWords) section() string     { return "a reel" }
func (*stockWords) section() string    { return "a magazine or hopper" }
func (*refillWords) section() string   { return "refill" }
func (*prepareWords) section() string  { return "prepare" }
func (*webStoreWords) section() string { return "web store" }
func (*misPicksWords) section() string { return "mis-picks" }
