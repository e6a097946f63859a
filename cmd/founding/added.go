package founding

import (
	"context"
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// added makes what is added to a house that is there: a process in a file of its own, or a
// block behind what stands in the file of the house.
func (s *sheet) added(ctx context.Context) (Result, error) {
	house := File{Name: s.Main, Text: s.text(s.Main)}
	house.Was = house.Text
	if f, any := firstFault(house); any {
		return Result{}, refuse("put right first what maltwright check finds of it", "%s is not added to: %s", s.Main, f.Message)
	}
	if s.adds(AddProcess) {
		return s.planned(ctx, house, nil)
	}
	s.facts()
	piece, err := tidied(s.Main, s.String())
	if err != nil {
		return Result{}, err
	}
	house.Text = behind(house.Was, piece)
	if f, any := firstFault(house); any {
		return Result{}, refuse("add it by hand", "%s would not read: %s", s.Main, f.Message)
	}
	r := Result{Files: []File{house}, In: s.Main}
	r.Report = s.judged(house)
	r.WhyNot = s.new(r.Report)
	if s.adds(AddGrain) {
		r.Before = BeforeItIsWet(byName(r.Report.House.Grains, s.lotCalled(), func(g *model.Grain) string { return g.Name }))
	}
	r.Use = s.use()
	return r, nil
}

// use is the line of a process that uses what is added.
func (s *sheet) use() string {
	switch {
	case s.adds(AddGrain):
		return fmt.Sprintf("from %s of %s", s.pick("4 kg", "9 lb"), quoted(s.lotCalled()))
	case s.adds(AddVessel):
		return "steep in " + quoted(s.vesselNames()[0].name) + " { … }"
	case s.adds(AddFloor):
		return "germinate on " + quoted(s.floorCalled()) + " { … }"
	}
	return "kiln in " + quoted(s.dryerNames()[0].name) + " { … }"
}

// behind puts a piece behind a text, with an empty line between. The text stays as it is, and
// so do the ends of its lines.
func behind(text, piece []byte) []byte {
	end := "\n"
	if strings.Contains(string(text), "\r\n") {
		end = "\r\n"
	}
	gap := ""
	switch {
	case len(text) == 0 || strings.HasSuffix(string(text), "\n\n") || strings.HasSuffix(string(text), "\n\r\n"):
	case strings.HasSuffix(string(text), "\n"):
		gap = end
	default:
		gap = end + end
	}
	return append(append([]byte(nil), text...), gap+strings.ReplaceAll(string(piece), "\n", end)...)
}

// firstFault gives the first statement of a file that does not read.
func firstFault(f File) (finding.Finding, bool) {
	_, found := syntax.Parse(source.New(f.Name, f.Text))
	for _, x := range found {
		if x.Severity >= finding.Fault {
			return x, true
		}
	}
	return finding.Finding{}, false
}
