package command

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Explain explains a rule or a word of the language from its own declaration.
type Explain struct {
	Name []string `arg:"" optional:"" help:"A rule (gate-not-reached), a word (soak), a measure (acrospire), or: rules, words, units."`
}

// Help is the longer help of the command.
func (Explain) Help() string {
	return `Examples:

  maltwright explain soak              a word of the language
  maltwright explain gate-not-reached  a rule, by the name in brackets behind a finding
  maltwright explain units             every unit and how it may be spelt
  maltwright explain rules             every rule in a line
  maltwright explain words             every word in a line`
}

// Run prints the explanation.
func (e Explain) Run(w *World) error {
	name := strings.Trim(strings.Join(e.Name, " "), "[]")
	out := page{w.Out, w.width(), w.colour()}
	switch name {
	case "":
		name = "words"
		fallthrough
	case "words":
		out.words()
		return nil
	case "rules":
		out.rules()
		return nil
	case "units":
		out.units()
		return nil
	}
	if !out.explain(name) {
		known := slices.Concat(allWords(), ruleNames())
		if meant, ok := nearest.Word(name, known); ok {
			return usage("nothing is called %q; did you mean %s?", name, meant)
		}
		return usage("nothing is called %q; see explain words and explain rules", name)
	}
	return nil
}

func (w World) width() int {
	if w.Width == 0 {
		return 80
	}
	return min(w.Width, 100)
}

type page struct {
	w      io.Writer
	width  int
	colour bool
}

func (p page) explain(name string) bool {
	found := false
	for _, row := range vocabulary.Rows() {
		if row.Word == name {
			p.gap(found)
			p.row(row)
			found = true
		}
	}
	for _, m := range vocabulary.Measures() {
		if m.Word == name {
			p.gap(found)
			p.measure(m)
			found = true
		}
	}
	for _, l := range vocabulary.LimitNames() {
		if l.Word == name && !found {
			p.title(l.Word, "a threshold, moved in a limits block")
			p.text(l.Doc)
			p.labelled("values", l.Sense.Text())
			found = true
		}
	}
	for _, r := range check.Rules() {
		if r.Name == name {
			p.gap(found)
			p.rule(r)
			found = true
		}
	}
	return found
}

func (p page) gap(need bool) {
	if need {
		fmt.Fprintln(p.w)
	}
}

func (p page) title(name, what string) {
	if p.colour {
		name = "\x1b[1m" + name + "\x1b[0m"
	}
	fmt.Fprintf(p.w, "%s - %s\n", name, what)
}

func (p page) text(text string) {
	for _, line := range words.Wrap(text, p.width-2) {
		fmt.Fprintf(p.w, "  %s\n", line)
	}
}

func (p page) labelled(label, text string) {
	if text == "" {
		return
	}
	for i, line := range words.Wrap(text, p.width-12) {
		if i > 0 {
			label = ""
		}
		fmt.Fprintf(p.w, "  %-9s %s\n", label, line)
	}
}

func (p page) example(label, text string) {
	if text == "" {
		return
	}
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			label = ""
		}
		fmt.Fprintf(p.w, "  %-9s %s\n", label, words.Safe(line))
	}
}

func (p page) row(r vocabulary.Row) {
	blocks := make([]string, len(r.In))
	for i, b := range r.In {
		blocks[i] = string(b)
	}
	p.title(r.Word, "stands in "+strings.Join(blocks, ", "))
	p.text(r.Doc)
	p.labelled("form", vocabulary.Form(r))
	for _, c := range r.Clauses {
		p.labelled("  "+c.Word, c.Doc)
	}
	for _, s := range vocabulary.Senses(r) {
		p.labelled("values", s.Label+": "+s.Sense.Text())
	}
	if r.Opens != vocabulary.None {
		p.labelled("inside", strings.Join(vocabulary.Words(r.Opens), ", "))
	}
	p.example("example", r.Example)
}

func (p page) measure(m vocabulary.Measure) {
	what := "a measure, for until and gate"
	if m.Promise {
		what = "a measure of the whole process, for expect"
	}
	p.title(m.Word, what)
	p.text(m.Doc)
	if m.Words != nil {
		p.labelled("words", strings.Join(m.Words, ", "))
	}
}

func (p page) rule(r finding.Rule) {
	p.title(r.Name, "a rule, usually a "+r.Severity.String())
	p.labelled("when", r.Title)
	p.labelled("why", r.Why)
	p.labelled("do", r.Do)
	p.labelled("limits", r.Limits)
	p.example("not so", r.Bad)
	p.example("but so", r.Good)
	p.labelled("since", since(r))
}

// since is the version that brought the rule.
func since(r finding.Rule) string {
	if r.Since == "" {
		return "0.1"
	}
	return r.Since
}

func (p page) words() {
	seen := map[string]bool{}
	for _, r := range vocabulary.Rows() {
		if !seen[r.Word] {
			seen[r.Word] = true
			p.brief(r.Word, r.Doc)
		}
	}
	for _, m := range vocabulary.Measures() {
		if !seen[m.Word] {
			seen[m.Word] = true
			p.brief(m.Word, "measure: "+m.Doc)
		}
	}
}

func (p page) rules() {
	for _, r := range check.Rules() {
		p.brief(r.Name, r.Severity.String()+": "+r.Title)
	}
}

func (p page) brief(word, doc string) {
	const column = 30
	if len([]rune(word)) >= column {
		fmt.Fprintln(p.w, word)
		word = ""
	}
	for i, line := range words.Wrap(doc, p.width-column-1) {
		if i > 0 {
			word = ""
		}
		fmt.Fprintf(p.w, "%-*s %s\n", column, word, line)
	}
}

func (p page) units() {
	last := quantity.Dimension(-1)
	for _, u := range quantity.Units() {
		if u.Dimension != last {
			last = u.Dimension
			p.title(u.Dimension.String(), "units")
		}
		p.brief("  "+strings.Join(append([]string{u.Name}, u.Aliases...), " "), u.Doc)
	}
}

func allWords() []string {
	var list []string
	for _, r := range vocabulary.Rows() {
		list = append(list, r.Word)
	}
	for _, m := range vocabulary.Measures() {
		list = append(list, m.Word)
	}
	return append(list, "rules", "words", "units")
}

func ruleNames() []string {
	var list []string
	for _, r := range check.Rules() {
		list = append(list, r.Name)
	}
	return list
}
