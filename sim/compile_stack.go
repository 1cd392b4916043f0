package sim

// stacking is what the program puts before stations that let empty pockets run through: 2 × takes − 1, since the
// next stack is collected beside one that waits for its pocket, and beside both what feeders reserve before their
// cycle. With takes − 1 a stack that just misses its pocket would hold up the next, too. 0 if there is no such station.
func (c *compiler) stacking(link int) int64 {
	takes := int64(0)
	for _, name := range c.takers[link] {
		if i, isStation := c.nodes[name]; isStation && c.units[i].EmptyPockets.On {
			takes = max(takes, c.takes(name, link))
		}
	}
	if takes == 0 {
		return 0
	}
	return 2*takes - 1 + c.keepsInLine(link) + c.reserved(link)
}

// reserved is what all feeders together reserve before their cycles.
func (c *compiler) reserved(link int) (pieces int64) {
	for _, name := range c.feeders[link] {
		if i, isStation := c.nodes[name]; isStation && c.units[i].BlocksBefore {
			pieces += c.units[i].Gives
		}
	}
	return pieces
}
