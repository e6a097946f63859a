package command

import (
	"bytes"
	"context"
	"errors"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// judgement is what is to be said of the process of a batch, as it stands now.
type judgement struct {
	forecast         *forecast.Forecast // nil where there is none
	faults, cautions int                // a danger counts as a fault
	costly           bool               // there is none because too much was forecast before
}

// judge forecasts each process once and checks its file once, however many batches and
// processes there are.
type judge struct {
	ctx     context.Context
	pool    *work.Pool
	known   map[string]judgement
	checked map[string]check.Report // of files, but for the records in them
}

func (j *judge) of(in input, r read.Reader, h *model.House, p *model.Process, found []finding.Finding) judgement {
	at := below(in, r, p.Place.File)
	file := in.root + "\x00" + at
	if at == "" { // it came from nowhere else
		file += string(p.Place.File.Bytes())
	}
	key := file + "\x00" + p.Name
	if known, ok := j.known[key]; ok {
		return known
	}
	var out judgement
	if !p.Broken && !slices.ContainsFunc(found, func(f finding.Finding) bool {
		return f.Severity >= finding.Fault && !inBatch(h, f) // there is nothing sound to forecast
	}) {
		var err error
		out.forecast, err = forecast.Run(p, forecast.Options{Meter: work.NewMeter(j.ctx, j.pool)}) // without one nothing is reckoned
		out.costly = errors.Is(err, work.ErrPool)
	}
	if _, ok := j.checked[file]; !ok {
		j.checked[file] = check.File(p.Place.File.Name(), p.Place.File.Bytes(), path.Dir(at), r, check.Options{Context: j.ctx, Records: work.NewPool(0)})
	}
	out.count(p, j.checked[file])
	j.known[key] = out
	return out
}

// below gives the path of a file below the root from which it was read, or "" where
// it came from standard input. A used file is shown by its path below the folder of
// the first if it lies there, and otherwise by that below the root.
func below(in input, r read.Reader, f *source.File) string {
	if f.Name() == in.name {
		if in.path == "" {
			return ""
		}
		return path.Join(in.dir, path.Base(filepath.ToSlash(in.name)))
	}
	folder, _ := path.Split(filepath.ToSlash(in.name))
	name := strings.TrimPrefix(filepath.ToSlash(f.Name()), folder)
	for _, at := range []string{path.Join(in.dir, name), name} {
		if text, err := r.Read(at); err == nil && bytes.Equal(text, f.Bytes()) {
			return at
		}
	}
	return name
}

// count counts what the check of the file of a process finds, without what it says of
// batches and of other processes there.
func (j *judgement) count(p *model.Process, r check.Report) {
	for _, f := range r.Findings {
		elsewhere := inBatch(r.House, f) || slices.ContainsFunc(r.House.Processes, func(q *model.Process) bool {
			return q.Name != p.Name && inside(f, q.Scope)
		})
		switch {
		case elsewhere:
		case f.Severity >= finding.Fault:
			j.faults++
		case f.Severity == finding.Caution:
			j.cautions++
		}
	}
}

func inBatch(h *model.House, f finding.Finding) bool {
	return slices.ContainsFunc(h.Batches, func(b *model.Batch) bool { return inside(f, b.Scope) })
}

// inside tells whether a finding stands in a place, by the name of the file, since
// one that is read twice is two.
func inside(f finding.Finding, scope source.Place) bool {
	return f.Place.Known() && scope.Known() && f.Place.File.Name() == scope.File.Name() && scope.Start <= f.Place.Start && f.Place.End <= scope.End
}
