// Package talk holds the conversation in which a house is begun: it puts the questions of
// cmd/founding to somebody, or to a file of answers, and keeps what was answered.
//
// # How it works
//
// A Talk is a loop over founding.Next. Whom it asks is an Asker: Keys on a terminal, with the
// arrow keys, and Plain line by line everywhere else. Both give the same replies, so that the loop
// knows nothing of either. Each answer is handed to Keep at once: whatever ends the program,
// nothing that was answered is lost.
package talk

import (
	"errors"
	"slices"

	"maltwright/cmd/founding"
	"maltwright/lang/vocabulary"
)

// ErrStopped is the outcome of a conversation that was ended before its last question, by
// Ctrl-C or because there is no more to read.
var ErrStopped = errors.New("stopped")

// Prompt is a question as it is put.
type Prompt struct {
	founding.Question
	Was  string // what was answered before; "" where nothing was
	Back bool   // there is a question to go back to
}

// Reply is what somebody did about a question.
type Reply struct {
	Answer string // as Take gave it
	Back   bool   // they go back one question; Answer is ""
}

// The answers to a question of YesOrNo.
const (
	Yes = vocabulary.SaidYes
	No  = vocabulary.SaidNo
)

// YesOrNo is a question of which the usual answer is yes. No does what otherwise says.
func YesOrNo(ask, otherwise string) founding.Question {
	return founding.Question{Ask: ask, Kind: founding.OneOf, Usual: Yes, Choices: []founding.Choice{{Word: Yes}, {Word: No, Says: otherwise}}}
}

// Asker puts a question and gives the reply. Answers that cannot be are refused by it, and
// help is shown by it. Its error is ErrStopped, or that of a terminal.
type Asker interface {
	Ask(Prompt) (Reply, error)
	How() string       // what keys and words there are
	Print(text string) // writes between two questions
	Close()            // nothing is asked any more
}

// Talk is a conversation.
type Talk struct {
	Asker   Asker
	There   founding.There
	Keep    func(founding.Answers) // is given the answers after each reply; nil keeps nothing
	Answers founding.Answers

	asked []string          // keys of Answers in the order of their questions
	was   map[string]string // answers that were gone back over
}

// Resume takes up the answers of an earlier conversation, as far as they still are answers
// to questions that are asked, and gives how many were taken.
func (t *Talk) Resume(kept founding.Answers) int {
	t.Answers, t.asked = founding.Answers{}, nil
	for {
		q, open := founding.Next(t.Answers, t.There)
		if !open || kept[q.Key] == "" {
			return len(t.asked)
		}
		answer, err := q.Take(kept[q.Key])
		if err != nil {
			return len(t.asked)
		}
		t.take(q.Key, answer)
	}
}

// Run asks all that is open.
func (t *Talk) Run() error {
	if t.Answers == nil {
		t.Answers = founding.Answers{}
	}
	for {
		q, open := founding.Next(t.Answers, t.There)
		if !open {
			return nil
		}
		r, err := t.Asker.Ask(Prompt{Question: q, Was: t.was[q.Key], Back: len(t.asked) > 0})
		switch {
		case err != nil:
			return err
		case r.Back:
			t.Back()
		default:
			t.take(q.Key, r.Answer)
		}
		if t.Keep != nil {
			t.Keep(t.Answers)
		}
	}
}

func (t *Talk) take(key, answer string) {
	t.Answers[key] = answer
	t.asked = append(t.asked, key)
}

// Back opens the question that was answered last. Its answer is offered when it is put again.
func (t *Talk) Back() {
	n := len(t.asked)
	if n == 0 {
		return
	}
	key := t.asked[n-1]
	if t.was == nil {
		t.was = map[string]string{}
	}
	t.was[key] = t.Answers[key]
	delete(t.Answers, key)
	t.asked = slices.Delete(t.asked, n-1, n)
}

// offered is what Enter takes: what was answered before, or the usual value.
func (p Prompt) offered() string {
	if p.Was == "" || p.Was == founding.DontKnow && p.isFigure() { // it was the usual figure that was waved through
		return p.Usual
	}
	return p.Was
}

// offeredWord is the same in words that can be typed.
func (p Prompt) offeredWord() string {
	word := p.offered()
	if word != "" && p.Kind == founding.OneOf && !p.isChoice(word) {
		return founding.DontKnow
	}
	return word
}

// listed are the choices as they are shown: not to know is one where it is of use.
func (p Prompt) listed() []founding.Choice {
	list := p.Choices
	if p.Kind == founding.OneOf && (p.mayNotKnow() || p.Usual != "" && !p.isChoice(p.Usual)) {
		list = append(list[:len(list):len(list)], founding.Choice{Word: founding.DontKnow})
	}
	return list
}

// isChoice tells whether a word is one of the choices.
func (p Prompt) isChoice(word string) bool {
	return slices.ContainsFunc(p.Choices, func(c founding.Choice) bool { return c.Word == word })
}

// enter is the answer to a prompt at which somebody has typed nothing. A usual value that was
// only waved through is known by nobody: it stands as one that is not known.
func (p Prompt) enter() (string, error) {
	switch {
	case p.Was != "":
		return p.Take(p.Was)
	case p.Usual != founding.None && p.Usual != "" && p.Kind != founding.OneOf && p.FindOut != "":
		return p.Take(founding.DontKnow)
	case p.Usual != "":
		return p.Take(p.Usual)
	}
	return p.Take("")
}

// mayNotKnow tells whether it is any use not to know the answer.
func (p Prompt) mayNotKnow() bool { return p.Usual != "" && p.FindOut != "" }
