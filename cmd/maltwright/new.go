package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/term"

	"maltwright/cmd/founding"
	"maltwright/cmd/shelf"
	"maltwright/cmd/talk"
	"maltwright/cmd/words"
)

// New begins a house and its first process by asking.
type New struct {
	Folder  string `arg:"" optional:"" default:"." help:"Where the files are to stand; made if it is not there. By default this folder."`
	Like    string `help:"Ask nothing and begin with a house of this kind: home-oven, home-dehydrator, floor, box or drum." placeholder:"NAME"`
	Units   string `enum:"kg,lb," default:"" help:"The units of the house: kg (with °C) or lb (with °F). With --like by default those of the country that LANG names." placeholder:"kg|lb"`
	Answers string `help:"Ask nothing and take the answers from a file of lines such as charge: 9 lb; - is standard input." placeholder:"FILE"`
	Plain   bool   `help:"Ask line by line, also on a terminal."`
	DryRun  bool   `help:"Show what would be written; write nothing."`
}

// Help is the longer help of the command.
func (New) Help() string {
	return `Asks what your grain, your vessels and your oven are, and writes two files: the house,
and a process for it that check passes. Each question has a usual answer; if you do not know, it
stands, and the file says how to find it out. You see the files before they are written.
In a folder that has a house it adds to that, and changes nothing that is there.

Ctrl-C loses nothing: the answers are kept, and the same command goes on from there.

Examples:

  maltwright new
  maltwright new porch --units lb
  maltwright new porch --like home-oven --units lb
  maltwright new porch --answers porch.txt

A file of answers has a line for each, as KEY: value; what it leaves out is taken as not known.

Exit code: 0 written, or left by choice; 1 written, and check finds a fault; 2 the command
line or an answer cannot be understood; 3 stopped, or a file cannot be written.`
}

// founded is one run of the command.
type founded struct {
	New
	world  *World
	ctx    context.Context
	folder string // absolute
	there  founding.There
	shelf  *shelf.Shelf
	asker  talk.Asker // nil where nothing is asked
}

// Run asks, shows, writes, checks and forecasts.
func (c New) Run(w *World) error {
	if c.Answers != "" && (c.Like != "" || c.Units != "") {
		return usage("--answers goes with neither --like nor --units: the file says both")
	}
	there, closeFolder, err := founding.Look(w.at(c.Folder))
	if err != nil {
		return failed("%s: %s", c.Folder, plainError(err))
	}
	defer closeFolder()
	ctx, release := w.interruptible()
	defer release()
	f := founded{New: c, world: w, ctx: ctx, folder: w.at(c.Folder), there: there, shelf: shelf.In(w.Cache, shelf.Program())}
	switch {
	case c.Answers != "":
		a, err := f.fromFile()
		if err != nil {
			return err
		}
		return f.finish(a)
	case c.Like != "":
		a, err := f.like()
		if err != nil {
			return err
		}
		if w.interactive() {
			f.asker = f.newAsker()
			defer f.asker.Close()
		}
		return f.finish(a)
	}
	f.asker = f.newAsker()
	defer f.asker.Close() // also where something panics: a terminal is given back
	return f.converse()
}

// units are the choices of the house by the flag.
var units = map[string]string{"kg": founding.Metric, "lb": founding.Pounds}

func (f founded) fromFile() (founding.Answers, error) {
	if f.Answers != "-" {
		if info, err := os.Stat(f.world.at(f.Answers)); err == nil && info.IsDir() {
			return nil, usage("%s is a folder; --answers wants a file", f.Answers)
		}
	}
	in, err := f.world.gather([]string{f.Answers}, "")
	if err != nil {
		return nil, err
	}
	a, err := founding.ReadAnswers(f.Answers, in[0].text, f.there)
	if err != nil {
		return nil, usage("%w", err)
	}
	whole, open, ok := founding.Completed(a, f.there)
	if !ok {
		return nil, usage("%s: %s is missing, and it has no usual value: %s", f.Answers, open.Key, open.Ask)
	}
	return whole, nil
}

func (f founded) like() (founding.Answers, error) {
	if f.there.House != nil {
		return nil, usage("%s has a house already, in %s; leave --like out to add to it", f.Folder, f.there.Main)
	}
	if f.Units == "" {
		f.Units = usualUnits(f.world.Env)
		f.say(fmt.Sprintf("The house is written in %s; --units %s has it otherwise.", units[f.Units], map[string]string{"kg": "lb", "lb": "kg"}[f.Units]))
	}
	a, ok := founding.Like(f.Like, units[f.Units])
	if !ok {
		return nil, usage("nothing begins like %q; there are %s", f.Like, strings.Join(founding.Likes(), ", "))
	}
	return a, nil
}

