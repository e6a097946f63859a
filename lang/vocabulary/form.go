package vocabulary

import "strings"

// Form writes the form of a statement in a line: words as they are, values by
// what they are in <>, what may be left out in ().
func Form(r Row) string {
	parts := []string{r.Word}
	for _, s := range r.Slots {
		parts = append(parts, s.form())
	}
	for _, c := range r.Clauses {
		words := []string{c.Word}
		for _, s := range c.Slots {
			words = append(words, s.form())
		}
		text := strings.Join(words, " ")
		if c.Joins {
			text += " (" + And + " …)"
		}
		if !c.Required {
			text = "(" + text + ")"
		}
		parts = append(parts, text)
	}
	if r.Opens != None {
		parts = append(parts, "{ … }")
	}
	return strings.Join(parts, " ")
}

func (s Slot) form() string {
	text := "<" + s.Label + ">"
	switch {
	case s.Kind == Literal:
		text = s.Words[0]
	case s.Kind == Choice && len(s.Words) == 1:
		text = s.Words[0]
	case s.Kind == Choice && len(s.Words) > 1 && len(s.Words) < 5:
		text = strings.Join(s.Words, "|")
	case len(s.Places) > 0:
		text = strings.Join(s.Places, "|") + " " + text
		if !s.Placed {
			text = "(" + strings.Join(s.Places, "|") + ") <" + s.Label + ">"
		}
	case s.Kind == Text || s.Kind == Name:
		text = `"` + s.Label + `"`
	}
	if s.Optional && s.Kind != Literal {
		return "(" + text + ")"
	}
	return text
}
