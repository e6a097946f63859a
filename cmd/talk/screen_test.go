package talk

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// sheet is a terminal as far as a screen makes use of one: its lines, and where the cursor stands.
type sheet struct {
	t         *testing.T
	width     int
	lines     []string
	row, from int // from is the first row that is in the window
	height    int
	told      []string // all that is neither text nor a way
}

var sent = regexp.MustCompile("^(?:\x1b\\[([?0-9]*)([A-Za-z])|\r|\n|[^\x1b\r\n]+)")

func (s *sheet) Write(p []byte) (int, error) {
	col := 0
	for text := string(p); text != ""; {
		m := sent.FindStringSubmatch(text)
		if !assert.NotNil(s.t, m, "%q", text) {
			break
		}
		text = text[len(m[0]):]
		for s.row >= len(s.lines) {
			s.lines = append(s.lines, "")
		}
		switch n, _ := strconv.Atoi(m[1]); {
		case m[2] == "A":
			s.row = max(s.from, s.row-n)
		case m[2] == "K":
			s.lines[s.row] = ""
		case m[2] == "J":
			assert.Zero(s.t, col)
			s.lines = append(s.lines[:s.row:s.row], "")
		case m[2] == "h", m[2] == "l":
			s.told = append(s.told, m[1]+m[2])
		case m[2] != "":
		case m[0] == "\r":
			col = 0
		case m[0] == "\n":
			if s.row++; s.row >= s.from+s.height {
				s.from++
			}
		default:
			signs := []rune(s.lines[s.row])
			assert.Len(s.t, signs, col, "text goes to an end of a line")
			s.lines[s.row] += m[0]
			col = len([]rune(s.lines[s.row]))
			assert.LessOrEqual(s.t, col, s.width)
		}
	}
	return len(p), nil
}

func newSheet(t *testing.T, width, height int) (*sheet, *screen) {
	s := &sheet{t: t, width: width, height: height, lines: []string{"before"}, row: 1}
	to := &screen{out: s, looks: coloured}
	to.size(width, height)
	return s, to
}

func TestABlockIsPaintedInPlace(t *testing.T) {
	s, to := newSheet(t, 10, 5)
	to.show([]string{bold("Which?"), "* one", "  two"})
	to.show([]string{bold("Which?"), red("a full line, and more")})
	assert.Equal(t, []string{"before", "Which?", "a full lin"}, s.lines)
	to.leave("Which? one\n")
	to.show([]string{"next"})
	assert.Equal(t, []string{"before", "Which? one", "next"}, s.lines)
	to.close()
	assert.Equal(t, []string{"before", "Which? one", ""}, s.lines)
	assert.Equal(t, []string{"?25l", "?2004h", "?2004l", "?25h"}, s.told)
	to.close()
	assert.Len(t, s.told, 4)
}

func TestABlockThatIsTooHighShowsItsEnd(t *testing.T) {
	s, to := newSheet(t, 10, 3)
	for range 3 {
		to.show([]string{"1", "2", "3", "4", "5"})
		assert.Equal(t, []string{"before", "3", "4", "5"}, s.lines)
	}
}

// A window that becomes narrower breaks the lines that stand in it.
func TestABlockIsFoundAgainInANarrowerWindow(t *testing.T) {
	s, to := newSheet(t, 10, 6)
	to.show([]string{"0123456789", "abc", "last"})
	s.lines, s.row, s.width = []string{"before", "01234", "56789", "abc", "last"}, 4, 5
	to.size(5, 6)
	to.show([]string{"01234", "abc"})
	assert.Equal(t, []string{"before", "01234", "abc"}, s.lines)
}

func TestLooksOfATerminal(t *testing.T) {
	line := red("no") + bold("b")
	for _, c := range []struct{ term, noColour, want string }{
		{"xterm", "", line},
		{"xterm", "1", "no\x1b[0m" + bold("b")},
		{"dumb", "", "nob"},
	} {
		env := map[string]string{"TERM": c.term, "NO_COLOR": c.noColour}
		assert.Equal(t, c.want, looksOf(func(name string) string { return env[name] }).Replace(line))
	}
	assert.Equal(t, "\x1b[1mwid\x1b[0m", cut(bold("wide"), 3))
	assert.Equal(t, "麦", cut("麦芽", 3))
	assert.Equal(t, 4, columns(strings.Repeat(reversed("麦"), 2)))
}