// usualUnits are those of the country that the environment names: lb and °F in the United States.
func usualUnits(env func(string) string) string {
	for _, name := range []string{"LC_ALL", "LC_MEASUREMENT", "LANG"} {
		if value := env(name); value != "" {
			if strings.Contains(value, "_US") {
				return "lb"
			}
			break
		}
	}
	return "kg"
}

// interactive tells whether somebody sits at a terminal and can be asked.
func (w World) interactive() bool {
	in, ok := w.In.(*os.File)
	return ok && w.Terminal && term.IsTerminal(int(in.Fd()))
}

func (f founded) newAsker() talk.Asker {
	w := f.world
	if !f.Plain && w.interactive() && w.Env("TERM") != "dumb" {
		if keys := (&talk.Keys{Context: f.ctx, In: w.In, Out: w.Out, Env: w.Env}); keys.Works() {
			return keys
		}
	}
	p := talk.NewPlain(f.ctx, w.In, w.Out)
	p.Width, p.Echo = w.Width, !w.interactive()
	return p
}

// columns is how wide the terminal is now.
func (w World) columns() int {
	if out, ok := w.Out.(*os.File); ok && w.Terminal {
		if width, _, err := term.GetSize(int(out.Fd())); err == nil {
			return width
		}
	}
	return w.Width
}

// converse asks what is open, and goes on from an earlier conversation.
func (f founded) converse() error {
	t := &talk.Talk{Asker: f.asker, There: f.there, Keep: f.keep}
	f.say(introduction(f.there, f.Folder) + " " + f.asker.How())
	given := founding.Answers{}
	if f.Units != "" && f.there.House == nil {
		given["units"] = units[f.Units]
	}
	if err := f.resume(t, given); err != nil {
		return f.stopped(t, err)
	}
	for {
		if err := t.Run(); err != nil {
			return f.stopped(t, err)
		}
		again, err := f.confirmed(t)
		if !again {
			return err
		}
	}
}

func introduction(there founding.There, folder string) string {
	if there.House != nil {
		if folder == "." {
			folder = "this folder"
		}
		return talk.Sentence(fmt.Sprintf("%s holds a house, %s", folder, there.Main)) + " It is added to, and nothing that is there changes."
	}
	return "About thirty questions on your grain, your gear and your day; then you see what would be written."
}

// resume offers to go on where an earlier conversation stopped.
func (f founded) resume(t *talk.Talk, given founding.Answers) error {
	kept, err := founding.ReadAnswers("kept", f.shelf.Get(f.key()), f.there)
	if len(kept) == 0 || err != nil || given["units"] != "" && kept["units"] != given["units"] {
		t.Resume(given)
		return nil
	}
	r, err := f.asker.Ask(talk.Prompt{Question: talk.YesOrNo(fmt.Sprintf("%s given here before. Go on from there?", wereGiven(len(kept))), "begin anew")})
	if err != nil {
		t.Answers = kept
		return err
	}
	if r.Answer == talk.No {
		kept = given
	}
	t.Resume(kept)
	return nil
}

func wereGiven(n int) string {
	if n == 1 {
		return "1 answer was"
	}
	return fmt.Sprintf("%d answers were", n)
}

// key is under which the answers about a folder are kept.
func (f founded) key() string { return "new\n" + f.folder }

func (f founded) keep(a founding.Answers) { f.shelf.Put(f.key(), a.Text(f.there)) }

// stopped says that nothing is lost.
func (f founded) stopped(t *talk.Talk, err error) error {
	f.asker.Close()
	if !errors.Is(err, talk.ErrStopped) {
		return failed("%v", err)
	}
	n := len(t.Answers)
	switch {
	case n == 0:
		return failed("stopped; nothing is written")
	case f.shelf.Get(f.key()) != nil:
		return failed("stopped; nothing is written, and %s kept: %s goes on from there", keptWords(n), f.command("new"))
	}
	fmt.Fprintf(f.world.Out, "\n%s", words.SafeLines(string(t.Answers.Text(f.there))))
	return failed("stopped; nothing is written. The lines above are your answers: --answers takes them from a file")
}

func keptWords(n int) string {
	if n == 1 {
		return "your 1 answer is"
	}
	return fmt.Sprintf("your %d answers are", n)
}

// command writes a command line about the folder, as it was typed.
func (f founded) command(name string) string {
	if f.Folder == "." {
		return "maltwright " + name
	}
	return "maltwright " + name + " " + quotedForShell(f.Folder)
}

// path is where a file of the folder is, as it is shown.
func (f founded) path(name string) string { return filepath.Join(f.Folder, name) }

// say writes a paragraph.
func (f founded) say(text string) { f.print(talk.Wrapped("", text, f.world.columns())) }

// print writes a text, between the questions where any are asked.
func (f founded) print(text string) {
	if f.asker != nil {
		f.asker.Print(text)
		return
	}
	fmt.Fprint(f.world.Out, text)
}
