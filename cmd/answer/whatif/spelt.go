package whatif

import (
	"fmt"
	"strings"

	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// used is a definition of the house by which a process is made.
type used struct {
	kind, name string
	file       *source.File
	block      *syntax.Statement
}

// usedBy lists the definitions by which the process is made, of which facts can be changed.
func usedBy(p *model.Process) (list []used) {
	starts := map[source.Place]bool{}
	for _, t := range fingerprint.Trees(p) {
		for _, s := range t.Top.Statements {
			starts[source.Place{File: t.File, Span: source.Span{Start: s.Start}}] = true
		}
	}
	for _, f := range p.House.Files {
		tree, _ := syntax.Parse(f)
		for _, s := range tree.Top.Statements {
			if isFact(s.Verb.Text) && s.Body != nil && starts[source.Place{File: f, Span: source.Span{Start: s.Start}}] {
				list = append(list, used{s.Verb.Text, nameOf(s), f, s})
			}
		}
	}
	return list
}

// spelt writes a change as the language would: a definition that is called by its name alone,
// or by another word for what it is, or that is not called where only one has the fact.
func spelt(change string, list []used) string {
	change = strings.TrimSpace(change)
	word, rest, _ := strings.Cut(change, " ")
	if isFact(word) || isStep(word) {
		return change
	}
	plain := strings.ToLower(strings.ReplaceAll(change, `"`, ""))
	for _, u := range list {
		if after, ok := strings.CutPrefix(plain, strings.ToLower(u.name)+" "); ok && u.name != "" {
			return fmt.Sprintf("%s %q %s", u.kind, u.name, change[len(change)-len(after):])
		}
	}
	if o, ok := vocabulary.OtherWord(vocabulary.File, strings.ToLower(word)); ok && isFact(o.Means) {
		return o.Means + " " + rest
	}
	if _, own := vocabulary.Lookup(vocabulary.Batch, word); own || !strings.HasPrefix(rest, "to ") {
		return change
	}
	return owned(change, word, list)
}

// owned writes in front of a fact what it is a fact of, where that is one alone.
func owned(change, fact string, list []used) string {
	found := ""
	for _, u := range list {
		for _, s := range u.block.Body.Statements {
			if s.Verb.Text != vocabulary.Today(fact) {
				continue
			}
			if found != "" {
				return change
			}
			found = fmt.Sprintf("%s %q %s", u.kind, u.name, change)
		}
	}
	if found == "" {
		return change
	}
	return found
}

// isInStage tells whether a change is of a statement of a stage: germinate turn to every 6 h.
func isInStage(change string) bool {
	return stageForm.MatchString(change) && !factForm.MatchString(change)
}

// stageEdit finds a statement of a stage of the process.
func stageEdit(p *model.Process, change string) (*source.File, edit, error) {
	m := stageForm.FindStringSubmatch(change)
	nth := 1
	if m[2] != "" {
		_, _ = fmt.Sscan(m[2], &nth) // three digits at the most
	}
	tree, _ := syntax.Parse(p.Scope.File)
	for _, s := range tree.Top.Statements {
		if s.Body == nil || s.Start != p.Scope.Start {
			continue
		}
		for _, stage := range s.Body.Statements {
			if stage.Verb.Text != m[1] || stage.Body == nil {
				continue
			}
			if nth--; nth > 0 {
				continue
			}
			return inBlock(p.Scope.File, stage, m[1], m[3], m[4])
		}
	}
	return nil, edit{}, Misuse(fmt.Sprintf("the process has no %s of that number with statements of its own", m[1]))
}
