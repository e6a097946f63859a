package founding

import "slices"

// copy is a plan that can be changed by itself.
func (p *plan) copy() *plan {
	q := *p
	q.soaks = slices.Clone(p.soaks)
	if p.box != nil {
		b := *p.box
		q.box = &b
	}
	if p.wither != nil {
		w := *p.wither
		q.wither = &w
	}
	q.heats = slices.Clone(p.heats)
	for i, h := range q.heats {
		q.heats[i].dry = slices.Clone(h.dry)
		if h.cure != nil {
			c := *h.cure
			q.heats[i].cure = &c
		}
	}
	return &q
}
