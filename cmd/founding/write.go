package founding

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/work"
)

// Write makes the files. What is open in the answers is left to what is usual. It ends with
// the context, whose error it then gives; a *Refusal says what must be mended first.
func Write(ctx context.Context, a Answers, there There) (Result, error) {
	r, err := write(ctx, a, there, true)
	if err == nil {
		err = ctx.Err()
	}
	return r, err
}

// write makes the files, by the first plan that is laid out where none is to be sought.
func write(ctx context.Context, a Answers, there There, seek bool) (Result, error) {
	whole, open, ok := Completed(a, there)
	if !ok {
		return Result{}, refuse("answer it first", "%s is open: %s", open.Key, open.Ask)
	}
	s := asked(whole, there).sheet()
	s.seeks = seek
	if s.House == nil {
		return s.begun(ctx)
	}
	return s.added(ctx)
}

// begun makes the files of a new house.
func (s *sheet) begun(ctx context.Context) (Result, error) {
	name := s.placeCalled()
	house := File{Name: fileName(name, s.Taken)}
	s.comment(name + ": what is here and what it can do. A line that says usual was not measured here: put your own figure there when you know it.")
	s.facts()
	var err error
	if house.Text, err = tidied(house.Name, s.String()); err != nil {
		return Result{}, err
	}
	return s.planned(ctx, house, []File{house})
}

// planned writes a process for a house that is written.
func (s *sheet) planned(ctx context.Context, house File, files []File) (Result, error) {
	h, found := read.Load(house.Name, house.Text, ".", s.Root)
	if len(h.Grains) == 0 || len(h.Vessels) == 0 || len(h.Floors) == 0 || len(h.Kilns) == 0 {
		return Result{}, fmt.Errorf("%s lacks what a process needs: %v", house.Name, found)
	}
	p, err := s.plan(h)
	if err != nil {
		return Result{}, err
	}
	own := File{Name: fileName(p.name, append(slices.Clone(s.Taken), house.Name))}
	t := trial{sheet: s, house: house, name: own.Name, ctx: ctx, pool: work.NewPool(mostWork)}
	best := t.search(p)
	if best.broken != nil {
		return Result{}, best.broken
	}
	if s.seeks {
		best = t.byDay(best)
	}
	if p = best.plan.copy(); len(best.lasting()) > 0 { // what is left stands at the top of it
		p.notes = best.lasting()
		t.pool = work.NewPool(mostWork)
		best = t.try(p)
	}
	own.Text = best.text
	r := Result{Files: append(files, own), Process: p.name, In: own.Name, Forecast: best.forecast(), Report: best.report}
	r.Changed, r.WhyNot, r.Before = best.plan.changed(s.system), best.whyNot(), BeforeItIsWet(p.grain)
	return r, nil
}

// plan lays out the process that was asked for, of what is in a house.
func (s *sheet) plan(h *model.House) (*plan, error) {
	charge, _ := s.value("charge")
	weight, err := quantity.Parse(charge)
	if err != nil {
		return nil, err
	}
	malt, _ := s.value("malt")
	name, _ := s.value("process")
	p := &plan{house: h, malt: malt, name: name, asked: weight.SI, written: weight.String()}
	lot, floor, site := s.lotCalled(), s.floorCalled(), s.placeCalled()
	if s.House != nil {
		lot, _ = s.value("use grain")
		floor, _ = s.value("use floor")
		site, _ = s.value("use site")
	}
	p.grain = byName(h.Grains, lot, func(g *model.Grain) string { return g.Name })
	p.floor = byName(h.Floors, floor, func(f *model.Floor) string { return f.Name })
	if len(h.Sites) > 0 {
		p.site = byName(h.Sites, site, func(x *model.Site) string { return x.Name })
	}
	vessels, kilns := []string{s.Answers["use vessel"]}, []string{}
	if s.House == nil {
		vessels = nil
		for _, v := range s.vesselNames() {
			vessels = append(vessels, v.name)
		}
		for _, k := range s.dryerNames() {
			kilns = append(kilns, k.name)
		}
	}
	for n := 1; n <= mostOf && s.House != nil; n++ {
		if key := fmt.Sprintf("use dryer %d", n); n == 1 || s.has(key) {
			kilns = append(kilns, s.Answers[key])
		}
	}
	for _, v := range vessels {
		p.vessels = append(p.vessels, byName(h.Vessels, v, func(x *model.Vessel) string { return x.Name }))
	}
	for _, k := range kilns {
		p.kilns = append(p.kilns, byName(h.Kilns, k, func(x *model.Kiln) string { return x.Name }))
	}
	for _, f := range h.Floors { // the widest that no fan blows through
		if f.Airflow == nil && f.Area != nil && (p.spread == nil || f.Area.SI > p.spread.Area.SI) {
			p.spread = f
		}
	}
	p.profile = profileOf(p.grain.Species.Text, malt)
	p.first()
	if p.instead != "" && !s.has("process") {
		p.name = unused(strings.Replace(name, malt, p.malt, 1), namesIn(s.House, AddProcess))
	}
	return p, nil
}

// byName gives the thing of a name, or the first.
func byName[T any](list []T, name string, of func(T) string) T {
	for _, x := range list {
		if of(x) == name {
			return x
		}
	}
	return list[0]
}

// tidied lays a text out. What does not read is a mistake of this package.
func tidied(name, text string) ([]byte, error) {
	tree, found := syntax.Parse(source.New(name, []byte(strings.TrimLeft(text, "\n"))))
	if len(found) > 0 {
		return nil, fmt.Errorf("%s: %s", name, found[0].Message)
	}
	return layout.Write(tree), nil
}
