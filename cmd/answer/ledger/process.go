package ledger

import (
	"errors"
	"path"
	"slices"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// standing is what is to be said of the process of a batch, as it stands now.
type standing struct {
	forecast         *forecast.Forecast // nil where there is none
	faults, cautions int
	costly           bool // there is none because too much was forecast before
}

// obstacle is why there is no forecast, or "".
func (s standing) obstacle() Obstacle {
	switch {
	case s.costly:
		return TooDear
	case s.forecast == nil:
		return Unsound
	}
	return ""
}

// process forecasts the process of a record and counts what its check finds, once.
func (b *Book) process(r Record) standing {
	p, today := r.Batch.Process, Standing(r.Batch)
	file := r.Root + "\x00" + r.Below
	if r.Below == "" {
		file += string(today.Place.File.Bytes())
	}
	key := file + "\x00" + p.Name + "\x00" + own(r.Batch)
	if known, ok := b.processes[key]; ok {
		return known
	}
	var out standing
	if Sound(r.House, r.Batch, r.Found) {
		var err error
		out.forecast, err = forecast.Run(p, forecast.Options{Meter: work.NewMeter(b.ctx, b.pool)}) // without one nothing is reckoned
		out.costly = errors.Is(err, work.ErrPool)
	}
	if _, ok := b.checked[file]; !ok {
		b.checked[file] = check.File(today.Place.File.Name(), today.Place.File.Bytes(), path.Dir(r.Below), r.Reader, check.Options{Context: b.ctx, Records: work.NewPool(0)})
	}
	out.count(today, b.checked[file])
	b.processes[key] = out
	return out
}

// Standing is the process of a batch as it stands today, whatever it was when the batch was
// begun.
func Standing(b *model.Batch) *model.Process {
	if b.Today != nil {
		return b.Today
	}
	return b.Process
}

// own tells batches of one process apart whose forecasts differ: by their own charge and
// lot, or by the text that they were begun by.
func own(b *model.Batch) string {
	key := ""
	if f := b.From; f != nil && f.Weight != nil && f.Grain != nil {
		key = f.Weight.String() + "\x00" + f.Grain.Name
	}
	for _, lot := range b.Lots {
		key += "\x00" + lot.Weight.String()
	}
	if b.Today != nil {
		key += "\x00" + b.Pinned.Print.Text
	}
	return key
}

// Sound tells whether there is something sound to forecast of the process of a batch: no
// fault stands outside of the records.
func Sound(h *model.House, b *model.Batch, found []finding.Finding) bool {
	return !b.Process.Broken && !slices.ContainsFunc(found, func(f finding.Finding) bool {
		return f.Severity >= finding.Fault && !inRecord(h, f)
	})
}

// count counts what the check of the file of a process finds, without what it says of
// batches and of other processes there.
func (s *standing) count(p *model.Process, r check.Report) {
	for _, f := range r.Findings {
		elsewhere := inRecord(r.House, f) || slices.ContainsFunc(r.House.Processes, func(q *model.Process) bool {
			return q.Name != p.Name && f.Place.Within(q.Scope)
		})
		switch {
		case elsewhere:
		case f.Severity >= finding.Fault:
			s.faults++
		case f.Severity == finding.Caution:
			s.cautions++
		}
	}
}

func inRecord(h *model.House, f finding.Finding) bool {
	return slices.ContainsFunc(h.Batches, func(b *model.Batch) bool { return f.Place.Within(b.Scope) })
}
