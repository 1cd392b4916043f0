package proof

import (
	"encoding/json"
	"io"
)

// document is what other programs read. Cases counts the simulated ones; figures without chance
// are among the results with low and high alike.
type document struct {
	Cases           int       `json:"cases"`
	Outside         int       `json:"outside"`
	ExpectedOutside float64   `json:"expected_outside"`
	PValue          float64   `json:"p_value"`
	Faults          []result  `json:"faults"`
	LeftOut         []LeftOut `json:"left_out"`
	Results         []result  `json:"results"`
}

type result struct {
	Case     string  `json:"case"`
	Quantity string  `json:"quantity"`
	Exact    float64 `json:"exact"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
	Inside   bool    `json:"inside"`
}

func (r *Row) result() result {
	return result{r.Case.Name, r.Quantity, r.Exact, r.Low - r.Allowance, r.High + r.Allowance, r.Inside}
}

// JSON writes the outcome for other programs. Low and high include the allowance.
func JSON(w io.Writer, o *Outcome) error {
	d := document{
		Cases: o.Cases, Outside: o.Outside, ExpectedOutside: o.Expected(), PValue: o.PValue,
		Faults: []result{}, LeftOut: o.LeftOut,
	}
	for _, r := range o.Rows {
		d.Results = append(d.Results, r.result())
		if r.Fault && r.Again != nil {
			d.Faults = append(d.Faults, r.Again.result())
		} else if r.Fault {
			d.Faults = append(d.Faults, r.result())
		}
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(d)
}
