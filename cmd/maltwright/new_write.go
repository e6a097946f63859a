package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"maltwright/cmd/founding"
	"maltwright/cmd/talk"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
)

// confirmed shows what the answers make and asks whether to write it. again says that somebody
// went back to a question.
func (f founded) confirmed(t *talk.Talk) (again bool, err error) {
	r, err := f.made(t.Answers)
	if err != nil {
		f.asker.Close()
		return false, err
	}
	f.show(r)
	reply, err := f.ask(r)
	switch {
	case err != nil:
		return false, f.stopped(t, err)
	case reply.Back:
		t.Back()
		f.keep(t.Answers)
		return true, nil
	case reply.Answer == talk.No:
		f.asker.Close()
		fmt.Fprintf(f.world.Out, "\nNothing is written.\n")
		if f.shelf.Get(f.key()) != nil {
			f.say(fmt.Sprintf("Your answers are kept: %s goes on from there.", f.command("new")))
		}
		return false, nil
	}
	return false, f.written(r)
}

// finish is for answers that came without a conversation.
func (f founded) finish(a founding.Answers) error {
	r, err := f.made(a)
	if err != nil {
		return err
	}
	f.show(r)
	if f.asker != nil && !f.DryRun {
		reply, err := f.ask(r)
		if err != nil || reply.Answer == talk.No {
			f.asker.Close()
			return failed("nothing is written")
		}
	}
	return f.written(r)
}

func (f founded) ask(r founding.Result) (talk.Reply, error) {
	if f.DryRun {
		return talk.Reply{Answer: talk.Yes}, nil
	}
	what := "these files"
	if len(r.Files) == 1 {
		what = "this"
	}
	return f.asker.Ask(talk.Prompt{Back: f.Like == "", Question: talk.YesOrNo("Write "+what+"?", "write nothing")})
}

// made writes the files, but not to the disk.
func (f founded) made(a founding.Answers) (founding.Result, error) {
	r, err := founding.Write(f.ctx, a, f.there)
	if f.ctx.Err() != nil {
		return r, errInterrupted
	}
	var refusal *founding.Refusal
	if errors.As(err, &refusal) {
		return r, usage("%w", err)
	}
	if err != nil {
		return r, failed("%w", err)
	}
	return r, nil
}

// show prints what is to be written: new files whole, and of others what is added.
func (f founded) show(r founding.Result) {
	var b strings.Builder
	for _, file := range r.Files {
		text, head := file.Text, "%s, a new file:"
		if file.Was != nil {
			text, head = bytes.TrimLeft(bytes.TrimPrefix(file.Text, file.Was), "\r\n"), "Added at the end of %s:"
		}
		fmt.Fprintf(&b, "\n"+head+"\n\n%s", words.Safe(f.path(file.Name)), f.preview(string(text)))
	}
	f.list(&b, "Otherwise than you answered:", r.Changed)
	f.list(&b, "Still to be put right:", r.WhyNot)
	f.print(b.String() + "\n")
}

// preview is the text of a file as it is shown: a line that is wider than the terminal goes on below,
// behind a deeper margin.
func (f founded) preview(text string) string {
	text = words.SafeLines(strings.ReplaceAll(text, "\r\n", "\n"))
	width := f.world.columns()
	if width == 0 {
		return text
	}
	var b strings.Builder
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		if len([]rune(line)) <= width {
			b.WriteString(line + "\n")
			continue
		}
		said := strings.TrimLeft(line, " ")
		hang := line[:len(line)-len(said)] + "    "
		if strings.HasPrefix(said, "#") {
			hang = strings.TrimSuffix(hang, "    ") + "# "
		}
		for _, part := range folded(line, hang, width) {
			b.WriteString(part + "\n")
		}
	}
	return b.String()
}

// list writes sentences below a heading, if there are any.
func (f founded) list(b *strings.Builder, head string, sentences []string) {
	if len(sentences) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", head)
	for _, text := range sentences {
		b.WriteString(talk.Wrapped("  - ", talk.Sentence(text), f.world.columns()))
	}
}

// written writes the files, checks and forecasts, and says what to type next.
func (f founded) written(r founding.Result) error {
	if f.asker != nil {
		f.asker.Close()
	}
	if f.DryRun {
		return nil
	}
	if err := os.MkdirAll(f.folder, 0o777); err != nil {
		return failed("%s: %s", f.Folder, plainError(err))
	}
	if err := f.put(r.Files); err != nil {
		return err
	}
	f.shelf.Put(f.key(), nil)
	var names []string
	for _, file := range r.Files {
		names = append(names, words.Safe(f.path(file.Name)))
	}
	fmt.Fprintf(f.world.Out, "\nWritten: %s\n\n", strings.Join(names, ", "))
	in := f.path(r.In)
	Main(*f.world, []string{"check", "--", in})
	if r.Process == "" {
		f.before(r)
		if r.Use != "" {
			f.say("")
			f.say("To use it write in the process, with your own figures:")
			fmt.Fprintf(f.world.Out, "\n  %s\n", words.Safe(r.Use))
			f.say("")
			f.say(fmt.Sprintf("Or begin another process with it: %s.", f.command("new")))
		}
	}
	if r.Process != "" {
		fmt.Fprintln(f.world.Out)
		Main(*f.world, []string{"forecast", "--", in})
		f.before(r)
		f.say("")
		f.say("When the grain goes into the water:")
		fmt.Fprintf(f.world.Out, "\n  maltwright begin %s\n", words.Safe(quotedForShell(in)))
	}
	if worst, any := finding.Worst(r.Report.Findings); any && worst >= finding.Fault {
		return errFindings
	}
	return nil
}

// before says what is to be found out before the grain is wet.
func (f founded) before(r founding.Result) {
	var b strings.Builder
	f.list(&b, "Before the grain is wet:", r.Before)
	fmt.Fprint(f.world.Out, b.String())
}

// put writes all of the files or none of them.
func (f founded) put(files []founding.File) error {
	for i, file := range files {
		err := f.putOne(file)
		if err == nil {
			continue
		}
		for _, done := range files[:i] {
			err = errors.Join(err, f.takeBack(done))
		}
		return err
	}
	return nil
}

func (f founded) putOne(file founding.File) error {
	o := f.world.writing
	o.Create = file.Was == nil
	name := f.path(file.Name)
	return f.world.editWith(o, name, filepath.Join(f.folder, file.Name), func(old []byte) ([]byte, error) {
		switch {
		case file.Was == nil && old != nil:
			return nil, usage("%s is there already, and is left as it is; begin %s anew", name, f.command("new"))
		case file.Was != nil && !bytes.Equal(old, file.Was):
			return nil, usage("%s was changed in the meantime, and is left as it is; begin %s anew", name, f.command("new"))
		}
		return file.Text, nil
	})
}

// takeBack undoes the writing of a file behind which another could not be written.
func (f founded) takeBack(file founding.File) error {
	path := filepath.Join(f.folder, file.Name)
	if file.Was != nil {
		return f.putOne(founding.File{Name: file.Name, Text: file.Was, Was: file.Text})
	}
	if text, err := os.ReadFile(path); err != nil || !bytes.Equal(text, file.Text) {
		return nil // it is somebody else's by now
	}
	if err := os.Remove(path); err != nil {
		return failed("%s: %s", f.path(file.Name), plainError(err))
	}
	return nil
}
