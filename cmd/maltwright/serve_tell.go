package main

import (
	"fmt"
	"os"
	"strings"
	"time"

	"golang.org/x/term"

	"maltwright/cmd/serve/guard"
	"maltwright/cmd/words"
	"maltwright/cmd/write/qr"
)

// tellServed says for whom the page is, by which addresses, and until when. The addresses stand last, below the code: a terminal of 24 lines
// shows both. Again says that they are those of before.
func (w World) tellServed(p place, o guard.Options, again bool) {
	whom := "on this machine alone"
	if !p.loopback() {
		whom = fmt.Sprintf("for whoever is in the network of %s and has its address", p.address)
	}
	w.say("The page of %s, %s.", p.shownFolder(), whom)
	link := guard.Link(p.base(), o.Write)
	for _, line := range w.aboutPlace(p) {
		w.say("%s", line)
	}
	if again {
		w.say("The addresses are those of before, and phones that came by them are still let in. With --anew none is.")
	}
	w.say("%s", ending(p))
	if !p.loopback() && w.Terminal {
		w.tellCode(link)
	}
	for _, row := range [][2]string{
		{"page", link},
		{"to read", guard.Link(p.base(), o.Read)},
		{"calendar", guard.CalendarLink(p.base(), o.Calendar)},
	} {
		fmt.Fprintf(w.Out, "  %-8s  %s\n", row[0], row[1]) // an address stays whole, to be copied
	}
}

// aboutPlace is what to know of who can come by.
func (w World) aboutPlace(p place) (lines []string) {
	switch {
	case p.secure():
		lines = append(lines, fmt.Sprintf("Nobody overhears it. The certificate runs out on %s%s.", p.certEnds.Local().Format("2006-01-02"), soonOver(p.certEnds, w.now())))
	case !p.loopback():
		lines = append(lines, "Plain HTTP can be overheard: whoever listens in this network can read the page and write as you do. With --cert and --key nobody can.")
	}
	if !p.loopback() && !guard.Home(p.address) {
		lines = append(lines, fmt.Sprintf("%s is no address of a home network: the whole internet may reach it.", p.address))
	}
	return lines
}

// soonOver says in how many days a certificate runs out, where that is soon.
func soonOver(ends, now time.Time) string {
	days := int(ends.Sub(now).Hours() / 24)
	if days >= 30 {
		return ""
	}
	if days < 1 {
		return ", within a day"
	}
	return fmt.Sprintf(", in %s", words.Plural(days, "day"))
}

// tellCode draws the code of an address for the camera of a phone, where the terminal holds it.
func (w World) tellCode(link string) {
	code, err := qr.Of(link)
	switch {
	case err != nil:
		return
	case w.Width > 0 && code.Columns() > w.Width:
		w.say("The code for a phone needs %d columns; this terminal has %d.", code.Columns(), w.Width)
		return
	}
	if rows := w.rows(); rows > 0 && code.Rows()+codeBeside > rows {
		w.say("The code has %d lines and this terminal %d: make it higher to see all of it.", code.Rows(), rows)
	}
	if w.colour() {
		w.say("A phone's camera opens the page by this code:")
	} else {
		w.say("A phone's camera opens the page by this code, which is for a dark terminal:")
	}
	fmt.Fprintln(w.Out, strings.Join(code.Lines(w.colour()), "\n"))
}

// codeBeside is how many lines stand below the code, with that of the cursor.
const codeBeside = 4

// rows is how many lines the terminal has, 0 where it is not known.
func (w World) rows() int {
	if out, ok := w.Out.(*os.File); ok && w.Terminal {
		if _, rows, err := term.GetSize(int(out.Fd())); err == nil {
			return rows
		}
	}
	return 0
}

// ending says when it ends.
func ending(p place) string {
	switch {
	case p.until.IsZero():
		return "Ctrl-C ends it. While this machine sleeps it tells nobody anything."
	case p.loopback():
		return fmt.Sprintf("It ends on %s, or by Ctrl-C.", p.until.Format("Mon 2 Jan at 15:04"))
	}
	return fmt.Sprintf("It ends on %s, with the last batch, or by Ctrl-C.", p.until.Format("Mon 2 Jan at 15:04"))
}
