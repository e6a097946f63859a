package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/answer/inspection"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/sarif"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
)

// Check looks for what is wrong with processes.
type Check struct {
	Paths      []string `arg:"" optional:"" name:"path" help:"Files or folders; - is standard input. By default all files below this folder."`
	Format     string   `enum:"text,lines,json,sarif" default:"text" help:"How to write: text, lines (one a finding), json or sarif (SARIF 2.1.0)."`
	FailOn     string   `enum:"note,caution,fault,danger" default:"fault" help:"The mildest severity that makes the exit code 1: note, caution, fault or danger."`
	Root       string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
	NoForecast bool     `help:"Only look at the text and its meaning." xor:"odds"`
	Mend       bool     `help:"Write the certain repairs into the files, show them as a unified diff, and check again."`
	DryRun     bool     `help:"With --mend: only show what would be written."`
	On         string   `help:"The day of the first soak, such as 2026-03-06: shows which germination tests are too old on that day." placeholder:"DATE"`
	All        bool     `help:"Show every finding in full; by default the worst five, and one line a rule for the rest."`
	NotJudged  bool     `help:"Show also what could not be judged, and why."`
	Quiet      bool     `help:"Show only what is at or above --fail-on, and every danger; say nothing where there is none."`
	Cautions   bool     `help:"Show in full what can hurt somebody, however much is found."`
	Odds       bool     `help:"Forecast many likely batches too, and show which promises too few of them keep." xor:"odds"`
}

// Help is the longer help of the command.
func (Check) Help() string {
	return `Every process in the files is read, and forecast to see whether its gates are
met and its promises kept. A folder stands for every .malt file below it.

Examples:

  maltwright check pale.malt
  maltwright check examples --format lines
  maltwright check - < pale.malt
  maltwright check --mend --dry-run pale.malt
  maltwright check --format sarif examples > findings.sarif

The worst five findings are shown in full, every danger among them, and of the rest
a line for each rule. Above them stands what can hurt somebody in these processes,
in one line where more than five are found.

A danger to people always makes the exit code 1. With --mend, standard input is
mended to standard output.

Exit code: 0 nothing at or above --fail-on, 1 findings, 2 the command line
cannot be understood, 3 a file cannot be read.`
}

// Run checks and reports.
func (c Check) Run(w *World) error {
	if c.DryRun && !c.Mend {
		return usage("--dry-run goes with --mend")
	}
	if len(c.Paths) == 0 {
		if c.Mend {
			return usage("check --mend writes into files: name them, such as: %s", commandLine("check", "--mend", w.sample()))
		}
		c.Paths = []string{"."}
	}
	if c.On != "" {
		day, err := w.saidDay("--on", c.On)
		if err != nil {
			return err
		}
		c.On = day
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return err
	}
	ctx, release := w.interruptible()
	defer release()
	if c.Mend {
		if w, err = c.mend(ctx, w, files); err != nil {
			return err
		}
	}
	reports, err := w.checkAll(files, c.options(ctx))
	if err != nil {
		return err
	}
	if ctx.Err() != nil {
		return errInterrupted
	}
	var found []finding.Finding
	var notJudged []finding.NotJudged
	var hazards []outlook.Caution
	for _, r := range reports {
		hazards = append(hazards, r.cautions...)
		found, notJudged = append(found, r.Findings...), append(notJudged, r.NotJudged...)
	}
	found = finding.Sort(found)
	level, _ := finding.ParseSeverity(c.FailOn)
	if c.Quiet {
		found, notJudged, hazards = atLeast(found, level), nil, nil // a danger is above every level
	}
	if err := c.write(w, seen{found, notJudged, hazards, len(files)}); err != nil {
		return failed("cannot write: %v", err)
	}
	if worst, any := finding.Worst(found); any && worst >= level { // a danger is at or above every level
		return errFindings
	}
	return nil
}

func (c Check) options(ctx context.Context) check.Options {
	return check.Options{NoForecast: c.NoForecast, Odds: c.Odds, On: c.On, Context: ctx}
}

// seen is what was found in some files.
type seen struct {
	found     []finding.Finding
	notJudged []finding.NotJudged
	cautions  []outlook.Caution
	files     int
}

func (c Check) write(w *World, s seen) error {
	found, notJudged, o := s.found, s.notJudged, w.options()
	switch c.Format {
	case "json":
		return json.Write(w.Out, inspection.Of(found, notJudged, w.Folder), nil)
	case "lines":
		return text.Lines(w.Out, found, o)
	case "sarif":
		return sarif.Write(w.Out, found, notJudged, sarif.Tool{Version: version(), Rules: check.Rules()}, w.Folder)
	}
	if c.Quiet && len(found) == 0 {
		return nil
	}
	return c.tell(w, s, o)
}

// tell writes what was found for a reader; the summary stands last.
func (c Check) tell(w *World, s seen, o text.Options) error {
	write := text.WorstFindings
	if c.All {
		write = text.Findings
	}
	o.Cautions = c.Cautions || c.All || len(s.found) <= text.MostWhole
	if err := errors.Join(text.Cautions(w.Out, s.cautions, o), write(w.Out, s.found, o)); err != nil {
		return err
	}
	if len(s.found) > 0 {
		fmt.Fprintln(w.Out)
	}
	unjudged, of := text.UnjudgedCount, weighty(s.notJudged)
	if c.NotJudged {
		unjudged, of = text.Unjudged, s.notJudged
	}
	if err := unjudged(w.Out, of, o); err != nil {
		return err
	}
	_, err := fmt.Fprintln(w.Out, summary(s.found, s.files))
	return err
}

// weighty is what could not be judged by rules that find faults or dangers.
func weighty(list []finding.NotJudged) []finding.NotJudged {
	mild := map[string]bool{}
	for _, r := range check.Rules() {
		mild[r.Name] = r.Severity < finding.Fault
	}
	return slices.DeleteFunc(slices.Clone(list), func(n finding.NotJudged) bool { return mild[n.Rule] })
}

// summary says in a line how many of what was found in how many files.
func summary(found []finding.Finding, files int) string {
	counts := map[finding.Severity]int{}
	for _, f := range found {
		counts[f.Severity]++
	}
	var parts []string
	for _, s := range []finding.Severity{finding.Danger, finding.Fault, finding.Caution, finding.Note} {
		if n := counts[s]; n > 0 {
			parts = append(parts, words.Plural(n, s.String()))
		}
	}
	if len(parts) == 0 {
		parts = []string{"nothing found"}
	}
	return fmt.Sprintf("%s in %s", strings.Join(slices.Compact(parts), ", "), words.Plural(files, "file"))
}
