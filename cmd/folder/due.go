package folder

import (
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

const (
	overdue  = time.Minute    // behind its time, from which on a visit is late
	dropped  = 2 * time.Hour  // behind its time, from which on a visit is told no more that leaves no line in a record
	tooLate  = 24 * time.Hour // the same of one that does, where a later one is told
	attended = time.Hour      // before a visit: a line of then tells of it too, for who comes early writes it down
)

// recorded are the tasks of which a record has a line.
var recorded = []visits.Kind{visits.Drain, visits.Turn, visits.Look, visits.EndFloor, visits.Gate, visits.Unload, visits.Deculm}

// due tells what is to be done at a batch, and what of it is over without a word in the record.
func (s *standing) due(b *Batch, x stood, all []noted.Visit, now time.Time) {
	for _, v := range all {
		switch {
		case now.Sub(v.Time) < overdue:
			b.Due = append(b.Due, s.visit(v, now))
		case v.Time.After(s.last.Add(attended)):
			b.Late = append(b.Late, s.visit(v, now))
		}
	}
	b.Late, b.Missed = lates(b.Late, now)
	if w := x.of.Waits; w != nil && now.Sub(w.Since) > overdue {
		d := Due{Batch: s.id, Name: s.batch.Name, At: w.Since, Late: true, Kind: string(follow.LateStep),
			Says: words.Late(follow.LateStep, words.OnDay(w.Since, now), w.Until)}
		d.seen(now)
		b.Late = append(b.Late, d)
	}
	sorted.Stable(b.Late, func(a, b Due) int { return a.At.Compare(b.At) })
}

// lates leaves out what is so long over that nobody asks for it: what leaves no line, what was to be
// done again since, and what is a day old where something later is told. Of that, what a record has a line of
// and nothing later makes up for is missed.
func lates(list []Due, now time.Time) (late, missed []Due) {
	for i, d := range list {
		kind, ago := visits.Kind(d.Kind), now.Sub(d.At)
		again := kind.Again() && slices.ContainsFunc(list[i+1:], func(o Due) bool { return o.Kind == d.Kind })
		old := ago > tooLate && i+1 < len(list) || ago > dropped && !slices.Contains(recorded, kind)
		switch {
		case !again && !old:
			late = append(late, d)
		case !kind.Again() && slices.Contains(recorded, kind):
			missed = append(missed, d)
		}
	}
	return late, missed
}

// visit is a visit to the batch, seen from a time.
func (s *standing) visit(v noted.Visit, now time.Time) Due {
	h := s.house()
	d := Due{Batch: s.id, Name: s.batch.Name, At: v.Time, Says: words.Safe(h.Tasks(v)), Kind: string(v.Tasks[0].Kind),
		Late: now.Sub(v.Time) >= overdue, Night: v.Night != nil && *v.Night}
	if !math.IsNaN(float64(v.Weight)) {
		d.Expected = words.OnScale(h, v.Weight, v.OnScale)
	}
	d.seen(now)
	return d
}

// seen says when it is due, seen from a time.
func (d *Due) seen(now time.Time) {
	d.When, d.Left = words.OnDay(d.At, now), lasting(d.At.Sub(now).Abs())
}

// lines tells every reading and remark of the record, with what it comes to.
func (s *standing) lines(b *Batch, x stood) {
	var h words.House
	if s.batch.Process != nil {
		h = s.house()
	}
	told := map[source.Place]noted.Result{}
	for _, line := range x.of.Lines {
		told[line.Of.Place()] = line.Result
	}
	for _, r := range s.batch.Lines() {
		n := Noted{Line: lineOf(r.Place()), At: r.When().Time, Words: words.OneLine(r.Place().Text())}
		if result, ok := told[r.Place()]; ok {
			n.Says = h.Reading(result)
			b.short(result, x.of.Stage)
			if result.Doubt != nil {
				message, hint := h.DoubtOf(*result.Doubt, r.(*model.Weighed).Weight.String()) // only weights are doubted so
				n.Doubt = words.Joined("; ", message, hint)
			}
		}
		if isRemark(r) {
			b.Remarks = append(b.Remarks, n)
		} else {
			b.Readings = append(b.Readings, n)
		}
	}
	if !x.ok { // its findings are told as a whole
		return
	}
	for _, f := range slices.Concat(s.unit.found, x.found) {
		s.doubt(b, f)
	}
}

// short tells of grain that came out of the steep too dry, until it is weighed moist enough or dries.
func (b *Batch) short(r noted.Result, stage model.StageKind) {
	grows := stage == model.SteepStage || stage == model.GerminateStage
	switch {
	case r.Short != nil && grows:
		b.Short = words.Short(*r.Short)
	case r.Short == nil && r.Moisture != nil && r.Moisture.Forecast != nil && r.Moisture.Read >= *r.Moisture.Forecast:
		b.Short = ""
	}
}

func isRemark(x model.Dated) bool {
	_, is := x.(*model.Remark)
	return is
}

// doubt puts what is found of the record to the line that it is about, or to the batch.
func (s *standing) doubt(b *Batch, f finding.Finding) {
	if f.Severity < finding.Caution || f.Place.File != s.unit.house.Files[0] || !within(f.Place, s.batch.Scope) {
		return
	}
	said, line := words.Safe(words.Joined("; ", f.Message, f.Hint)), lineOf(f.Place)
	if i := slices.IndexFunc(b.Remarks, func(n Noted) bool { return n.Line == line }); i >= 0 && f.Rule == alarming {
		b.Remarks[i].Danger = said
		return
	}
	if i := slices.IndexFunc(b.Readings, func(n Noted) bool { return n.Line == line }); i >= 0 {
		if f.Rule != doubtful || b.Readings[i].Doubt == "" {
			b.Readings[i].Doubt = words.Joined("; ", b.Readings[i].Doubt, said)
		}
		return
	}
	b.Doubts = append(b.Doubts, strings.TrimSpace(toldOf(f)))
}

func within(p, scope source.Place) bool {
	return p.File == scope.File && scope.Start <= p.Start && p.Start <= scope.End
}

func lineOf(p source.Place) int { return p.File.Position(p.Start, source.Characters).Line }
