package sim

import (
	"math"

	"tuckline/sim/internal/plan"
)

// stocks are the materials of a station as written, by name.
func (c *compiler) stocks(declared int) []plan.Stock {
	s := &c.line.Stations[declared]
	var out []plan.Stock
	for _, i := range sortedStocks(s) {
		m := &s.Materials[i]
		stock := plan.Stock{
			Name: m.Name, Full: m.Amount, PerCycle: m.PerCycle, Refill: m.Refill,
			Work: c.work(m.Lasts, m.Crew), PartUsed: m.PartUsed, Streams: streamsOf(s),
			Scrap: m.SpliceScrap, Fails: m.SpliceFails,
			Declared: declared, Material: i, RefilledBy: plan.None, PreparedBy: plan.None,
		}
		stock.Tasked = m.Alarm.On || m.Store.On
		// What is too little for a cycle is never more than the alarm.
		stock.Alarm = max(m.Alarm.Level, m.PerCycle-1)
		if m.Store.On {
			stock.Length = m.Store.Length
			stock.Gains = max(1, int64(math.Round((m.Store.Refill-1)*float64(m.PerCycle))))
		}
		out = append(out, stock)
	}
	return out
}

// tasks adds what crews do while the stations run: refills and splices, next reels, tests.
func (c *compiler) tasks() {
	for i := range c.plan.Stations {
		st := &c.plan.Stations[i]
		for j := range st.Stocks {
			c.stockTasks(st, i, j)
		}
		for j := range st.Checks {
			c.checkTask(st, i, j)
		}
	}
}

func (c *compiler) stockTasks(st *plan.Station, i, j int) {
	stock := &st.Stocks[j]
	s := &c.line.Stations[stock.Declared]
	t := plan.Task{
		Station: i, Item: j, Link: plan.None, Name: stock.Name, Rank: c.rank(s.Name), Streams: stock.Streams,
		Cause: plan.Cause{Declared: stock.Declared, Index: stock.Material},
	}
	if stock.Tasked {
		st.Tasked = true
		t.Kind, t.Work = plan.RefillTask, stock.Work
		stock.RefilledBy = c.addTask(t)
	}
	if p := s.Materials[stock.Material].Prepare; p.On {
		t.Kind, t.Work, t.Purpose = plan.PrepareTask, c.work(p.Lasts, p.Crew), "prepare"
		stock.PreparedBy = c.addTask(t)
	}
}

func (c *compiler) addTask(t plan.Task) int {
	c.plan.Tasks = append(c.plan.Tasks, t)
	return len(c.plan.Tasks) - 1
}

func (c *compiler) checkMaterial(s *Station, m *Material) {
	path := s.Name + ".consumes." + m.Name
	if m.PerCycle < 1 || m.Amount < m.PerCycle {
		c.fault(path, "a full stock must serve at least one cycle")
	}
	if m.Refill < m.PerCycle || m.Refill > m.Amount {
		c.fault(path+".refill.amount", "a refill serves at least one cycle and fits into an empty stock")
	}
	if m.Lasts.IsZero() {
		c.fault(path, "it says nowhere how long a change or a refill lasts")
	}
	c.checkWork(path, m.Crew)
	c.checkMisPicks(s, m)
	c.checkAlarm(path, m)
	c.checkPrepare(path, m)
	c.checkWebStore(path, m)
	if m.SpliceScrap < 0 {
		c.fault(path+".splice scrap", "%d cycles; the number is 0 or more", m.SpliceScrap)
	}
	if !(m.SpliceFails >= 0 && m.SpliceFails < 1) {
		c.fault(path+".splice fails", "a share of splices that fail is at least 0 and less than 100 %%: one has to succeed")
	}
}

// checkAlarm refuses an alarm that is no level of the stock, and a refill that overfills it.
func (c *compiler) checkAlarm(path string, m *Material) {
	switch at := path + ".refill.alarm at"; {
	case !m.Alarm.On:
	case m.Alarm.Level < 0:
		c.fault(at, "%d; an alarm is 0 or more", m.Alarm.Level)
	case m.Store.On:
		c.fault(at, "a reel with a web store is spliced when it is used up; leave out the alarm or the web store")
	case m.Prepare.On:
		c.fault(at, "a refill needs nothing prepared; leave out the alarm or prepare")
	case m.Refill >= 0 && m.Alarm.Level > m.Amount-m.Refill:
		c.fault(at, "at %d the refill of %d does not fit into %d; the alarm is at most %d", m.Alarm.Level, m.Refill, m.Amount, m.Amount-m.Refill)
	}
}

func (c *compiler) checkPrepare(path string, m *Material) {
	if !m.Prepare.On {
		return
	}
	if m.Prepare.Lasts.IsZero() {
		c.fault(path+".prepare", "it says nowhere how long it takes to get the next reel ready")
	}
	c.checkWork(path+".prepare", m.Prepare.Crew)
}

// checkWebStore refuses a store from which not even one cycle can draw, and one that never fills again.
func (c *compiler) checkWebStore(path string, m *Material) {
	if !m.Store.On {
		return
	}
	at := path + ".web store"
	switch {
	case !m.Web:
		c.fault(at, "only web lies in a web store; a magazine or hopper has an alarm instead")
	case m.Store.Length < m.PerCycle:
		c.fault(at+".length", "a store of %d micrometres does not serve one cycle, which draws %d", m.Store.Length, m.PerCycle)
	case m.MisPicks.Share > 0:
		c.fault(path+".mis-picks", "web is not picked; leave out the mis-picks or the web store")
	}
	if !(m.Store.Refill > 1) || math.IsInf(m.Store.Refill, 1) {
		c.fault(at+".refill", "a factor of %g; the store fills again only if the web comes into it faster than it goes out, so that the factor is more than 1, such as 1.3", m.Store.Refill)
	}
}
