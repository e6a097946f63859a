package pdf

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/write/pdf/pdftest"
)

const tongues = "12 °C → ½ – 3/4 ± µ ≤ × Żółć gęśla źdźbło Ωμέγα ψυχή Жук съел Ґрунт Čeština Ștefan"

var body = Font{Size: 11}

func written(t require.TestingT, p *Paper) []byte {
	var b bytes.Buffer
	require.NoError(t, p.Write(&b))
	return b.Bytes()
}

func sample(o Options) *Paper {
	p := New(o)
	for range 2 {
		p.Page()
		p.Text(XY{20, 20}, tongues, body, Left)
		p.Text(XY{190, 30}, tongues[:40], Font{Size: 14, Bold: true, Ink: RGB{200, 0, 0}}, Right)
		p.Box(XY{20, 40}, 42, 13, Pen{Thick: 0.4}, Fill{})
		p.Circle(XY{100, 100}, 10, Pen{Thick: 0.3, Dash: []float64{1, 2}}, Fill{RGB{0, 0, 255}, 0.5})
		p.Line(XY{20, 60}, XY{190, 60}, Pen{Thick: 0.2})
	}
	return p
}

func foot(p *Paper, page, of int) {
	p.Text(XY{p.Wide - 12, p.Tall - 12}, "page "+string(rune('0'+page))+" of "+string(rune('0'+of)), Font{Size: 9}, Right)
}

func TestTwoCopiesAreTheSameBytes(t *testing.T) {
	first := written(t, sample(Options{Title: "Batch", Foot: foot}))
	for range 20 { // the order of a map is another each time
		assert.True(t, bytes.Equal(first, written(t, sample(Options{Title: "Batch", Foot: foot}))))
	}
	assert.NotContains(t, string(first), time.Now().Format("20060102"))
}

func TestTheFontsAreAsTheyWere(t *testing.T) { // TestTheLettersAreThoseOfTheFonts would tell less
	before := written(t, sample(Options{}))
	p := New(Options{})
	p.Page()
	for r := rune(0x20); r < 0x2700; r++ {
		p.Text(XY{10, 10}, string(r), body, Left)
		p.Text(XY{10, 10}, string(r), Font{Size: 9, Bold: true}, Left)
	}
	written(t, p)
	assert.True(t, bytes.Equal(before, written(t, sample(Options{}))))
}

func TestTextComesBack(t *testing.T) {
	for _, loose := range []bool{false, true} {
		d := pdftest.Read(t, written(t, sample(Options{Foot: foot, loose: loose})))
		require.Len(t, d.Pages, 2)
		assert.InDelta(t, 210, d.Wide, 0.01)
		assert.InDelta(t, 297, d.Tall, 0.01)
		for i, page := range d.Pages {
			assert.Equal(t, tongues, page.Texts[0].Words)
			assert.Equal(t, 11.0, page.Texts[0].Size)
			assert.True(t, page.Texts[1].Bold)
			assert.InDelta(t, 190, page.Texts[1].X+page.Texts[1].Wide, 0.1)
			assert.Contains(t, page.All(), "page "+string(rune('1'+i))+" of 2")
			wide, tall, ok := page.Lines[0].Upright()
			require.True(t, ok)
			assert.InDelta(t, 42, wide, 0.01) // what a file keeps is 1/100 point
			assert.InDelta(t, 13, tall, 0.01)
		}
	}
}

// What other programs make of the file: poppler's pdftotext, which knows nothing of
// ours, finds the text, and qpdf no fault.
func TestOtherReadersAgree(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.pdf")
	require.NoError(t, os.WriteFile(path, written(t, sample(Options{Title: "Żółty (°)", Foot: foot})), 0o600))
	t.Run("pdftotext", func(t *testing.T) {
		out := ask(t, "pdftotext", "-enc", "UTF-8", path, "-")
		assert.Equal(t, 2, strings.Count(out, tongues))
		assert.Contains(t, out, "page 2 of 2")
	})
	t.Run("pdfinfo", func(t *testing.T) {
		out := ask(t, "pdfinfo", path)
		assert.Regexp(t, `Title: +Żółty \(°\)\n`, out)
		assert.Regexp(t, `Page size: .*\(A4\)`, out)
	})
	t.Run("qpdf", func(t *testing.T) {
		assert.Contains(t, ask(t, "qpdf", "--check", path), "No syntax or stream encoding errors")
	})
}

