package main

import (
	"fmt"
	"reflect"
	"slices"

	"github.com/alecthomas/kong"
)

// Line is the command line as a whole; kong fills it in.
type Line struct {
	New        New        `cmd:"" help:"Begin: asks about your grain and what you have, and writes a house and its first process."`
	Check      Check      `cmd:"" help:"Look for what is unsafe, impossible or inconsistent, before grain is spent."`
	Forecast   Forecast   `cmd:"" help:"Forecast a batch step by step: times, moistures, weights on the scale."`
	Visits     Visits     `cmd:"" help:"Make the timetable of a batch: every visit it needs, also for your calendar."`
	Sheet      Sheet      `cmd:"" help:"Print the sheet by the bucket: every visit with boxes to fill in by hand."`
	Follow     Follow     `cmd:"" help:"Say how a batch stands by its readings: how much longer, what is due, what is late."`
	Seasons    Seasons    `cmd:"" help:"Compare batches by their records: times, weights, moistures, growth, yield."`
	Chart      Chart      `cmd:"" help:"Draw a batch over time, or several over each other, with what was read and what is foretold."`
	Report     Report     `cmd:"" help:"Write a report for a buyer or an inspector: what was made of what, readings, charts, yields, doubts."`
	Learn      Learn      `cmd:"" help:"Learn from finished batches how lots, kiln and thermometer differ from the model."`
	Begin      Begin      `cmd:"" help:"Open the record of a batch, pinned to the text of its process."`
	Note       Note       `cmd:"" help:"Append one reading to the record of a batch, with the time now."`
	Serve      Serve      `cmd:"" help:"Show the batches on a page, here or on a phone, and take readings there."`
	Lsp        Lsp        `cmd:"" help:"Serve an editor: findings, forecasts and completions as you type. An editor starts it."`
	Tidy       Tidy       `cmd:"" help:"Lay files out in the one canonical form."`
	Contrast   Contrast   `cmd:"" help:"Compare two seasons by meaning, and their forecasts."`
	Merge      Merge      `cmd:"" help:"Merge two people's edits of a file by meaning."`
	Plain      Plain      `cmd:"" help:"Print what a file says, a statement a line, for comparing."`
	Git        Git        `cmd:"" help:"Let git show and merge process files by meaning."`
	Reckon     Reckon     `cmd:"" help:"Calculate moisture, target weight, basis, yield or germination, each with its working."`
	Card       Card       `cmd:"" help:"Print the whole language on one page."`
	Explain    Explain    `cmd:"" help:"Explain a rule, a word of the language, or the units."`
	Completion Completion `cmd:"" help:"Print a completion script for your shell."`
	Man        Man        `cmd:"" help:"Print a page of the manual, or write all of them."`
	Version    Version    `cmd:"" help:"Print which version this is, and how it was built."`
}

const description = `A house malting process, written as text: checked and forecast.

Begin with maltwright new: it asks about your house and writes it. Then:

  maltwright check pale.malt            what is wrong with it
  maltwright forecast pale.malt         what the batch will do, and when
  maltwright explain soak               what a word means
  maltwright reckon target 6kg 12.4% 44%   the weight to steep to`

func newParser(w World, cli *Line) (*kong.Kong, error) {
	width := w.Width
	if width == 0 {
		width = 80
	}
	return kong.New(cli,
		kong.Name("maltwright"), kong.Description(description),
		kong.Writers(w.Out, w.Err),
		kong.KindMapper(reflect.String, kong.MapperFunc(asGiven)),
		kong.Help(helpOn(width)),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: min(width, 100), NoExpandSubcommands: true}),
	)
}

// asGiven takes a word of the command line byte by byte. The way of the library goes
// through JSON, and changes the name of a file that is no text.
func asGiven(ctx *kong.DecodeContext, target reflect.Value) error {
	t, err := ctx.Scan.PopValue("string")
	if err != nil {
		return err
	}
	text, ok := t.Value.(string)
	if !ok {
		text = fmt.Sprint(t.Value)
	}
	target.SetString(text)
	return nil
}

var commandWords = []string{"new", "check", "forecast", "visits", "sheet", "follow", "seasons", "chart", "report", "learn", "begin", "note", "serve", "lsp", "tidy", "contrast", "merge", "plain", "git", "reckon", "card", "explain", "completion", "man", "version"}

func isCommand(word string) bool { return slices.Contains(commandWords, word) }
