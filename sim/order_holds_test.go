package sim_test

import (
	"slices"

	"tuckline/sim"
)

func (h *holder) ordered() bool { return len(h.line.Orders.List) > 0 }

// short is what the part cycles of a station lacked.
func (h *holder) short(i int) int64 { return h.rec.Stations[i].PartShort }

// changeovers says that one of the crews does changeovers.
func (h *holder) changeovers(crews []string) bool {
	return slices.ContainsFunc(h.line.Orders.List, func(o sim.Order) bool { return slices.Contains(crews, o.Before.Crew.Crew) })
}
