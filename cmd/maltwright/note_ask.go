package main

import (
	"bufio"
	"fmt"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
)

// ask asks on a terminal whether a doubtful reading is to be written, and whether as it was offered;
// elsewhere it is refused.
func (w World) ask(a folder.Answer) (instead bool, err error) {
	if !w.InTerm || !w.ErrTerm {
		return false, failure{ExitFindings, fmt.Errorf("not noted: %s; --sure writes it as it is", a.Doubted())}
	}
	for _, d := range a.Doubts {
		for _, line := range words.Wrap(words.Safe(d.Says()+" ["+d.Rule+"]"), max(w.Width, 40)) {
			fmt.Fprintln(w.Err, line)
		}
	}
	question := "write it as it is? y or n:"
	if a.Offer != "" {
		question = "write it as it is (y), as it fits (f), or not (n)?"
	}
	fmt.Fprint(w.Err, strings.Join(words.Wrap(question, max(w.Width, 40)), "\n")+" ")
	said, _ := bufio.NewReader(w.In).ReadString('\n')
	switch answer := strings.ToLower(strings.TrimSpace(said)); {
	case strings.HasPrefix(answer, "y"):
		return false, nil
	case answer == "f" && a.Offer != "":
		return true, nil
	}
	return false, failure{ExitFindings, fmt.Errorf("not noted: %s", a.Lines[len(a.Lines)-1])}
}
