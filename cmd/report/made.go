package report

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/words"
	"maltwright/lang/model"
)

// grainFacts tell of which lots something is made, and where they came from.
func grainFacts(f *Facts, p *model.Process) {
	lots := []*model.Grain{p.Grain}
	if len(p.Lots) > 0 {
		lots = nil
		for _, t := range p.Lots {
			lots = append(lots, t.Grain)
			f.tell("of it", t.Weight.String()+" of "+words.Safe(t.Grain.Name), "as written")
		}
	}
	for _, g := range lots {
		if g == nil {
			continue
		}
		f.tell("lot", words.Joined(", ", words.Safe(g.Name), words.Joined(" ", words.Safe(g.Species.Text), already(g))), "")
		for _, d := range g.Delivered {
			f.tell("delivered", delivery(d), "as written")
		}
		if len(g.Delivered) == 0 {
			f.tell("delivered", "the house does not say from whom, nor when", "")
		}
		f.tell("stored in", words.Safe(g.Store.Text), "")
		lotFacts(f, g)
	}
}

func already(g *model.Grain) string {
	switch {
	case g.Grown():
		return "green malt as bought"
	case g.Kilned():
		return "malt as bought"
	}
	return ""
}

func delivery(d model.Delivery) string {
	out := d.Weight.String()
	for _, x := range []struct{ before, text string }{{" from ", d.From.Text}, {" on ", d.On.Text}, {" as ", d.As.Text}} {
		if x.text != "" {
			out += x.before + words.Safe(x.text)
		}
	}
	return out
}

// lotFacts tell what the house says of a lot.
func lotFacts(f *Facts, g *model.Grain) {
	if g.Moisture != nil {
		f.tell("moisture of the lot", g.Moisture.String(), "as written")
	}
	for _, t := range g.Germination {
		said := t.Share.String()
		if t.Kernels != nil {
			said += " of " + t.Kernels.String()
		}
		if t.Water != nil {
			said += " at " + t.Water.String()
		}
		if t.On.Text != "" {
			said += " on " + words.Safe(t.On.Text)
		}
		f.tell("germination", said, "as written")
	}
	if g.Protein != nil {
		f.tell("protein of the lot", g.Protein.String(), "as written")
	}
	for _, x := range []struct {
		name string
		word model.Word
	}{{"treated", g.Treated}, {"ergot", g.Ergot}, {"mould", g.Mould}} {
		said := words.Safe(x.word.Text)
		if said == "" {
			said = "not said"
		}
		f.tell(x.name, said, "as written")
	}
}

// gearFacts tell in what it is made, stage by stage.
func gearFacts(f *Facts, p *model.Process) {
	for _, st := range p.Stages {
		if h := model.HolderOf(st); h != nil {
			f.tell(string(st.Kind()), words.Safe(h.Name), "")
		}
	}
	if st := model.First[*model.Storing](p); st != nil && st.In.Text != "" {
		f.tell("stored in", words.Safe(st.In.Text), "")
	}
	if p.Site != nil {
		f.tell("at", words.Safe(p.Site.Name), "")
	}
}

// pinFacts tell by which text of its process a batch was made.
func pinFacts(f *Facts, pin *answer.Pin, print string) {
	if pin == nil {
		f.tell("text of the process", "the record does not say by which it was begun; as it stands its fingerprint is "+print, "")
		return
	}
	said := "begun by the text with the fingerprint " + words.Safe(pin.Fingerprint)
	if pin.Revision != "" {
		said += ", revision " + words.Safe(pin.Revision)
	}
	f.tell("text of the process", said+"; "+pinned[pin.Process], "")
}

// pinned says what has become of that text.
var pinned = map[answer.PinnedText]string{
	answer.Unchanged:  "it is the same still",
	answer.AsBegun:    "it has changed since, and this report goes by the text of then",
	answer.AsItStands: "it has changed since, and the text of then cannot be had: this report goes by that of now",
}

// workers lists who wrote lines of a record, each once, in the order in which they did.
func workers(b *model.Batch) (list []string) {
	see := func(by model.Word) {
		if name := words.Safe(by.Text); name != "" && !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	for _, x := range b.Readings {
		see(byWhom(x))
	}
	for _, x := range b.Remarks {
		see(x.By)
	}
	for _, x := range b.Tested {
		see(x.By)
	}
	for _, x := range b.Changes {
		see(x.By)
	}
	return list
}

// byWhom is who made a reading.
func byWhom(x model.Reading) model.Word {
	switch x := x.(type) {
	case *model.Weighed:
		return x.By
	case *model.Counted:
		return x.By
	case *model.Felt:
		return x.By
	case *model.Read:
		return x.By
	case *model.Turned:
		return x.By
	case *model.Tested:
		return x.By
	}
	return model.Word{}
}

// acceptedBy lists what a house and a process let pass, with the reason: findings that are not told.
func acceptedBy(p *model.Process) (lines []string) {
	list := slices.Clone(p.Accepts)
	if p.House != nil {
		list = append(list, p.House.Accepts...)
	}
	for _, a := range list {
		line := fmt.Sprintf("%s: %s", words.Safe(a.Rule.Text), words.Safe(a.Reason))
		if !slices.Contains(lines, line) {
			lines = append(lines, line)
		}
	}
	return lines
}

// oneLine is a text of a file as it may be shown, on one line.
func oneLine(text string) string { return words.Safe(strings.Join(strings.Fields(text), " ")) }
