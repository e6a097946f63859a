package journal

import (
	"fmt"
	"time"

	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Fix gives the record with the reading in the place of a line of the file, from 1. Where the
// reading says no time it keeps that of the line; with another time it goes where that
// belongs. All other lines keep their times. The error is a Misuse or a Refusal.
func (r Record) Fix(number int, x Reading, now time.Time) (e Entry, err error) {
	tree, home, err := r.open(&e)
	if err != nil {
		return e, err
	}
	k := -1
	for i, s := range home.Body.Statements {
		if lineOf(tree, s) == number {
			k = i
		}
	}
	if k < 0 {
		return e, misuse("line %d of %s is no line of batch %q; maltwright note %[2]s --list shows them", number, r.Name, e.Batch)
	}
	was := home.Body.Statements[k]
	line, err := x.line(now, was)
	if err != nil {
		return e, err
	}
	before := timesIn(home.Body.Statements)
	m, timed := stampOf(line.Statement)
	old, had := stampOf(was)
	kept := !timed || had && m.text() == old.text()
	if kept {
		line, err = r.withPlace(line, before[k])
	} else {
		line, err = r.placed(line, home, now)
	}
	if err != nil {
		return e, err
	}
	if !kept && had {
		return r.moved(e, tree, home, was, line, before, k, now)
	}
	e.Was = wordsOf(tree, was)
	e.Text, e.Line = layout.Instead(tree, was, line.Statement, vocabulary.Batch)
	if e.Text, e.Line, err = r.keepingTimes(e, before, k); err != nil {
		return e, err
	}
	return e, r.judgeWords(&e, now)
}

// moved takes the line out and puts the new one where its time belongs.
func (r Record) moved(e Entry, tree *syntax.Tree, home, was *syntax.Statement, line typed, before []time.Time, k int, now time.Time) (Entry, error) {
	if m, _ := stampOf(line.Statement); m.From.Date.Text == "" { // it must not go by another line than it was
		at, ok := m.meant(before[max(0, k-1)], now)
		if ok {
			var err error
			if line, err = typedAs(line.text[:m.Start] + stampText(at) + line.text[m.End:]); err != nil {
				return e, err
			}
		}
	}
	words := wordsOf(tree, was)
	text, err := r.cut(tree, home, was)
	if err != nil {
		return e, err
	}
	rest := Entry{Text: text}
	if rest.Text, _, err = r.keepingTimes(rest, append(append([]time.Time(nil), before[:k]...), before[k+1:]...), -1); err != nil {
		return e, err
	}
	r.Text = rest.Text
	if tree, home, err = r.open(&e); err != nil {
		return e, err
	}
	e, _, err = r.put(e, tree, home, line.Statement, now)
	e.Was = words
	return e, err
}

// keepingTimes writes dates where lines would otherwise go by another line than they did, so that
// all but the k-th, -1 for none, keep the times that they had.
func (r Record) keepingTimes(e Entry, want []time.Time, k int) ([]byte, source.Span, error) {
	for range len(want) + 1 {
		r.Text = e.Text
		tree, home, err := r.open(&Entry{})
		if err != nil {
			return nil, e.Line, err
		}
		list, again := home.Body.Statements, 0
		times := timesIn(list)
		for ; again < len(list); again++ {
			if again != k && !times[again].Equal(want[again]) {
				break
			}
		}
		if again == len(list) {
			return e.Text, e.Line, nil
		}
		m, ok := stampOf(list[again])
		if !ok || want[again].IsZero() || m.From.Date.Text != "" {
			return nil, e.Line, Refusal(fmt.Sprintf("not noted: the time of line %d would change with it; write its date first", lineOf(tree, list[again])))
		}
		stands := stampText(want[again])
		text := string(e.Text[:m.Start]) + stands + string(e.Text[m.End:])
		if grown := len(stands) - (m.End - m.Start); m.Start < e.Line.Start {
			e.Line.Start, e.Line.End = e.Line.Start+grown, e.Line.End+grown
		}
		e.Text = []byte(text)
	}
	return nil, e.Line, Refusal("not noted: the times of other lines would change with it")
}
