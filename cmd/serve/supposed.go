package serve

import (
	"fmt"
	"regexp"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

// notSupposed says why lines that were typed cannot be supposed, once for each, in words of the page: the text in
// which a line is judged stands nowhere on it.
func notSupposed(found []finding.Finding, typed []string) (list []string) {
	told := map[string]bool{}
	for _, line := range typed {
		if fields := strings.Fields(line); fields[0] != vocabulary.ClauseFrom && !strings.Contains(" "+line+" ", " to ") {
			told[line] = true
			list = append(list, fmt.Sprintf("“%s” does not say what is otherwise: write what, the word to, and how much with its unit, such as “soak 1 to 6 h”", words.Safe(line)))
		}
	}
	for _, f := range found {
		line := typedAt(f, typed)
		if told[line] && line != "" {
			continue
		}
		told[line] = true
		said := f.Message
		if hint := hintOnPage(f.Hint); hint != "" {
			said = words.Joined("; ", said, hint)
		}
		if line != "" {
			said = fmt.Sprintf("“%s”: %s", line, said)
		}
		list = append(list, words.Safe(said))
	}
	return list
}

// typedAt is the line that was typed of which a finding is: that in which it lies, or the only one; "" where it is not known.
func typedAt(f finding.Finding, typed []string) string {
	if !f.Place.Known() {
		return ""
	}
	text := string(f.Place.File.Bytes())
	from := strings.LastIndexByte(text[:f.Place.Start], '\n') + 1
	row, _, _ := strings.Cut(text[from:], "\n")
	for _, line := range typed {
		if strings.Contains(row, line) {
			return line
		}
	}
	if len(typed) == 1 {
		return typed[0]
	}
	return ""
}

// inText are hints that help who sees the text of a record.
var inText = regexp.MustCompile(`^(?:its form: |did you mean |see the steps of the process with forecast)`)

func hintOnPage(hint string) string {
	switch {
	case strings.HasPrefix(hint, "see the steps"):
		return "its steps stand above"
	case inText.MatchString(hint):
		return ""
	}
	return hint
}
