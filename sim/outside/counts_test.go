package outside

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// basis is what a row can prove.
type basis string

const (
	heldOut    basis = "held"       // nothing of the model was set by its figure
	sumOnly    basis = "sum"        // arithmetic, first principles, a formula: it proves the reckoning
	fittedTo   basis = "fitted"     // in a sum of squares that was made least
	calibrated basis = "calibrated" // a constant was chosen by it, or is taken from it
)

// bases are all of them, in the order of the document.
var bases = []basis{heldOut, sumOnly, fittedTo, calibrated}

// fitted marks a row that was in a least-squares fit: of which constants.
func (r row) fitted(constants ...string) row { r.basis, r.by = fittedTo, constants; return r }

// calibrated marks a row by which constants were chosen, or from which they are taken.
func (r row) calibrated(constants ...string) row { r.basis, r.by = calibrated, constants; return r }

// sum marks a row that tries the reckoning alone.
func (r row) sum() row { r.basis = sumOnly; return r }

// held marks a row by which nothing was set, although its source is that of a
// constant; why says how that is.
func (r row) held(why string) row { r.basis, r.by = heldOut, []string{why}; return r }

// untried marks a row that does not try the spread of lots and houses: its lot was fitted to
// other figures of it, or its source does not give what the figure hangs on - hours, the
// airflow, the first moisture -, so that what we took for it decides.
func (r row) untried() row { r.idle = true; return r }

// each marks many rows alike.
func each(rows []row, mark func(row) row) []row {
	for i := range rows {
		rows[i] = mark(rows[i])
	}
	return rows
}

// sums are standings of which nothing but the reckoning is tried.
var sums = regexp.MustCompile(`first principles|arithmetic|balance|definition|formula|` + layered)

// proves is the basis of a row. One without a mark is a sum by its standing, or held.
func (r row) proves() basis {
	switch {
	case r.basis != "":
		return r.basis
	case sums.MatchString(r.standing):
		return sumOnly
	}
	return heldOut
}

// counted is how the rows of a section count, and how many of each the model meets.
type counted struct {
	title string
	of    map[basis]int
	met   map[basis]int
}

func (c counted) line() string {
	all := 0
	cells := ""
	for _, b := range bases {
		all += c.of[b]
		cells += fmt.Sprintf(" %d of %d |", c.met[b], c.of[b])
	}
	return fmt.Sprintf("| %s | %d |%s\n", c.title, all, strings.ReplaceAll(cells, " 0 of 0 ", " "))
}

// countsTable says of each section how many rows there are of each basis, and how many
// of them the model meets.
func countsTable(sections []counted) string {
	total := counted{"all", map[basis]int{}, map[basis]int{}}
	var text strings.Builder
	text.WriteString("\n### What the rows prove\n\n| met of all | rows |")
	for _, b := range bases {
		fmt.Fprintf(&text, " %s |", b)
	}
	text.WriteString("\n|---|---|" + strings.Repeat("---|", len(bases)) + "\n")
	for _, c := range sections {
		text.WriteString(c.line())
		for _, b := range bases {
			total.of[b] += c.of[b]
			total.met[b] += c.met[b]
		}
	}
	text.WriteString(total.line())
	return text.String()
}

// A row from a source to which constants of ours were calibrated must say whether its
// own figure was among what they were set by: the table of the document names the
// sources.
func TestARowWhoseSourceSetAConstantSaysWhetherItsFigureDid(t *testing.T) {
	text, err := os.ReadFile(document)
	require.NoError(t, err)
	setBy, names := map[string][]string{}, map[string]bool{}
	for _, m := range constantRow.FindAllStringSubmatch(string(text), -1) {
		names[m[1]] = true
		for _, k := range cited.FindAllStringSubmatch(m[5], -1) {
			setBy[k[1]] = append(setBy[k[1]], m[1])
		}
	}
	require.NotEmpty(t, setBy)
	marked := 0
	for _, s := range table() {
		for _, r := range s.rows {
			if r.key != "" && len(setBy[r.key]) > 0 {
				assert.NotEmpty(t, r.basis, "%s: %v were calibrated to [%s]; is this figure one of those (fitted, calibrated) or held?", r.what, setBy[r.key], r.key)
				marked++
			}
			switch r.proves() {
			case fittedTo, calibrated:
				assert.NotEmpty(t, r.by, "%s: what was set by it?", r.what)
				for _, name := range r.by {
					assert.True(t, names[name] || strings.HasSuffix(name, ")"), "%s: %s is no calibrated constant of the document; figures that are no constants have where they stand, in brackets", r.what, name)
				}
			case heldOut:
				assert.NotContains(t, r.standing, "calibrated to it", r.what)
			}
		}
	}
	assert.Positive(t, marked)
}
