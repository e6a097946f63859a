package main

import (
	reports "maltwright/cmd/report"
	reporthtml "maltwright/cmd/report/html"
	reportpaper "maltwright/cmd/report/onpaper"
	"maltwright/sim/infer/follow"
)

// Report writes what a buyer or an inspector is shown.
type Report struct {
	Paths   []string `arg:"" optional:"" name:"path" help:"Records of batches, a folder of them, or a process file; - is standard input. By default the one batch under way in this folder, or else its one process."`
	Format  string   `enum:"html,pdf" default:"html" help:"How to write: html, one page that needs nothing else and prints a sheet or more for each batch, or pdf."`
	At      string   `help:"As of this time; by default now of a batch under way, and the last line of one that is over." placeholder:"TIME"`
	Start   string   `help:"When the first soak of a process begins, to show clock times." placeholder:"TIME"`
	Process string   `help:"Which process, where the file holds several." placeholder:"NAME"`
	Batch   string   `help:"Only this batch of those in the files." placeholder:"NAME"`
	Members int      `default:"200" help:"How many forecasts to weigh for each batch, 20 to 10000." placeholder:"N"`
	NoCache bool     `help:"Do not use or keep results for the next time; the figures are the same."`
	Root    string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Report) Help() string {
	return `For a buyer, an inspector, or yourself in some years. Of each batch: what was made
of what and where that came from, by which text of the process, in which vessels; its
figures and yields, each with how it was come by; the steps; charts; every reading
beside what the forecast expected; what was done otherwise; every doubt; the analyses
of the malt; remarks. Of several batches a page of all stands first. Of a process: its
steps and what comes of them, its gates, the findings of its check, and cautions.

It hides nothing, and it is no certificate of analysis. It says as of when it is: the
same record and time give the same bytes.

Examples:

  maltwright report 26-03.malt > 26-03.html
  maltwright report batches > season.html
  maltwright report 26-03.malt --format pdf > 26-03.pdf
  maltwright report pale.malt --start 2026-03-06T07:00 > pale.html

Exit code: 0 it was written, 1 a record or its process must be put right first, 2 the
command line cannot be understood, 3 a file cannot be read.`
}

// Run makes the report and writes it.
func (c Report) Run(w *World) error {
	if c.Members < follow.LeastMembers || c.Members > follow.MostMembers {
		return usage("--members %d: a batch is followed by %d to %d forecasts", c.Members, follow.LeastMembers, follow.MostMembers)
	}
	if err := w.noTerminal(c.Format); err != nil {
		return err
	}
	r, complete, err := c.made(w)
	if err != nil {
		return err
	}
	if err := reportWriters[c.Format](w, r); err != nil {
		return failed("cannot write: %v", err)
	}
	if !complete {
		return errFindings
	}
	return nil
}

// reportWriters write a report, by format.
var reportWriters = map[string]func(*World, reports.Report) error{
	"html": func(w *World, r reports.Report) error { return reporthtml.Write(w.Out, r) },
	"pdf":  func(w *World, r reports.Report) error { return w.onPaper(reportpaper.Write(w.Out, r)) },
}

// made makes the report of what the paths stand for.
func (c Report) made(w *World) (reports.Report, bool, error) {
	if len(c.Paths) == 0 {
		file, batch, err := w.underwayOrProcess("report", c.Batch, c.Root)
		if err != nil {
			return reports.Report{}, false, err
		}
		c.Paths, c.Batch = []string{file}, batch
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return reports.Report{}, false, err
	}
	if len(files) == 1 && c.Batch == "" {
		house, _, err := files[0].load()
		if err != nil {
			return reports.Report{}, false, err
		}
		if len(house.Processes) > 0 || len(house.Batches) == 0 || c.Process != "" {
			r, err := c.ofProcess(w, files[0])
			return r, true, err
		}
	}
	if c.Start != "" {
		return reports.Report{}, false, usage("a record says itself when its batch began; leave --start out")
	}
	return c.ofBatches(w, files)
}
