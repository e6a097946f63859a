package folder

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/sorted"
)

// Look says how the folder stands at a time. An unchanged folder costs a look at its files; a record that
// changed costs some dozen forecasts. The error is a *Failed, or that of the context.
func (d *Folder) Look(ctx context.Context, now time.Time) (State, error) {
	units, unread, err := d.index.scan()
	if err != nil {
		return State{}, err
	}
	s := State{At: now, Unread: unread}
	for _, u := range units {
		if err := d.tell(ctx, &s, u); err != nil {
			return s, err
		}
	}
	sorted.Stable(s.Over, func(a, b Brief) int { return b.Last.Compare(a.Last) })
	sorted.Stable(s.Due, func(a, b Due) int { return a.At.Compare(b.At) })
	s.Version = versionOf(s, units)
	return s, nil
}

// tell puts a file of the folder into the state.
func (d *Folder) tell(ctx context.Context, s *State, u *unit) error {
	if faults := u.faults(); len(faults) > 0 {
		s.Unread = append(s.Unread, Unread{u.at, toldOf(faults[0])})
	}
	for _, b := range u.batches {
		if !b.goesOn(s.At) {
			s.Over = append(s.Over, b.brief())
			continue
		}
		told, err := d.batch(ctx, b, s.At)
		if err != nil {
			return err
		}
		s.Underway = append(s.Underway, told)
		s.Due = append(s.Due, told.Late...)
		if len(told.Due) > 0 {
			s.Due = append(s.Due, told.Due[0])
		}
	}
	for i := range u.processes {
		s.Processes = append(s.Processes, u.process(i))
	}
	return nil
}

// faults are what must be put right before the file can be used.
func (u *unit) faults() (list []finding.Finding) {
	for _, f := range u.found {
		if f.Severity >= finding.Fault {
			list = append(list, f)
		}
	}
	return list
}

// brief is a batch in a list.
func (s *standing) brief() Brief {
	b := Brief{ID: s.id, Name: s.batch.Name, File: s.unit.at, Began: s.batch.Began.Time, Last: s.last}
	if s.batch.Process != nil {
		b.Process = s.batch.Process.Name
	}
	return b
}

// batch says how a batch under way stands.
func (d *Folder) batch(ctx context.Context, s *standing, now time.Time) (Batch, error) {
	b := Batch{Brief: s.brief(), At: now, Of: d.madeBy(s)}
	for _, f := range s.dangers() {
		b.Dangers = append(b.Dangers, words.Joined("; ", f.Message, f.Hint))
	}
	if !s.sound() {
		b.Unsound = s.unsound()
		s.lines(&b, stood{})
		return b, nil
	}
	b.House = s.house()
	x, err := s.stood(ctx, now)
	if err != nil {
		return b, err
	}
	b.At, b.AsOf = x.at, words.AsOf[x.asOf]
	if !x.ok {
		b.Unsound = "no forecast of it could be made; maltwright follow says why"
		s.lines(&b, x)
		return b, nil
	}
	s.due(&b, x, d.visits(s, x), now)
	s.lines(&b, x)
	b.Now = s.now(x, now)
	b.Followed = d.followed(s)
	return b, nil
}

// madeBy is the process of a batch as the folder has it, "" where it has not.
func (d *Folder) madeBy(s *standing) ID {
	p := s.batch.Process
	if s.batch.Today != nil {
		p = s.batch.Today
	}
	if p == nil || !p.Place.Known() {
		return ""
	}
	return d.index.process(s.unit.Below(texts{d.index}, p.Place.File), p.Name)
}

// unsound says why a batch cannot be forecast.
func (s *standing) unsound() string {
	switch faults := s.unit.faults(); {
	case len(faults) > 0:
		return toldOf(faults[0])
	case s.batch.Began.IsZero():
		return "its record does not say when it began"
	case s.batch.Process == nil:
		return "the process that it names is not known"
	}
	return "some of its record does not read"
}

// now is how the batch stands, in words.
func (s *standing) now(x stood, now time.Time) (n Now) {
	h, of := s.house(), x.of
	n.Stage, n.Step, n.Until, n.Ready = string(of.Stage), of.Step, of.Ends, of.Ready
	if of.Moisture == of.Moisture {
		n.Moisture = words.Percent(of.Moisture)
	}
	if of.Weight == of.Weight {
		n.Weight = words.Weighed(h, of.Weight)
		n.Gross = words.OnScale(h, of.Weight, of.OnScale)
	}
	if !of.Ready.IsZero() {
		n.Left = lasting(of.Ready.Sub(now))
	}
	return n
}

// lasting is a length of time in words, "now" for what is over.
func lasting(d time.Duration) string {
	if d < time.Minute {
		return "now"
	}
	return words.Lasting(d.Seconds())
}

// toldOf is a finding in a sentence, with its place.
func toldOf(f finding.Finding) string {
	said := words.Joined("; ", f.Message, f.Hint)
	if !f.Place.Known() {
		return words.Safe(said)
	}
	return words.Safe(fmt.Sprintf("line %d of %s: %s", lineOf(f.Place), f.Place.File.Name(), said))
}

// versionOf tells a state apart from one that shows something else.
func versionOf(s State, units []*unit) string {
	var all strings.Builder
	for _, u := range units {
		fmt.Fprintf(&all, "%s %x\n", u.at, u.sum)
	}
	for _, d := range s.Due {
		fmt.Fprintf(&all, "%s %d %t\n", d.Batch, d.At.Unix()/60, d.Late)
	}
	for _, b := range s.Underway {
		if b.Followed != nil {
			fmt.Fprintf(&all, "%s %d %t\n", b.ID, b.Followed.At.Unix(), b.Followed.Stale)
		}
	}
	for _, x := range s.Unread {
		fmt.Fprintln(&all, x)
	}
	sum := sha256.Sum256([]byte(all.String()))
	return hex.EncodeToString(sum[:8])
}
