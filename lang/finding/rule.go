package finding

import (
	"unicode/utf8"

	"maltwright/lang/source"
)

// Rule declares one kind of finding: what explain shows and what the reference
// page is made from. A rule that fires always does so under its Name.
type Rule struct {
	Name     string   // stable, lower case, words joined by "-"
	Title    string   // one line: when it fires
	Severity Severity // the usual one; a profile may make it milder
	Why      string   // the reason, with its source or "common practice"
	Do       string   // what to do about it
	Bad      string   // a text on which it fires
	Good     string   // the same text put right
	Limits   string   // what the rule cannot see; may be ""
	Since    string   // the version that brought it; "" for 0.1
}

// At makes a finding of the rule at the place, with the rule's own severity, its
// Why, and its Do as the hint. A message that quotes more than anybody reads is cut.
func (r Rule) At(place source.Place, message string) Finding {
	return Finding{Place: place, Severity: r.Severity, Rule: r.Name, Message: clip(message), Why: r.Why, Hint: r.Do}
}

const longestMessage = 500 // bytes

func clip(message string) string {
	if len(message) <= longestMessage {
		return message
	}
	end := longestMessage
	for end > 0 && !utf8.RuneStart(message[end]) {
		end--
	}
	return message[:end] + "…"
}
