package main

import (
	"errors"
	"fmt"
	"strings"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/founding"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/sim/work"
)

// weigh settles the weight that is given: its unit may stand apart, and has then been taken for
// the file or the process.
func (c *Begin) weigh() error {
	if c.Weight == "" {
		return nil
	}
	for _, apart := range []*string{&c.Process, &c.File} {
		if q, err := quantity.Parse(c.Weight + " " + *apart); err == nil && *apart != "" && q.Dimension == quantity.Mass {
			c.Weight = q.String()
			if apart == &c.File {
				c.File = c.Process
			}
			c.Process = ""
			return nil
		}
	}
	q, err := quantity.Parse(c.Weight)
	if err != nil || q.Dimension != quantity.Mass || !(q.SI > 0) {
		return usage("--weight %q is no weight; write it with its unit, as 5.8 kg or 12 lb 4 oz", c.Weight)
	}
	c.Weight = q.String()
	return nil
}

// opened reads the record as it will stand, and refuses one that does not read: a weight may be
// none for the house.
func (c Begin) opened(in input, name string, record []byte) (*model.Batch, error) {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return nil, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	house, found := read.Load(name, record, in.dir, in.past(root, nil))
	for _, f := range found {
		if f.Severity >= finding.Fault && f.Place.File == house.Files[0] {
			return nil, failure{ExitFindings, fmt.Errorf("not begun: %s [%s]", words.Joined("; ", f.Message, f.Hint), f.Rule)}
		}
	}
	if len(house.Batches) == 0 {
		return nil, failure{ExitFindings, errors.New("not begun: its record would hold no batch")}
	}
	return house.Batches[0], nil
}

// beforeItIsWet says what is not known of the lots of a batch, a line each: this is the last moment at
// which it can be asked.
func (w World) beforeItIsWet(b *model.Batch) {
	if b.Process == nil {
		return
	}
	lots := []*model.Grain{b.Process.Grain}
	if len(b.Process.Lots) > 0 {
		lots = lots[:0]
		for _, lot := range b.Process.Lots {
			lots = append(lots, lot.Grain)
		}
	}
	for _, lot := range lots {
		for _, line := range founding.BeforeItIsWet(lot) {
			w.say("before it is wet: %s", line)
		}
	}
}

// firstSteps says what to have ready, what is due first, and what to type then.
func (w World) firstSteps(b *model.Batch, name string) {
	if b.Process == nil || b.Broken {
		return
	}
	ctx, release := w.interruptible()
	defer release()
	o, ok := noted.Open(ctx, b, work.NewPool(work.Records))
	if !ok {
		return
	}
	h := words.OfBatch(b.Process, b)
	for _, line := range h.Opening(o) {
		w.say("%s", line)
	}
	if o.First != nil {
		w.say("then type, with what your scale shows instead of the %s of the forecast:", h.FirstWeight(*o.First))
		fmt.Fprintln(w.Out, strings.TrimRight("  maltwright note "+words.Safe(quotedForShell(name))+" "+h.FirstLine(*o.First), " "))
	}
}
