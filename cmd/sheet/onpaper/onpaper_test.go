package onpaper

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf/pdftest"
)

var start = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)

func of(t testing.TB, name string, o sheet.Options) sheet.Sheet {
	t.Helper()
	s, err := sheet.Of(sample.Forecast(t, name), o)
	require.NoError(t, err)
	return s
}

func written(t testing.TB, s sheet.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	_, err := Write(&b, s)
	require.NoError(t, err)
	return b.Bytes()
}

// nothingOutside fails where a letter or a line leaves the margins.
func nothingOutside(t testing.TB, s sheet.Sheet, d pdftest.Document) {
	t.Helper()
	const slack = 0.3 // half a line, and what widths are rounded by
	for i, page := range d.Pages {
		for _, x := range page.Texts {
			assert.GreaterOrEqual(t, x.X, sheet.Margin-slack, "page %d: %q", i+1, x.Words)
			assert.LessOrEqual(t, x.X+x.Wide, s.Size.Wide-sheet.Margin+slack, "page %d: %q", i+1, x.Words)
			assert.LessOrEqual(t, x.Y, s.Size.Tall-sheet.Margin, "page %d: %q", i+1, x.Words)
			assert.GreaterOrEqual(t, x.Y, float64(sheet.Margin), "page %d: %q", i+1, x.Words)
		}
		for _, l := range page.Lines {
			for k := 0; k < len(l.Dots); k += 2 {
				assert.True(t, l.Dots[k] >= sheet.Margin-slack && l.Dots[k] <= s.Size.Wide-sheet.Margin+slack, "page %d: x %.1f", i+1, l.Dots[k])
				assert.LessOrEqual(t, l.Dots[k+1], s.Size.Tall-sheet.Margin-sheet.FootTall+slack, "page %d", i+1)
			}
		}
	}
}

// nothingOver fails where two texts, or a text and the frame of a box, lie over each other.
func nothingOver(t testing.TB, d pdftest.Document) {
	t.Helper()
	const point = 25.4 / 72
	for i, page := range d.Pages {
		for k, a := range page.Texts {
			up := 0.6 * a.Size * point
			for _, b := range page.Texts[k+1:] {
				apart := a.X+a.Wide <= b.X+0.1 || b.X+b.Wide <= a.X+0.1 || a.Y <= b.Y-0.6*b.Size*point || b.Y <= a.Y-up
				assert.True(t, apart, "page %d: %q lies over %q", i+1, a.Words, b.Words)
			}
			for _, l := range page.Lines {
				wide, tall, ok := l.Upright()
				if !ok || l.Filled {
					continue
				}
				x, y := l.Dots[0], l.Dots[1]
				outside := a.X >= x+wide || a.X+a.Wide <= x || a.Y-up >= y+tall || a.Y <= y
				inside := a.X >= x && a.X+a.Wide <= x+wide+0.1 && a.Y-up >= y && a.Y <= y+tall
				assert.True(t, outside || inside, "page %d: %q lies over the frame of a box", i+1, a.Words)
			}
		}
	}
}

func TestEachExampleOnEachPaper(t *testing.T) {
	for _, name := range []string{"pale.malt", "wheat.malt", "box.malt", "deep-bed.malt"} {
		for _, size := range []sheet.Size{sheet.A4, sheet.Letter} {
			for _, clock := range []time.Time{start, {}} {
				s := of(t, name, sheet.Options{Start: clock, Size: size, Note: "maltwright note 26-01"})
				d := pdftest.Read(t, written(t, s))
				require.Len(t, d.Pages, len(s.Pages))
				assert.InDelta(t, size.Wide, d.Wide, 0.01)
				assert.InDelta(t, size.Tall, d.Tall, 0.01)
				nothingOutside(t, s, d)
				nothingOver(t, d)
			}
		}
	}
}

func TestTwoCopiesOfASheetAreTheSameBytes(t *testing.T) {
	first := written(t, of(t, "pale.malt", sheet.Options{Start: start}))
	for range 3 {
		assert.True(t, bytes.Equal(first, written(t, of(t, "pale.malt", sheet.Options{Start: start}))))
	}
}

func TestEachPageSaysOfWhatItIsAndItsNumber(t *testing.T) {
	s := of(t, "pale.malt", sheet.Options{Start: start, Note: "maltwright note 26-01"})
	d := pdftest.Read(t, written(t, s))
	require.Greater(t, len(d.Pages), 3)
	for i, page := range d.Pages {
		all := page.All()
		assert.Contains(t, all, s.Batch+"\n")
		assert.Contains(t, all, s.Pages[i].Of+"\n")
		assert.Contains(t, all, "page "+itoa(i+1)+" of "+itoa(len(d.Pages))+"\n")
		assert.Contains(t, all, "at the computer: maltwright note 26-01 …\n")
	}
}

func itoa(n int) string {
	return strings.TrimLeft(string([]byte{byte('0' + n/10), byte('0' + n%10)}), "0")
}

// Legible at arm's length with wet glasses: what is read has 11 points, small print 9, and
// a box to write into is 12 mm tall and wide.
func TestLettersAndBoxesAreLarge(t *testing.T) {
	s := of(t, "pale.malt", sheet.Options{Start: start})
	d := pdftest.Read(t, written(t, s))
	boxes, clocks := 0, 0
	for i, page := range d.Pages {
		for _, x := range page.Texts {
			assert.GreaterOrEqual(t, x.Size, 9.0, "page %d: %q", i+1, x.Words)
			if x.Size >= 16 && strings.Contains(x.Words, ":") {
				clocks++
			}
		}
		for _, l := range page.Lines {
			wide, tall, ok := l.Upright()
			if !ok {
				continue
			}
			boxes++
			assert.InDelta(t, sheet.BoxTall, tall, 0.02)
			assert.GreaterOrEqual(t, tall, 12.0)
			if wide < 12 { // a box to tick, of the count
				assert.InDelta(t, sheet.TickWide, wide, 0.02)
			}
			assert.GreaterOrEqual(t, l.Thick, 0.3)
		}
	}
	assert.Greater(t, boxes, 60)
	visits := 0
	for _, page := range s.Pages {
		for _, b := range page.Blocks {
			if v, is := b.(sheet.Visit); is && v.When.Clock != "" {
				visits++
			}
		}
	}
	assert.Equal(t, visits, clocks)
}

// All that the sheet says is on the paper, on its page: what poppler's pdftotext finds, where
// that is installed, is looked through, whatever way lines were broken.
func TestOtherReadersFindTheText(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	s := of(t, "pale.malt", sheet.Options{Start: start})
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	require.NoError(t, os.WriteFile(path, written(t, s), 0o600))
	out, err := exec.Command("pdftotext", "-enc", "UTF-8", path, "-").CombinedOutput()
	require.NoError(t, err, string(out))
	pages := strings.Split(strings.TrimRight(string(out), "\f"), "\f")
	require.Len(t, pages, len(s.Pages))
	for i, page := range s.Pages {
		found := words(pages[i])
		for _, b := range page.Blocks {
			if v, is := b.(sheet.Visit); is {
				for _, do := range append(v.Do, v.Expect...) {
					for w := range words(do) {
						assert.Contains(t, found, w, "page %d: %q", i+1, do)
					}
				}
			}
		}
	}
}

func words(text string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(text) {
		set[w] = true
	}
	return set
}

func BenchmarkSheet(b *testing.B) {
	s := of(b, "pale.malt", sheet.Options{Start: start})
	for b.Loop() {
		written(b, s)
	}
	b.ReportMetric(float64(len(written(b, s))), "bytes")
}
