package serve

import (
	"net/url"
	"slices"

	"maltwright/cmd/journal"
)

// saidOf tells what was just written, taken back or begun, where the address says so under the seal of this page.
func (s *server) saidOf(q url.Values, v seen) *saidView {
	for _, k := range []struct{ name, head string }{{"written", "written:"}, {"taken", "taken back:"}, {"begun", "begun:"}} {
		line := q.Get(k.name)
		if line == "" || !s.seal.fits(line, q.Get("seal")) {
			continue
		}
		out := &saidView{Head: k.head, Line: line}
		if k.name == "written" {
			out.of(v)
		}
		return out
	}
	return nil
}

// of says what a line comes to, by the record as it stands, and whether it can be taken back: only the last one can.
func (x *saidView) of(v seen) {
	i := slices.IndexFunc(v.lines, func(l journal.Line) bool { return l.Words == x.Line })
	if i < 0 {
		return
	}
	if i == len(v.lines)-1 {
		x.Undo = x.Line
	}
	for _, n := range v.notes() {
		if n.Line == v.lines[i].Number {
			x.Says = n.Says
		}
	}
}
