package scenario

import "tuckline/sim"

// changeover is the word of the changeover between a batch and the one before it.
func (p *planned) changeover(before *planned) string {
	begins := p.k == 0 || p.startsCampaign()
	switch {
	case begins && p.w.Changeover.value != "":
		return p.w.Changeover.value
	case p.product != before.product || before.endsCampaign():
		return formatChange
	}
	return sameProduct
}

func (p *planned) startsCampaign() bool {
	long := int(p.w.Campaign.value)
	return long > 0 && p.k%long == 0
}

func (p *planned) endsCampaign() bool {
	long := int(p.w.Campaign.value)
	return long > 0 && (p.k+1)%long == 0
}

// setUp is the work of a changeover; nothing if it is not written.
func (b *resolver) setUp(word string) sim.SetUp {
	w := b.words.Changeover.find(word)
	if !w.given() {
		return sim.SetUp{Name: word}
	}
	b.law(w.Lasts.law)
	return sim.SetUp{Name: word, Lasts: w.Lasts.law.law, Crew: b.work(&w.Crew, usualPriority)}
}

// checkChangeovers looks at who does them, and at those that an order names.
func (b *resolver) checkChangeovers() {
	c := &b.words.Changeover
	for _, w := range []*setUpWords{&c.SameProduct, &c.Format, &c.FullClean} {
		b.work(&w.Crew, usualPriority)
	}
	if c.given() && !b.words.Orders.given() {
		b.complain(c.at, "there are no orders, so that no changeover ever comes; write orders, or leave it out")
	}
	for i := range b.words.Orders.list {
		w := &b.words.Orders.list[i].Changeover
		if w.value != "" && !c.find(w.value).given() {
			b.complain(w.at, "the changeover %q is not written; write changeover: {%[1]s: {lasts: 3 h, crew: 2 operators}} at the top", w.value)
		}
	}
}

// missingChangeovers warns once of each that comes and is not written.
func (b *resolver) missingChangeovers() {
	said := map[string]bool{}
	for i := range b.s.Orders.Batches {
		batch := &b.s.Orders.Batches[i]
		switch word := batch.Changeover; {
		case word == "" || said[word] || b.words.Changeover.find(word).given():
		case !b.words.Changeover.given():
			b.warn("No changeover is written: the next batch begins as soon as the line is empty.")
			return
		default:
			said[word] = true
			b.warn("The changeover %q comes before %s and is not written: it takes no time.", word, batch.Name)
		}
	}
}
