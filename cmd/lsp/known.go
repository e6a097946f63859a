package lsp

import (
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"maltwright/check/profile"
	ofrecords "maltwright/check/records"
	"maltwright/check/rules"
	"maltwright/check/usual"
	"maltwright/cmd/lsp/desk"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// known is what a document does not say itself, for what may stand at an offset of it: the names of all
// that it uses, and what is usual for its grain and malt. The names are of the files as they stand, so
// that a line which does not read takes none of them away.
func (s *session) known(v *desk.View, doc *desk.Doc, offset int) offer.Known {
	k := offer.Known{Names: offer.NamesIn(doc.Tree()), Now: s.now(), Rules: rulesOf(s.foundLast(doc))}
	for _, path := range v.Folder(doc.Dir()) {
		if path != doc.Path && !strings.HasPrefix(filepath.Base(path), ".") {
			k.Files = append(k.Files, filepath.Base(path))
		}
	}
	if words := strings.Fields(lineOf(doc.File, offset)); len(words) > 0 && vocabulary.Includes(words[0]) {
		housesFirst(v, doc.Dir(), k.Files)
	}
	checked, err := v.Checked(doc.Path)
	if err != nil || checked.House == nil {
		return k
	}
	house := checked.House
	for _, f := range house.Files {
		if used, err := v.Doc(v.PathOf(f)); err == nil && used.Path != doc.Path {
			k.Names = append(k.Names, offer.NamesIn(used.Tree())...)
		}
	}
	p := processAt(house, doc.File, offset)
	k.System = unitsOf(house, p)
	k.Usual = usual.Of(profile.Of(p), k.System)
	return k
}

// mostHouses of the files of a folder are looked into for a house.
const mostHouses = 200

// housesFirst puts the files that say what a house has in front of those of processes and records.
func housesFirst(v *desk.View, dir string, files []string) {
	if len(files) > mostHouses {
		return
	}
	house := map[string]bool{}
	for _, name := range files {
		if d, err := v.Doc(filepath.Join(dir, name)); err == nil {
			house[name] = slices.ContainsFunc(offer.NamesIn(d.Tree()), func(n offer.Named) bool {
				return n.Block != vocabulary.Process && n.Block != vocabulary.Batch
			})
		}
	}
	slices.SortStableFunc(files, func(a, b string) int {
		switch {
		case house[a] == house[b]:
			return 0
		case house[a]:
			return -1
		}
		return 1
	})
}

// lineOf is the text of a line up to an offset of it.
func lineOf(f *source.File, offset int) string {
	text := string(f.Bytes()[:offset])
	return text[strings.LastIndexByte(text, '\n')+1:]
}

// ruleNames are the rules that accept can silence, with what each tells: those of forecasts and of records.
// What does not read is put right, and a danger to people is never silenced.
var ruleNames = sync.OnceValue(func() []offer.Named {
	var list []offer.Named
	add := func(r finding.Rule) {
		if r.Severity < finding.Danger {
			list = append(list, offer.Named{Text: r.Name, Detail: r.Title})
		}
	}
	for _, r := range rules.All() {
		add(r.Rule)
	}
	for _, r := range ofrecords.Rules() {
		add(r)
	}
	slices.SortFunc(list, func(a, b offer.Named) int { return strings.Compare(a.Text, b.Text) })
	return list
})

// foundLast is what the last forecast of a document found: while an accept is being written its process does
// not read, nothing is forecast, and what was found before is what is to be accepted.
func (s *session) foundLast(doc *desk.Doc) []finding.Finding {
	s.judge.mu.Lock()
	defer s.judge.mu.Unlock()
	if is := s.judge.docs[doc.Path]; is != nil {
		return is.foresaw
	}
	return nil
}

// rulesOf are all rules, those that have found something in front.
func rulesOf(found []finding.Finding) []offer.Named {
	by := map[string]bool{}
	for _, f := range found {
		by[f.Rule] = true
	}
	list := slices.Clone(ruleNames())
	slices.SortStableFunc(list, func(a, b offer.Named) int {
		switch {
		case by[a.Text] == by[b.Text]:
			return 0
		case by[a.Text]:
			return -1
		}
		return 1
	})
	return list
}

// processAt is the process that an offset lies in, or of which the record is that it lies in; outside of
// both the first of the house, and where there is none one of its first lot.
func processAt(h *model.House, f *source.File, offset int) *model.Process {
	within := func(p source.Place) bool {
		return p.Known() && p.File.Name() == f.Name() && p.Start <= offset && offset <= p.End
	}
	for _, p := range h.Processes {
		if within(p.Scope) {
			return p
		}
	}
	for _, b := range h.Batches {
		if b.Process != nil && within(b.Scope) {
			return b.Process
		}
	}
	first := &model.Process{House: h}
	if len(h.Grains) > 0 {
		first.Grain = h.Grains[0]
	}
	return first
}

// unitsOf are the units of a process, or of the house where it says nothing that has one.
func unitsOf(h *model.House, p *model.Process) quantity.System {
	if len(p.Stages) > 0 || p.Charge != nil {
		return p.Units()
	}
	whole := model.Process{House: h, Site: p.Site}
	if len(h.Sites) > 0 {
		whole.Site = h.Sites[0]
	}
	for _, vessel := range h.Vessels {
		whole.Stages = append(whole.Stages, &model.Steep{Vessel: vessel})
	}
	for _, kiln := range h.Kilns {
		whole.Stages = append(whole.Stages, &model.Kilning{Kiln: kiln})
	}
	return whole.Units()
}
