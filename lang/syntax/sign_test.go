package syntax

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// otherwise are the ways in which people write what the language writes otherwise. Each is undone as
// a whole by the signs that are told of it.
var otherwise = map[string]func(text string) string{
	"slashes for comments": func(text string) string { return replacedBy(`(?m)(^| )#`, "$1//", text) },
	"dashes for comments":  func(text string) string { return replacedBy(`(?m)(^| )#`, "$1--", text) },
	"a comment in stars":   func(text string) string { return replacedBy(`(?m)(^| )#(.*)$`, "$1/*$2 */", text) },
	"brackets for braces":  strings.NewReplacer("{", "[", "}", "]").Replace,
	"parentheses":          strings.NewReplacer("{", "(", "}", ")").Replace,
	"single quotes":        func(text string) string { return replacedBy(`"([^"\n']*)"`, "'$1'", text) },
	"guillemets":           func(text string) string { return replacedBy(`"([^"\n]*)"`, "«$1»", text) },
	"the sign for at":      func(text string) string { return strings.ReplaceAll(text, " at air-on ", " @ air-on ") },
	"points for to":        func(text string) string { return replacedBy(`(\d) to (\d)`, "$1..$2", text) },
	"arrows for to":        func(text string) string { return replacedBy(`(\d) to (\d)`, "$1 -> $2", text) },
	"stars in front":       func(text string) string { return replacedBy(`(?m)^( *)([a-z].*)$`, "$1* $2", text) },
	"commas behind":        func(text string) string { return replacedBy(`(?m)^( *[a-z][^#{}\n]*[^#{}\s])$`, "$1,", text) },
	"numbers of lines":     func(text string) string { n := 0; return numberLines(text, &n) },
	"an answered mail":     func(text string) string { return replacedBy(`(?m)^(.+)$`, "> $1", text) },
	"garbled degrees":      strings.NewReplacer("°", "Â°").Replace,
	"wide braces":          strings.NewReplacer("{", "｛", "}", "｝").Replace,
	"ampersands":           strings.NewReplacer(" and rub ", " & rub ").Replace,
	"colons behind words":  func(text string) string { return replacedBy(`(?m)^( +[a-z-]+) +(\d)`, "$1: $2", text) },
	"no braces": func(text string) string {
		return replacedBy(`(?m)^ *\}\n`, "", replacedBy(` \{$`, "", replacedBy(`(?m) \{\n`, "\n", text)))
	},
	"full stops at the end": func(text string) string { return replacedBy(`(?m)^( *[a-z][^#{}\n]*[^#{}\s.])$`, "$1.", text) },
}

func replacedBy(form, with, text string) string {
	return regexp.MustCompile(form).ReplaceAllString(text, with)
}

func numberLines(text string, n *int) string {
	return regexp.MustCompile(`(?m)^.+$|^$`).ReplaceAllStringFunc(strings.TrimSuffix(text, "\n"), func(line string) string {
		*n++
		return strings.TrimRight(strings.Join([]string{itoa(*n), line}, "  "), " ")
	})
}

func itoa(n int) string {
	return strings.TrimLeft(string([]byte{byte('0' + n/100), byte('0' + n/10%10), byte('0' + n%10)}), "0")
}

// words are those of a text, without its comments and its breaks.
func wordsOf(t testing.TB, text string) string {
	list := strings.Split(tokens(t, text), " | ")
	list = slices.DeleteFunc(list, func(s string) bool { return strings.HasPrefix(s, "Comment ") || strings.HasPrefix(s, "End ") })
	return strings.Join(list, " | ")
}

func commentsOf(text string) string {
	return strings.Join(strings.Fields(strings.Join(regexp.MustCompile(`(?m)(?:^| )#.*$`).FindAllString(text, -1), " ")), " ")
}