func ask(t *testing.T, program string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		t.Skipf("%s is not installed", program)
	}
	out, err := exec.Command(program, args...).CombinedOutput()
	require.NoError(t, err, string(out))
	return string(out)
}

func TestWhatTheFontsLackIsABoxAndNamed(t *testing.T) {
	p := New(Options{})
	p.Page()
	p.Text(XY{10, 10}, "麦芽 \U0001f33e \U0001f468\u200d\U0001f33e e\u0301 cafe\u0301 x\u0301 麦", body, Left)
	p.Text(XY{10, 20}, p.Fit("粉 and more", body, 10), body, Left)
	p.Text(XY{10, 30}, p.Wrap("面 and more", body, 10)[0], body, Left)
	p.Page()
	assert.Equal(t, []string{"麦", "芽", "\U0001f33e", "\U0001f468\u200d\U0001f33e", "x\u0301", "粉", "面"}, p.Missing())
	assert.True(t, p.Lacking(1))
	assert.False(t, p.Lacking(2))
	assert.Equal(t, "□ stands for a letter that this paper's fonts lack: U+9EA6, U+82BD, U+1F33E, U+1F468 U+200D U+1F33E, U+0078 U+0301, U+7C89, U+9762", p.Note())
	assert.Contains(t, p.Lost(), "麦 (U+9EA6)")
	d := pdftest.Read(t, written(t, p))
	assert.Equal(t, "□□ □ □ é café □ □\n□ a…\n□ and\n", d.Pages[0].All())
	assert.Empty(t, New(Options{}).Note())
}

func TestManyMissingLettersMakeAShortNote(t *testing.T) {
	p := New(Options{})
	p.Page()
	for r := rune(0x4E00); r < 0x4F00; r++ {
		p.Text(XY{10, 10}, string(r), body, Left)
	}
	p.Text(XY{10, 10}, "x"+strings.Repeat("\u0301", 10000), body, Left)
	assert.Len(t, p.Missing(), 257)
	assert.Contains(t, p.Note(), "and 249 more")
	assert.Less(t, len(p.Note()), 200)
	assert.Less(t, len(numbers(p.Missing()[256])), 40)
}

func TestWhatActsIsWrittenOut(t *testing.T) {
	for text, want := range map[string]string{
		") Tj ET (":     ") Tj ET (",
		`\) \\ \050`:    `\) \\ \050`,
		"endstream":     "endstream",
		"a\x00b\x1b[2J": "a<U+0000>b<U+001B>[2J",
		"a\u202eb":      "a<U+202E>b",
		"a\u200bb":      "a<U+200B>b",
		"a\xb0":         "a<byte 0xB0>",
		"a\r\nb":        "a<U+000D><U+000A>b",
		"a\u2009b":      "a b",
		"\u0d28":        "□", // its second byte is that of a bracket
	} {
		p := New(Options{Title: text})
		p.Page()
		p.Text(XY{10, 10}, text, body, Left)
		d := pdftest.Read(t, written(t, p))
		require.Len(t, d.Pages[0].Texts, 1)
		assert.Equal(t, want, d.Pages[0].Texts[0].Words)
	}
}

