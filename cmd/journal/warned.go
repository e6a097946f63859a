package journal

import (
	"slices"
	"strconv"
	"strings"

	"maltwright/check/tell"
	"maltwright/lang/vocabulary"
)

// warned makes a remark of free words that tell of a danger, with the time behind them: who sees mould
// or hears the alarm is not sent back to find the word for it. Other words stay as they are.
func warned(given []string) []string {
	words := strings.Fields(strings.Join(given, " "))
	if len(words) == 0 {
		return given
	}
	if _, ok := vocabulary.Lookup(vocabulary.Batch, strings.ToLower(words[0])); ok {
		return given
	}
	end := len(words)
	for i := len(words) - 1; i > 0; i-- {
		if rest := words[i+1:]; words[i] == vocabulary.ClauseAt && len(rest) > 0 && timeWords(rest) == len(rest) {
			end = i
			break
		}
	}
	text := strings.Join(words[:end], " ")
	if strings.ContainsAny(text, "\"{}#\\") || len(tell.Alarms(text)) == 0 {
		return given
	}
	return slices.Concat([]string{vocabulary.VerbRemark, strconv.Quote(text)}, words[end:])
}
