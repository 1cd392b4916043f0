package study

import "sync"

// counter passes the number of finished runs on, one call at a time.
type counter struct {
	mu          sync.Mutex
	done, total int
	tell        func(done, total int)
}

func (c *counter) finished() {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.done++
	if c.tell != nil {
		c.tell(c.done, c.total)
	}
}

// expect adds to the number of runs that there will be.
func (c *counter) expect(runs int) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.total += runs
}
