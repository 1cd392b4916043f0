package proof

// slow are the cases that the quick set leaves to the full one: long queues, rare stops, fine
// pieces. The rule is one of cost: what takes over 0.6 s of one core to come to 1 %. Every family keeps
// a case, most kinds of model one however long it takes; and what was once outside stays too, so
// that nothing that misses gets out of sight.
var slow = map[string]bool{
	"MM1-3": true, "MM1-4": true, "MMc-1": true, "MMc-2": true, "ME21-1": true, "ME41-2": true, "MG1-ODF-2": true, "MD1-2": true,
	"INF-2": true, "INF-5": true,
	"GER2-2": true, "GER2-5": true, "GER2-7": true, "GER2-8": true, "GER2-11": true, "GER2-12": true, "GER2-13": true, "GER2-15": true,
	"GER2-1": true, "GER2-6": true, "LONG-3": true,
	"GENR-4": true, "GENR-5": true,
	"FLU-EQ-ODF-1": true, "FLU-EQ-TDF-1": true, "FLU-EQ-TDF-2": true, "FLU-EQ-TDF-8": true, "FLU-NEQ-ODF-5": true, "FLU-NEQ-TDF-5": true,
	"FLU-EQ-TDF-3": true, "FLU-EQ-ODF-6": true, "FLU-EQ-TDF-7": true, "FLU-EQ-ODF-7": true, "FLU-EQ-ODF-9": true, "FLU-NEQ-TDF-2": true, "FLU-EQ-ODF-10": true, "FLU-EQ-TDF-10": true,
	"FLU-EQ-ODF-11": true, "FLU-EQ-TDF-11": true, "FLU-NEQ-ODF-6": true, "FLU-NEQ-TDF-6": true, "FLU-NEQ-ODF-7": true, "FLU-NEQ-TDF-7": true, "FLU-EQ-TDF-6": true, "FLU-NEQ-ODF-2": true,
	"EXPU-3": true, "EXPU-5": true, "EXPU-7": true, "EXPU-8": true, "EXPU-9": true, "EXPU-10": true, "EXPU-11": true, "EXPU-13": true,
	"BAP-3-6, order": true, "BAP-4-4, order": true, "BAP-4-7, order": true, "BAP-5-2, order": true, "BAP-5-3, order": true, "BAP-5-4, order": true, "BAP-5-5, order": true,
	"BAPU-4-4, order": true, "BAPU-4-5, order": true, "BAPE-3-4, order": true, "BAPF-3-5, order": true,
	"MRG-U-2": true, "MRG-F-3": true, "MRG-0.45-8": true,
	"REP-WINSTON": true, "REP-4-2-0.05-0.5": true, "CLT-1": true,
	"SCRAPUP-EXP-1": true, "SCRAPUP-EXP-2": true,
	"AD-exponential": true, "AD-Weibull": true, "KS-normal": true,
	"VAR-1, variance rate": true, "VAR-3, variance rate": true, "VAR-4, variance rate": true, "VAR-8, variance rate": true, "VAR-9, variance rate": true,
}

// quickOf are the cases of the quick set, which never depends on how a case comes out.
func quickOf(cases []*Case) []*Case {
	var quick []*Case
	for _, c := range cases {
		if !slow[c.Name] {
			quick = append(quick, c)
		}
	}
	return quick
}

// onlyInFull are the cases that a quick set leaves out.
func onlyInFull(cases []*Case) []LeftOut {
	var all []LeftOut
	for _, c := range cases {
		if slow[c.Name] {
			all = append(all, LeftOut{c.Name, "only in the full set (--full): it takes long", c.entry})
		}
	}
	return all
}
