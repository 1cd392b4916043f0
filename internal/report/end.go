package report

import (
	"encoding/base64"
	"html/template"
	"path/filepath"
	"strings"
)

// ending is what stands behind the answer: inputs, assumptions, method, and
// what a simulation does not prove.
type ending struct {
	Inputs, Derived               table
	Source, FileName              string
	Download                      template.URL
	Assumptions, Method, Cautions []string
}

func endOf(s *subject, version string) ending { return endWith(s, method(s, version)) }

// endWith is the ending of any study of a scenario; method says how its answer was found.
func endWith(s *subject, method []string) ending {
	return ending{
		Inputs:  s.spokenTable(table{Caption: say("inputs.title", nil), Head: heads("entry", "input", "value"), Words: 3, Rows: inputRows(s)}),
		Derived: s.spokenTable(table{Caption: say("derived.title", nil), Head: heads("entry", "derived", "value"), Words: 2, Rows: derivedRows(s.Figures)}),
		Source:  string(s.Scenario.Source), FileName: fileName(s.Scenario.File), Download: download(s.Scenario.Source),
		Assumptions: s.spokenAll(assumptions(s)), Method: s.spokenAll(method), Cautions: cautions(),
	}
}

// download is the scenario as an address that needs nothing else, so that who
// gets the report can run it again.
func download(source []byte) template.URL {
	return template.URL("data:application/yaml;base64," + base64.StdEncoding.EncodeToString(source))
}

// fileName is the last part of a path, whichever system wrote it.
func fileName(path string) string {
	name := filepath.Base(strings.ReplaceAll(path, `\`, "/"))
	if name == "." || name == "/" {
		return "scenario.yaml"
	}
	return name
}

func method(s *subject, version string) []string {
	r := s.Results
	f := facts{
		"Windows": s.Window.Runs, "Window": s.Window.One, "N": whole(float64(r.Replications)), "Seed": r.Seed,
		"Confidence": short(100 * r.Confidence), "Engine": r.Engine, "Reason": r.EngineReason,
		"Version": version, "Hash": r.ScenarioHash, "Constraint": s.stationList(s.Figures.Bounds.Constraint),
		"Degrees": r.Replications - 1, "Part": s.tracedPart(), "Sooner": s.tracedSooner(), "Belts": belted(s.Scenario),
		"Unit": s.Figures.Unit, "Counted": s.stationList(s.Figures.CountedAfter), "Several": len(s.Figures.CountedAfter) > 1,
	}
	var all []string
	for _, word := range []string{"runs", "count", "interval", "hour"} {
		all = append(all, say("method."+word, f))
	}
	if s.WarmUp.Found {
		all = append(all, say("method.warmup", facts{
			"Length": length(s.WarmUp.Length), "Doubled": s.WarmUp.Doubled, "Measure": length(s.Scenario.Run.Measure), "Windows": s.Window.Runs,
		}))
	}
	if p := s.Precision; p.Asked > 0 {
		all = append(all, say("method.looks", facts{
			"Asked": short(100 * p.Asked), "Looks": p.Looks, "Reached": p.Reached, "Windows": s.Window.Runs,
		}))
	}
	if tenths(s.Shifts) {
		all = append(all, say("method.spread", f))
	}
	if len(s.Figures.Bounds.Constraint) > 0 {
		all = append(all, say("method.constraint", f))
	}
	if s.span().Shown && s.Span.Buffered {
		all = append(all, say("method.span", f))
		if s.Span.Shared {
			all = append(all, say("method.shared", nil))
		}
	}
	return append(all, say("method.engine", f), say("method.again", f))
}

// cautions say what a simulation does not prove, in every report.
func cautions() []string {
	var all []string
	for _, word := range []string{"seal", "process", "safety", "rates", "learning", "building", "money"} {
		all = append(all, say("caution."+word, nil))
	}
	return all
}
