package founding

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/nearest"
)

// ReadAnswers reads a file of answers: a line for each, as KEY: value. What stands behind a
// # and empty lines are for people. The lines may stand in any order. Questions that no line
// answers stay open. The error is a *Refusal with the name of the file and the line.
func ReadAnswers(name string, text []byte, there There) (Answers, error) {
	type line struct {
		at   int
		text string
	}
	lines := map[string]line{}
	for i, l := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		l, _, _ = strings.Cut(l, "#")
		if strings.TrimSpace(l) == "" {
			continue
		}
		key, answer, ok := strings.Cut(l, ":")
		key = strings.Join(strings.Fields(strings.ToLower(key)), " ")
		if !ok {
			return nil, refuse("write it as KEY: value", "%s:%d: there is no colon", name, i+1)
		}
		if before, twice := lines[key]; twice {
			return nil, refuse("keep one of the two", "%s:%d: %s was answered in line %d", name, i+1, key, before.at)
		}
		lines[key] = line{i + 1, strings.TrimSpace(answer)}
	}
	a := Answers{}
	used := map[string]bool{}
	for with := asked(a, there); ; with = asked(a, there) {
		q, ok := with.open(used)
		if !ok {
			break
		}
		used[q.Key] = true
		l, said := lines[q.Key]
		if !said {
			continue
		}
		taken, err := q.Take(l.text)
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %s: %w", name, l.at, q.Key, err)
		}
		a[q.Key] = taken
	}
	first, of := 0, ""
	for key, l := range lines {
		if !used[key] && (first == 0 || l.at < first) {
			first, of = l.at, key
		}
	}
	if first > 0 {
		do := "take the line out"
		if word, ok := nearest.Word(of, slices.Collect(keys(used))); ok {
			do = "did you mean " + word + "?"
		}
		return nil, refuse(do, "%s:%d: no question asks for %q after these answers", name, first, of)
	}
	return a, nil
}

func keys(m map[string]bool) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// open gives the first question that was not looked at yet.
func (a asking) open(looked map[string]bool) (Question, bool) {
	for q := range a.all {
		if !looked[q.Key] {
			return q, true
		}
	}
	return Question{}, false
}

// Completed gives the answers with all that is open left to what is usual. Where nothing
// usual can stand for a question it is given, and ok is false.
func Completed(a Answers, there There) (whole Answers, open Question, ok bool) {
	whole = Answers{}
	for k, v := range a {
		whole[k] = v
	}
	for {
		q, more := Next(whole, there)
		switch {
		case !more:
			return whole, Question{}, true
		case q.Usual == "":
			return whole, q, false
		}
		whole[q.Key] = DontKnow
	}
}

// Text writes the answers as a file of answers, in the order of the questions.
func (a Answers) Text(there There) []byte {
	var b strings.Builder
	for _, q := range Asked(a, there) {
		if v := a[q.Key]; v != "" {
			fmt.Fprintf(&b, "%s: %s\n", q.Key, v)
		}
	}
	return []byte(b.String())
}
