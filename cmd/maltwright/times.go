package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/words"
	"maltwright/lang/calendar"
)

// reader reads times of the command line. Back is for what was read, seen or begun; else
// the times are those of what is to come.
func (w World) reader(back bool) calendar.Reader {
	env := w.Env
	if env == nil {
		env = func(string) string { return "" }
	}
	return calendar.Reader{Now: w.now(), Back: back, Order: calendar.OrderOf(env)}
}

// now is the time of the clock on the wall.
func (w World) now() time.Time {
	if w.clock != nil {
		return w.clock()
	}
	return time.Now()
}

// said reads the time of a flag. What it had to fill in, as of "fri 18:00", it tells.
func (w World) said(flag, text string, back bool) (time.Time, error) {
	return w.saidTo(w.reader(back), flag, text)
}

func (w World) saidTo(r calendar.Reader, flag, text string) (time.Time, error) {
	m, err := r.One(text)
	if err != nil {
		return time.Time{}, notSaid(flag, text, err)
	}
	if m.Filled {
		w.understood(flag, text, m.String())
	}
	return m.At, nil
}

// saidDay reads the day of a flag, as a date.
func (w World) saidDay(flag, text string) (string, error) {
	m, err := w.reader(false).Day(text)
	if err != nil {
		return "", notSaid(flag, text, err)
	}
	day := m.At.Format(time.DateOnly)
	if m.Filled {
		w.understood(flag, text, day)
	}
	return day, nil
}

func (w World) understood(flag, text, as string) {
	w.aside(fmt.Sprintf("%s %s: %s", flag, words.Safe(text), as))
}

func notSaid(flag, text string, err error) error {
	var says *calendar.Error
	if errors.As(err, &says) {
		return usage("%s %q%s", flag, text, says.Says)
	}
	return usage("%s %q: %v", flag, text, err)
}

// timeFlags are those with a time or a day behind them.
var timeFlags = []string{"--start", "--ready", "--at", "--on"}

// mostTimeWords is the most words that a time has: the day after tomorrow at 7 am.
const mostTimeWords = 7

// joinTimes makes one argument of a time that stands in several behind its flag, as in
// --start tomorrow 7am, where the quotes were left out.
func joinTimes(args []string) []string {
	out := make([]string, 0, len(args))
	for i := 0; i < len(args); i++ {
		flag, first, glued := strings.Cut(args[i], "=")
		if args[i] == "--" {
			return append(out, args[i:]...)
		}
		if !slices.Contains(timeFlags, flag) {
			out = append(out, args[i])
			continue
		}
		rest := args[i+1:]
		n := 0 // of the rest that goes with the flag
		if !glued && len(rest) > 0 {
			n, first = 1, rest[0]
		}
		text, joined := first, first
		for k := n; k < len(rest) && k < mostTimeWords && !strings.HasPrefix(rest[k], "--"); k++ {
			if joined += " " + rest[k]; calendar.Looks(joined) {
				text, n = joined, k+1
			}
		}
		switch {
		case glued:
			out = append(out, flag+"="+text)
		case n == 0:
			out = append(out, flag)
		default:
			out = append(out, flag, text)
		}
		i += n
	}
	return out
}
