package main

import (
	"bufio"
	"errors"
	"fmt"
	"strings"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// Begin opens the record of a batch.
type Begin struct {
	File    string `arg:"" optional:"" help:"The file of the process. By default the one process of this folder."`
	Process string `arg:"" optional:"" help:"Which process, where the file holds several."`
	At      string `help:"When the grain goes into the first soak, as 7:00, yesterday 21:00 or 2026-03-06T07:00; otherwise now." placeholder:"TIME"`
	Name    string `help:"Name of the batch; otherwise the next number of its year, such as 26-06." placeholder:"NAME"`
	Sure    bool   `help:"Begin it though another batch is still in the same vessel by its record."`
	Weight  string `help:"How much grain goes in, such as \"5.8 kg\"; otherwise as the process says." placeholder:"WEIGHT"`
	DryRun  bool   `help:"Print the record; write nothing."`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Begin) Help() string {
	return `Writes the record of a new batch into a file of its own, beside that of the process
and named after the batch. It says when the batch was begun and how much of which lot
went in, which is yours to put right, and pins it to the text of its process: a
fingerprint of the process and of all that it uses of the house, and the revision of
git that holds them, if they are committed. When the process is changed later on, the
record still goes by the text of its beginning. Then it shows what to have ready, what
is due first and when, and the first line to note, with the weight that is forecast.

Examples:

  maltwright begin pale.malt
  maltwright begin pale.malt --at 2026-03-06T07:00
  maltwright begin pale.malt --weight 5.8 kg
  maltwright begin malts.malt "Loft wheat" --name 26-w1

Exit code: 0 begun; 1 the process does not read; 2 the command line cannot be
understood, there is such a batch already, or another one is in the vessel; 3 a file
cannot be read or written.`
}

// Run reads the process and writes the record.
func (c Begin) Run(w *World) error {
	if c.File == "" {
		file, err := w.theProcess("begin")
		if err != nil {
			return err
		}
		c.File = file
	}
	if err := c.weigh(); err != nil {
		return err
	}
	in, err := w.file(c.File, c.Root)
	if err != nil {
		return err
	}
	house, found, err := in.load()
	if err != nil {
		return err
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Findings(w.Err, atLeast(found, finding.Fault), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
		return failure{ExitFindings, errors.New("not begun: put these right first")}
	}
	p, err := c.pick(house)
	if err != nil {
		return err
	}
	at, err := c.began(w)
	if err != nil {
		return err
	}
	o, err := in.as().Opening(p, folder.Beginning{At: at, Name: c.Name, Weight: c.Weight})
	if err != nil {
		return exitOf(err)
	}
	if err := c.free(w, in, p, at); err != nil {
		return err
	}
	if c.DryRun {
		_, err = w.Out.Write([]byte(safeLines(string(o.Text))))
		return err
	}
	if err := w.clerk(input{name: o.Name}).Begin(o); err != nil {
		return exitOf(err)
	}
	w.begun(o)
	return nil
}

// begun says where the record is, and what comes first.
func (w World) begun(o folder.Opening) {
	w.say("%s: begun %s by %q; its record is %s", words.Safe(o.Batch), o.Began.Format("2006-01-02 15:04"), words.Safe(o.Process), words.Safe(o.Name))
	if !o.Kept() {
		w.aside("git keeps no copy of the process, so leave its text as it is until this batch is over; what you do otherwise goes into the record")
	}
	for _, line := range folder.BeforeItIsWet(o.Model) {
		w.say("before it is wet: %s", line)
	}
	ctx, release := w.interruptible()
	defer release()
	first := folder.FirstOf(ctx, o.Model)
	for _, line := range first.Says {
		w.say("%s", line)
	}
	if first.Line != "" {
		w.say("then type, with what your scale shows instead of the %s of the forecast:", first.Weight)
		fmt.Fprintln(w.Out, strings.TrimRight("  maltwright note "+words.Safe(quotedForShell(o.Name))+" "+termsForShell(first.Line), " "))
	}
}

// began is when the batch begins, to the minute.
func (c Begin) began(w *World) (time.Time, error) {
	if c.At == "" {
		return w.now().Truncate(time.Minute), nil
	}
	at, err := w.said("--at", c.At, true)
	return at.Local(), err
}

// pick gives the process that is meant.
func (c Begin) pick(h *model.House) (*model.Process, error) {
	if len(h.Processes) > 1 && c.Process == "" {
		return nil, usage("%s holds %d processes; say which behind the file", c.File, len(h.Processes))
	}
	return Forecast{File: c.File, Process: c.Process}.pick(h)
}

// weigh settles the weight that is given: its unit may stand apart, and has then been taken for
// the file or the process.
func (c *Begin) weigh() error {
	if c.Weight == "" {
		return nil
	}
	for _, apart := range []*string{&c.Process, &c.File} {
		if weight, err := folder.Weight(c.Weight + " " + *apart); err == nil && *apart != "" {
			c.Weight = weight
			if apart == &c.File {
				c.File = c.Process
			}
			c.Process = ""
			return nil
		}
	}
	weight, err := folder.Weight(c.Weight)
	c.Weight = weight
	return exitOf(err)
}

// free asks before a batch is begun in a vessel that holds another one by its record.
func (c Begin) free(w *World, in input, p *model.Process, at time.Time) error {
	if c.Sure || c.DryRun {
		return nil
	}
	ctx, release := w.interruptible()
	defer release()
	other := in.as().Lying(ctx, p, at)
	if other == nil {
		return nil
	}
	if !w.InTerm || !w.ErrTerm {
		return usage("not begun: %s; --sure begins another one all the same", other.Lies())
	}
	question := "begin another one? y or n:"
	fmt.Fprintf(w.Err, "%s ", strings.Join(words.Wrap(words.Safe(other.Lies()+"; "+question), max(w.Width, 40)), "\n"))
	if answer, _ := bufio.NewReader(w.In).ReadString('\n'); !strings.HasPrefix(strings.ToLower(strings.TrimSpace(answer)), "y") {
		return failure{ExitFindings, fmt.Errorf("not begun")}
	}
	return nil
}
