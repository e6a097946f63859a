package founding

import (
	"fmt"
	"strings"

	"maltwright/lang/vocabulary"
)

// turning writes when the piece is turned: at times of day when somebody is awake.
func (p *plan) turning() string {
	if p.floor.Tumbles.Text == vocabulary.SaidYes || p.box != nil {
		return "every 12 h by " + vocabulary.ByMachine
	}
	from, to := 7*60, 22*60
	if site := p.site; site != nil && len(site.Awake) > 0 {
		from, to = site.Awake[0].From/60, site.Awake[len(site.Awake)-1].To/60
	}
	if to <= from {
		to += 24 * 60
	}
	if to-from >= 22*60 {
		return fmt.Sprintf("every %d h", 24/p.turns)
	}
	first, last := from+15, to-15
	var at []string
	for i := range p.turns {
		m := first + (last-first)*i/max(p.turns-1, 1)
		m = m / 15 * 15 % (24 * 60)
		at = append(at, fmt.Sprintf("%02d:%02d", m/60, m%60))
	}
	return "at " + strings.Join(at, " and ")
}
