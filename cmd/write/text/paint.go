package text

import "maltwright/lang/finding"

// paint puts terminal attributes around text, or leaves it alone. Only the
// sixteen colours every terminal has are used, and none of them alone carries a
// meaning: the severity is always written out as well.
type paint struct{ on bool }

func (p paint) with(code, text string) string {
	if !p.on || text == "" {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

func (p paint) bold(text string) string  { return p.with("1", text) }
func (p paint) faint(text string) string { return p.with("2", text) }
func (p paint) under(text string) string { return p.with("4", text) }

var severityCodes = map[finding.Severity]string{
	finding.Danger: "1;7;31", finding.Fault: "1;31", finding.Caution: "35", finding.Note: "36",
}

func (p paint) severity(s finding.Severity) string { return p.with(severityCodes[s], s.String()) }