func TestPlacesThatAreNoneDrawNothing(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	p := New(Options{})
	p.Page()
	p.Text(XY{nan, 1}, "x", body, Left)
	p.Text(XY{1, 1}, "x", Font{Size: inf}, Left)
	p.Line(XY{1, 1}, XY{inf, 1}, Pen{Thick: 1})
	p.Circle(XY{1, 1}, nan, Pen{Thick: 1}, Fill{})
	p.Draw(Path{Dots: []XY{{1, 1}}}, Pen{Thick: 1}, Fill{})
	p.Draw(Path{Dots: []XY{{1, 1}, {2, 2}, {3, 3}}, Curved: true}, Pen{Thick: 1}, Fill{})
	d := pdftest.Read(t, written(t, p))
	assert.Empty(t, d.Pages[0].Texts)
	assert.Empty(t, d.Pages[0].Lines)
}

// What is wrapped stays within its width, by widths that the fonts themselves say, and
// loses no letter.
func TestNoLetterLeavesItsColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringOfN(rapid.RuneFrom([]rune("aW i.°麦\u0301\u200d\U0001f33e)\\Ж")), 0, 400, -1)).Draw(t, "text")
		font := Font{Size: rapid.Float64Range(6, 30).Draw(t, "size"), Bold: rapid.Bool().Draw(t, "bold")}
		wide := rapid.Float64Range(20, 186).Draw(t, "wide")
		p := New(Options{})
		p.Page()
		lines := p.Wrap(text, font, wide)
		for i, l := range append(lines, p.Fit(text, font, wide)) {
			p.Text(XY{12, 20 + float64(i)}, l, font, Left)
		}
		shown, _ := covered(strings.Join(blanks(text), " "))
		assert.Equal(t, strings.ReplaceAll(shown, " ", ""), bare(lines))
		for _, x := range read(t, p).Pages[0].Texts {
			assert.LessOrEqual(t, x.X+x.Wide, 12+wide+0.02*float64(len(x.Words))) // widths are told in whole thousandths
		}
	})
}

func bare(lines []string) string {
	var b strings.Builder
	for _, l := range lines {
		shown, _ := covered(l)
		b.WriteString(strings.ReplaceAll(shown, " ", ""))
	}
	return b.String()
}

// read is Read for a test of rapid, which is none of the testing package.
func read(t *rapid.T, p *Paper) pdftest.Document {
	return pdftest.Read(rapidTB{t: t}, written(t, p))
}

type rapidTB struct {
	testing.TB
	t *rapid.T
}

func (r rapidTB) Helper()                   {}
func (r rapidTB) Errorf(f string, a ...any) { r.t.Errorf(f, a...) }
func (r rapidTB) FailNow()                  { r.t.FailNow() }

func TestAWordOfTenThousandLetters(t *testing.T) {
	p := New(Options{})
	p.Page()
	lines := p.Wrap(strings.Repeat("W", 10000)+" end", body, 100)
	assert.Greater(t, len(lines), 300)
	assert.Equal(t, "end", lines[len(lines)-1][len(lines[len(lines)-1])-3:])
	assert.LessOrEqual(t, p.Width(p.Fit(strings.Repeat("W", 10000), body, 50), body), 50.0)
}

func TestANumberStaysWithItsUnit(t *testing.T) {
	p := New(Options{})
	p.Page()
	for wide := 20.0; wide < 80; wide++ {
		for _, l := range p.Wrap("hold the bed at 14 °C for 6 d 22 h, then 3 kg", body, wide) {
			assert.NotRegexp(t, `\d$`, l)
		}
	}
}

func BenchmarkPaper(b *testing.B) {
	for b.Loop() {
		written(b, sample(Options{Title: "Batch", Foot: foot}))
	}
}

// The page of serve makes papers for several people at once.
func TestPapersAreMadeSideBySide(t *testing.T) {
	want := written(t, sample(Options{Foot: foot}))
	var all sync.WaitGroup
	got := make([][]byte, 8)
	for i := range got {
		all.Go(func() {
			var b bytes.Buffer
			if sample(Options{Foot: foot}).Write(&b) == nil {
				got[i] = b.Bytes()
			}
		})
	}
	all.Wait()
	for _, g := range got {
		assert.True(t, bytes.Equal(want, g))
	}
}
