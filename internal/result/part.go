package result

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"tuckline/sim"
)

// PartFormat is the version of part files.
const PartFormat = 1

// Part is a part of one study: the records of replications From to To, integers
// only. Everything with a decimal point is computed after parts are joined, so that
// parts and one run give the same bytes.
type Part struct {
	Format       int          `json:"format"`
	ScenarioHash string       `json:"scenario_hash"`
	Seed         uint64       `json:"seed"`
	From         int          `json:"from"`
	To           int          `json:"to"`
	Records      []sim.Record `json:"records"`
}

// NewPart makes a part of records in order of replication, which are of one scenario and seed.
func NewPart(hash string, seed uint64, records []sim.Record) Part {
	p := Part{Format: PartFormat, ScenarioHash: hash, Seed: seed, Records: records}
	if n := len(records); n > 0 {
		p.From, p.To = records[0].Replication, records[n-1].Replication
	}
	return p
}

// Write writes a part file.
func (p Part) Write(w io.Writer) error { return json.NewEncoder(w).Encode(p) }

// ReadPart reads a part file. It refuses other formats, and parts that do not
// hold what they say.
func ReadPart(r io.Reader) (Part, error) {
	var p Part
	if err := json.NewDecoder(r).Decode(&p); err != nil {
		return p, fmt.Errorf("this is not a part file: %w", err)
	}
	if p.Format != PartFormat {
		return p, fmt.Errorf("the part file has format %d; this program reads format %d", p.Format, PartFormat)
	}
	if len(p.Records) != p.To-p.From+1 {
		return p, fmt.Errorf("the part file says replications %d to %d and holds %d", p.From, p.To, len(p.Records))
	}
	for i := range p.Records {
		if p.Records[i].Replication != p.From+i {
			return p, fmt.Errorf("the part file has replication %d where %d belongs", p.Records[i].Replication, p.From+i)
		}
	}
	return p, nil
}

// Join puts the records of parts in order of replication. The parts must be of
// one scenario and seed, without gaps and without one replication twice.
func Join(parts ...Part) ([]sim.Record, error) {
	if len(parts) == 0 {
		return nil, errors.New("there is no part to join")
	}
	parts = slices.Clone(parts)
	slices.SortFunc(parts, func(a, b Part) int { return a.From - b.From })
	var faults []error
	var records []sim.Record
	for i, p := range parts {
		if p.ScenarioHash != parts[0].ScenarioHash || p.Seed != parts[0].Seed {
			faults = append(faults, fmt.Errorf("replications %d to %d are of scenario %s with seed %d, others of scenario %s with seed %d",
				p.From, p.To, p.ScenarioHash, p.Seed, parts[0].ScenarioHash, parts[0].Seed))
		}
		if i > 0 && p.From != parts[i-1].To+1 {
			faults = append(faults, fmt.Errorf("a part ends with replication %d, the next begins with %d", parts[i-1].To, p.From))
		}
		records = append(records, p.Records...)
	}
	return records, errors.Join(faults...)
}
