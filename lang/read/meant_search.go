package read

import (
	"cmp"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// search looks for what may be meant by one statement.
type search struct {
	r     *statementReader
	row   *vocabulary.Row
	aside bool // a comment may stand behind it
	until int  // the tries of the house at which it gives up
}

// attempt is a list of pieces that was tried, and how far it came.
type attempt struct {
	pieces []piece
	faults int
	left   int // how much of the text stands behind the first of them
}

// widest is how many of the attempts that came furthest are changed once more.
const widest = 6

// found is the text that reads, or the texts between which only the writer can choose: after no
// change, after one, after two, and after three where the first two brought it on.
func (s *search) found(pieces []piece, changes []change) []string {
	if texts := s.try([][]piece{pieces}, nil); texts != nil {
		return texts
	}
	once, less := changesOf(s, pieces, changes...), [][]piece{}
	if len(changes) > 1 {
		less = changesOf(s, pieces, leftOut)
	}
	var tried []attempt
	for _, lists := range [][][]piece{once, less} {
		if texts := s.try(lists, &tried); texts != nil {
			return texts
		}
	}
	if len(changes) == 1 {
		return nil
	}
	for range 2 {
		best := furthest(tried)
		tried = nil
		for _, a := range best {
			if texts := s.try(changesOf(s, a.pieces, append(slices.Clip(changes), leftOut)...), &tried); texts != nil {
				return texts
			}
		}
	}
	return nil
}

func furthest(tried []attempt) []attempt {
	sorted.Stable(tried, func(a, b attempt) int {
		return cmp.Or(cmp.Compare(a.faults, b.faults), cmp.Compare(a.left, b.left))
	})
	return tried[:min(len(tried), widest)]
}

// try reads each of the lists, until one reads.
func (s *search) try(lists [][]piece, tried *[]attempt) []string {
	for _, list := range lists {
		if *s.r.tried++; *s.r.tried > s.until {
			return nil
		}
		found := s.r.trial(s.row, list)
		if len(found) == 0 {
			return s.either(list)
		}
		if tried != nil {
			*tried = append(*tried, attempt{list, len(found), len(joined(list)) - found[0].Place.Start})
		}
	}
	return nil
}

// either writes the pieces, and again with what may as well be meant by one that nobody wrote.
func (s *search) either(pieces []piece) []string {
	texts := []string{joined(pieces)}
	for i, p := range pieces {
		for _, text := range p.or {
			if other := with(pieces, i, i+1, piece{text: text, kind: p.kind}); s.r.reads(s.row, other) {
				texts = append(texts, joined(other))
			}
		}
	}
	return texts
}

// trialText is a text that is tried as a statement of a block.
type trialText struct {
	in   vocabulary.Block
	text string
}

// trial gives what is wrong with the pieces as a whole statement of the row. Nearly half of what is tried is the
// same text again, by another way to it.
func (r *statementReader) trial(row *vocabulary.Row, pieces []piece) []finding.Finding {
	text := joined(pieces)
	if row.Opens != vocabulary.None {
		text += " { }"
	}
	if r.trials == nil {
		return r.trialOf(text)
	}
	key := trialText{r.in, text}
	found, known := r.trials[key]
	if !known {
		found = r.trialOf(text)
		r.trials[key] = found
	}
	return found
}

func (r *statementReader) trialOf(text string) []finding.Finding {
	tree, found := syntax.Parse(source.New(r.file.Name(), []byte(text)))
	if len(found) > 0 || len(tree.Top.Statements) != 1 {
		return append(found, finding.Finding{Place: source.Place{File: tree.File}})
	}
	trial := &statementReader{file: tree.File, found: &found, in: r.in, home: r.home}
	if _, ok := trial.read(tree.Top.Statements[0]); !ok && len(found) == 0 {
		found = append(found, finding.Finding{Place: source.Place{File: tree.File}})
	}
	return found
}

// reads tells whether the pieces are a whole statement of the row.
func (r *statementReader) reads(row *vocabulary.Row, pieces []piece) bool {
	if r.tried != nil {
		*r.tried++
	}
	return len(r.trial(row, pieces)) == 0
}
