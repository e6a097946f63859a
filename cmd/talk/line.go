package talk

import (
	"strings"
	"unicode"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
)

// line is a line that is typed, and where the cursor stands in it.
type line struct {
	text []rune
	at   int
}

func (l *line) String() string { return string(l.text) }

// press hears of a key: what it is called, and the text that it types.
func (l *line) press(key, text string) {
	switch key {
	case "left", "ctrl+b":
		l.at = max(l.at-1, 0)
	case "right", "ctrl+f":
		l.at = min(l.at+1, len(l.text))
	case "home", "ctrl+a":
		l.at = 0
	case "end", "ctrl+e":
		l.at = len(l.text)
	case "backspace", "ctrl+h":
		if l.at > 0 {
			l.text = append(l.text[:l.at-1:l.at-1], l.text[l.at:]...)
			l.at--
		}
	case "delete", "ctrl+d":
		if l.at < len(l.text) {
			l.text = append(l.text[:l.at:l.at], l.text[l.at+1:]...)
		}
	case "ctrl+u":
		l.text, l.at = l.text[l.at:], 0
	case "ctrl+k":
		l.text = l.text[:l.at]
	default:
		l.insert(text)
	}
}

// mostTyped is how long a line may be, in signs.
const mostTyped = 200

// insert puts a text in at the cursor; ends of lines and what cannot be shown are left out.
func (l *line) insert(text string) {
	for _, r := range text {
		if unicode.IsPrint(r) && len(l.text) < mostTyped {
			l.text = append(l.text[:l.at:l.at], append([]rune{r}, l.text[l.at:]...)...)
			l.at++
		}
	}
}

// view is the line behind its sign, in so many columns, or what Enter takes while nothing is typed.
func (l *line) view(offered string, width int) string {
	if len(l.text) == 0 {
		shown := []rune(words.Safe(offered) + " ")
		return prompt + reversed(string(shown[:1])) + faint(string(shown[1:]))
	}
	from := 0
	for from < l.at && uniseg.StringWidth(string(l.text[from:l.at])) > width-len(prompt)-1 {
		from++
	}
	to := l.at
	for to < len(l.text) && uniseg.StringWidth(string(l.text[from:to+1])) < width-len(prompt) {
		to++
	}
	under, after := " ", ""
	if to > l.at {
		under, after = string(l.text[l.at]), string(l.text[l.at+1:to])
	}
	return strings.TrimRight(prompt+string(l.text[from:l.at])+reversed(under)+after, " ")
}

// prompt stands in front of a line that is typed.
const prompt = "> "
