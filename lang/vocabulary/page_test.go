package vocabulary

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
)

// The reference is testdata/language.md, written by hand, with what the tables
// hold put in. Its examples are read by a test of package read.
func TestReferenceIsMadeFromTheVocabulary(t *testing.T) {
	template, err := os.ReadFile("testdata/language.md")
	require.NoError(t, err)
	page := strings.NewReplacer(
		"{{clauses}}", clauseList(), "{{units}}", unitTable(), "{{measures}}", measureTable(false),
		"{{promises}}", measureTable(true), "{{limits}}", limitTable(), "{{analyses}}", analysisTable(), "{{proportions}}", proportionTable(), "{{statements}}", statementList(),
	).Replace(string(template))
	require.NotContains(t, page, "{{")
	golden.File(t, "../../docs/language.md", page)
}

func clauseList() string {
	words := ClauseWords()
	last := len(words) - 1
	return "`" + strings.Join(words[:last], "`, `") + "` and `" + words[last] + "`"
}

func table(b *strings.Builder, cells ...string) {
	b.WriteString("| " + strings.ReplaceAll(strings.Join(cells, "\x00"), "|", "\\|") + " |\n")
}

// written ends a table: the cells were joined by what no cell holds.
func written(b *strings.Builder) string {
	return strings.TrimRight(strings.ReplaceAll(b.String(), "\x00", " | "), "\n")
}

func unitTable() string {
	var b strings.Builder
	table(&b, "of", "unit", "also read", "what it is")
	table(&b, "---", "---", "---", "---")
	last := quantity.Dimension(-1)
	for _, u := range quantity.Units() {
		of := ""
		if u.Dimension != last {
			of, last = u.Dimension.String(), u.Dimension
		}
		also := ""
		if len(u.Aliases) > 0 {
			also = "`" + strings.Join(u.Aliases, "` `") + "`"
		}
		table(&b, of, "`"+u.Name+"`", also, u.Doc)
	}
	return written(&b)
}

func measureTable(promises bool) string {
	var b strings.Builder
	heads := []string{"measure", "what it is", "its value"}
	rules := []string{"---", "---", "---"}
	if !promises {
		heads, rules = append(heads, "in"), append(rules, "---")
	}
	table(&b, heads...)
	table(&b, rules...)
	for _, m := range Measures() {
		if m.Promise != promises {
			continue
		}
		cells := []string{"`" + m.Word + "`", m.Doc, measured(m)}
		if !promises {
			cells = append(cells, blockNames(m.In))
		}
		table(&b, cells...)
	}
	return written(&b)
}

func measured(m Measure) string {
	switch {
	case m.Bare:
		return "none: it stands alone"
	case m.Words != nil:
		return "`is` " + strings.Join(m.Words, ", ")
	}
	words := make([]string, len(m.Dims))
	for i, d := range m.Dims {
		words[i] = d.String()
	}
	return strings.Join(words, " or ")
}

func blockNames(list []Block) string {
	words := make([]string, len(list))
	for i, b := range list {
		words[i] = string(b)
	}
	return strings.Join(words, ", ")
}

func limitTable() string {
	var b strings.Builder
	table(&b, "threshold", "bound", "what it is", "from and to")
	table(&b, "---", "---", "---", "---")
	for _, l := range LimitNames() {
		table(&b, "`"+l.Word+"`", l.Op.String(), l.Doc, l.Sense.Text())
	}
	return written(&b)
}

func analysisTable() string {
	var b strings.Builder
	table(&b, "tested", "what it is", "from and to")
	table(&b, "---", "---", "---")
	for _, a := range Analyses() {
		table(&b, "`"+a.Word+"`", a.Doc, a.Sense.Text())
	}
	return written(&b)
}

func proportionTable() string {
	var b strings.Builder
	table(&b, "what", "from and to, for each", "usual", "known from")
	table(&b, "---", "---", "---", "---")
	for _, p := range ratios {
		can, usual := p.Can.String(), p.Usual.String()
		if p.AtLeast {
			can, _, _ = strings.Cut(can, " to ")
			can = "at least " + can + " " + p.Can.Low.Unit()
		}
		table(&b, p.Doc, can+" for each "+p.Unit, usual, p.Standing)
	}
	return written(&b)
}

// blockTitles are the headings of the reference, in its order.
var blockTitles = []struct {
	block Block
	title string
}{
	{File, "At the top of a file"}, {Process, "In a process"}, {Steep, "In a steep"}, {Repeat, "In a repeat"},
	{Germinate, "In germinate"}, {Wither, "In wither"}, {Kiln, "In the kiln stage of a process"},
	{Grain, "Facts of a grain"}, {Site, "Facts of a site"}, {Vessel, "Facts of a vessel"}, {Floor, "Facts of a floor"}, {KilnFacts, "Facts of a kiln"}, {Scale, "Facts of a scale"},
	{House, "What a house has learnt"}, {Batch, "In a batch"},
}

func statementList() string {
	var b strings.Builder
	told := map[string]Block{} // by its form and example, where a statement was told
	for _, part := range blockTitles {
		fmt.Fprintf(&b, "### %s\n\n", part.title)
		for _, r := range Rows() {
			if !slices.Contains(r.In, part.block) {
				continue
			}
			key := Form(r) + r.Example
			if _, again := told[key]; again {
				fmt.Fprintf(&b, "**%s**: as %s.\n\n", r.Word, titleOf(told[key]))
				continue
			}
			told[key] = part.block
			statement(&b, r)
		}
	}
	return strings.TrimRight(b.String(), "\n")
}

func titleOf(block Block) string {
	for _, part := range blockTitles {
		if part.block == block {
			return strings.ToLower(part.title[:1]) + part.title[1:]
		}
	}
	return string(block)
}

func statement(b *strings.Builder, r Row) {
	fmt.Fprintf(b, "**%s**: %s", r.Word, r.Doc)
	if r.Needed {
		b.WriteString(" It cannot be left out.")
	}
	fmt.Fprintf(b, "\n\n    %s\n\n", Form(r))
	for _, c := range r.Clauses {
		need := ""
		if c.Required {
			need = "; required"
		}
		fmt.Fprintf(b, "- `%s`: %s%s\n", c.Word, c.Doc, need)
	}
	for _, s := range r.Slots {
		if s.Kind == Choice && len(s.Words) > 4 {
			fmt.Fprintf(b, "- %s: %s\n", s.Label, strings.Join(s.Words, ", "))
		}
	}
	for _, s := range Senses(r) {
		fmt.Fprintf(b, "- %s: %s\n", s.Label, s.Sense.Text())
	}
	if !strings.HasSuffix(b.String(), "\n\n") {
		b.WriteString("\n")
	}
	fmt.Fprintf(b, "For example: `%s`\n\n", r.Example)
}

func TestReferenceHasEveryBlock(t *testing.T) {
	var told []Block
	for _, part := range blockTitles {
		told = append(told, part.block)
	}
	for _, r := range Rows() {
		for _, in := range r.In {
			require.Contains(t, told, in, r.Word)
		}
	}
}