func TestWhatIsWrittenInOtherSignsIsPutRightAsAWhole(t *testing.T) {
	texts := corpus(t)
	for name, do := range otherwise {
		t.Run(name, func(t *testing.T) {
			tried := 0
			for file, text := range texts {
				text = strings.ReplaceAll(text, "\r\n", "\n")
				if _, found := parse(text); len(found) > 0 || !strings.Contains(file, "examples") || strings.Contains(file, "broken") || len(text) > 4000 {
					continue
				}
				slip := do(text)
				if slip == text {
					continue
				}
				tried++
				f := source.New("x.malt", []byte(slip))
				m, ok := Signs(f)
				if !assert.True(t, ok, "%s\n%s", file, slip) {
					return
				}
				made := string(m.File.Bytes())
				if !assert.Equal(t, wordsOf(t, text), wordsOf(t, made), "%s\n%s", file, made) {
					return
				}
				assert.Equal(t, strings.ReplaceAll(commentsOf(text), "\"", "'"), strings.NewReplacer("\"", "'", "«", "'", "»", "'").Replace(commentsOf(made)), "%s", file)
				assert.LessOrEqual(t, len(m.Found), 4, "told once, or with what stands beside it: %s", file)
				assert.Equal(t, made, putIn(f, m.Found), "what the findings carry is what was read")
			}
			assert.Positive(t, tried)
		})
	}
}

// putIn makes all the edits that findings carry.
func putIn(f *source.File, found []finding.Finding) string {
	var list []change
	for _, g := range found {
		edits := slices.Clone(g.Fixes)
		for _, o := range g.Offers {
			edits = append(edits, o.Edits...)
		}
		for _, e := range edits {
			list = append(list, change{Span: e.Place.Span, text: e.New})
		}
	}
	slices.SortStableFunc(list, func(a, b change) int { return a.Start - b.Start })
	return string(written(f.Bytes(), list))
}

// counts are the signs that write a number otherwise, or take one out that only counts.
var counts = []*sign{signEach, signBetween, signNumber, signStep, signBullet, signMargin, signTimes, signWide}

// thrownIn are what people write between words.
var thrownIn = []string{"..", "…", "~", " ~", "±", " ± ", "+/-", "@", ":", " = ", ",", ", ", ", then ", ";", ".", " -> ", "→", "&", " & ", "+", "(", ")", "[", "]", "{", "}", "'", "«", "»", "`", "\"", "//", " // ", " -- ", "/*", "*/", "<!--", "-->",
	"#1 ", "\n- ", "\n1. ", "\n* ", " x ", "2x/day", "/day", " begin\n", "\nend\n", "\n", "\\\n", " about ", " ca. ", "!", "?", "%", "°", "Â°", "｛", "}", "\t", "\u00a0", "> ", "\n---\n", "```", "Step 2: "}

func TestNoSignThatIsPutRightLosesANumber(t *testing.T) {
	var lines []string
	for _, text := range corpus(t) {
		for line := range strings.Lines(text) {
			if len(line) < 120 && strings.ContainsAny(line, "0123456789\"") {
				lines = append(lines, strings.TrimRight(line, "\r\n"))
			}
		}
	}
	slices.Sort(lines)
	digits := regexp.MustCompile(`\d`)
	put := 0
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(lines), 1, 4).Draw(t, "lines"), "\n")
		if rapid.Bool().Draw(t, "framed") {
			text = "process \"P\" {\n  steep in \"t\" {\n" + text + "\n  }\n}\n"
		}
		for range rapid.IntRange(1, 4).Draw(t, "slips") {
			at := rapid.IntRange(0, len(text)).Draw(t, "at")
			for at < len(text) && text[at]&0xc0 == 0x80 {
				at++
			}
			text = text[:at] + rapid.SampledFrom(thrownIn).Draw(t, "sign") + text[at:]
		}
		f := source.New("x.malt", []byte(text))
		m, ok := Signs(f)
		if !ok {
			return
		}
		put++
		for _, c := range m.edits {
			if slices.Contains(counts, c.sign) {
				continue
			}
			was := f.Text(c.Span)
			require.Equal(t, digits.FindAllString(was, -1), digits.FindAllString(c.text, -1), "%q for %q in\n%s", c.text, was, text)
		}
		for at := range m.File.Size() {
			back := m.Back(source.Span{Start: at, End: at + 1})
			require.True(t, 0 <= back.Start && back.Start <= back.End && back.End <= f.Size(), "%v", back)
		}
		require.Equal(t, string(m.File.Bytes()), putIn(f, m.Found))
		_, again := statements(m.File)
		_, before := statements(f)
		require.LessOrEqual(t, len(again), max(len(before), 1)+1, "it reads no worse:\n%s\n---\n%s", text, m.File.Bytes())
	})
	assert.Greater(t, put, 10, "hardly any sign was put right")
	t.Logf("signs of %d texts were put right", put)
}
