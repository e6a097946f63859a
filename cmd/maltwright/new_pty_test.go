package main

import (
	"bytes"
	"encoding/json"
	"io"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/founding"
)

// terminal is the program on a terminal of its own.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	tty  *os.File
	mu   sync.Mutex
	said bytes.Buffer // all that the program wrote since the last key
	done chan error
}

// hung is how long a test waits for what does not come; it is no measure of speed.
const hung = time.Minute

// onTerminal starts the program on a terminal of so many columns, in a folder.
func onTerminal(t *testing.T, folder string, columns uint16, args ...string) *terminal {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	link := filepath.Join(t.TempDir(), "maltwright") // by its name the test's own program is the command; see TestMain
	if err := os.Symlink(self, link); err != nil {
		t.Skipf("no links here: %v", err)
	}
	s := &terminal{t: t, cmd: exec.Command(link, args...), done: make(chan error, 1)}
	s.cmd.Dir = folder
	s.cmd.Env = append(os.Environ(), "TERM=xterm", "TZ=UTC", "XDG_CACHE_HOME="+filepath.Join(folder, ".cache"))
	if s.tty, err = pty.StartWithSize(s.cmd, &pty.Winsize{Rows: 24, Cols: columns}); err != nil {
		t.Skipf("no pseudo-terminal here: %v", err)
	}
	t.Cleanup(func() { s.tty.Close(); _ = s.cmd.Process.Kill() })
	read := make(chan struct{})
	go func() {
		defer close(read)
		for buf := make([]byte, 4096); ; {
			n, err := s.tty.Read(buf)
			s.mu.Lock()
			s.said.Write(buf[:n])
			s.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	go func() { <-read; s.done <- s.cmd.Wait() }()
	return s
}

// escapes are what a program sends to a terminal beside text.
var escapes = regexp.MustCompile("\x1b\\[[0-9;?<>=]*[ -/]*[@-~]|\x1b\\][^\x07\x1b]*(?:\x07|\x1b\\\\)|\x1b[@-Z=>\\\\^_]")

// squeezed is a text without blanks, ends of lines and what is no text.
func squeezed(text string) string {
	return strings.Join(strings.Fields(escapes.ReplaceAllString(text, "")), "")
}

// sees waits until a text stands on the screen that was not there at the last key.
func (s *terminal) sees(text string) {
	s.t.Helper()
	want := squeezed(text)
	for end := time.Now().Add(hung); ; time.Sleep(5 * time.Millisecond) {
		s.mu.Lock()
		now := s.said.String()
		s.mu.Unlock()
		if strings.Contains(squeezed(now), want) {
			return
		}
		if time.Now().After(end) {
			require.Failf(s.t, "it does not come", "%q in\n%s", text, escapes.ReplaceAllString(now, ""))
		}
	}
}

// types sends keys.
func (s *terminal) types(keys string) {
	s.t.Helper()
	s.mu.Lock()
	s.said.Reset()
	s.mu.Unlock()
	_, err := io.WriteString(s.tty, keys)
	require.NoError(s.t, err)
}

// ends waits for the program and gives its exit code.
func (s *terminal) ends() int {
	s.t.Helper()
	select {
	case <-s.done:
		return s.cmd.ProcessState.ExitCode()
	case <-time.After(hung):
		require.Fail(s.t, "it does not end")
		return 0
	}
}

const (
	keyUp     = "\x1b[A"
	keyDown   = "\x1b[B"
	keyEnter  = "\r"
	keyEscape = "\x1b"
	keyCtrlC  = "\x03"
)

// answers types what one question wants, a choice by the arrow keys, everything else in words, and
// sees the line that is left of it.
func (s *terminal) answers(q founding.Question, text, taken string) {
	s.t.Helper()
	keys := text
	if q.Kind == founding.OneOf {
		key, times := keyDown, choiceOf(q, text)-choiceOf(q, q.Usual)
		if times < 0 {
			key, times = keyUp, -times
		}
		keys = strings.Repeat(key, times)
	}
	if taken == founding.DontKnow {
		taken = "" // the usual value stands there, or that it is not known
	}
	s.types(keys + keyEnter)
	s.sees(q.Ask + " " + taken)
}

// choiceOf is the number of a choice. One that is not known stands behind the others.
func choiceOf(q founding.Question, word string) int {
	if i := slices.IndexFunc(q.Choices, func(c founding.Choice) bool { return c.Word == word }); i >= 0 {
		return i
	}
	return len(q.Choices)
}

// keptIn tells whether a word stands in what was put into the cache of a folder.
func keptIn(folder, word string) (is bool) {
	_ = filepath.WalkDir(filepath.Join(folder, ".cache"), func(path string, _ fs.DirEntry, _ error) error {
		text, _ := os.ReadFile(path)
		is = is || strings.Contains(string(text), word)
		return nil
	})
	return is
}

// converses answers so many of the questions that are open. What is not given is not known,
// which some say by Enter alone.
func (s *terminal) converses(a, given founding.Answers, most int) {
	s.t.Helper()
	for range most {
		q, open := founding.Next(a, founding.There{})
		if !open {
			return
		}
		typed := given[q.Key]
		means := typed
		switch {
		case typed == "" && q.Kind == founding.OneOf:
			typed, means = q.Usual, q.Usual
		case typed == "" && q.FindOut == "":
			typed, means = founding.DontKnow, founding.DontKnow
		case typed == "":
			means = founding.DontKnow
		}
		taken, err := q.Take(means)
		require.NoError(s.t, err, q.Key)
		s.answers(q, typed, taken)
		a[q.Key] = taken
	}
}

const all = 100 // more questions than there are

// homes are the houses that are begun in the test.
var homes = []struct {
	name    string
	answers founding.Answers
	charge  float64 // kg
}{
	{"oven in lb", founding.Answers{"units": founding.Pounds, "house": "Porch", "charge": "9 lb", "moisture": "12 %"}, 4.082},
	{"dehydrator and oven in lb", founding.Answers{"units": founding.Pounds, "charge": "8 lb", "dryer 1": founding.Dehydrator, "dryer 2": founding.Oven}, 3.629},
	{"oven in kg", founding.Answers{"units": founding.Metric, "charge": "4", "moisture": "13.2", "germination": "97 of 100"}, 4},
	{"floor and fire in kg", founding.Answers{"units": founding.Metric, "house": "Barn", "charge": "80 kg", "grows": founding.Floor, "dryer 1": founding.FireKiln}, 80},
	{"box in kg", founding.Answers{"units": founding.Metric, "charge": "100 kg", "grows": founding.Box, "dryer 1": founding.BoxKiln, "air": "15 to 18"}, 100},
	{"drum in kg", founding.Answers{"units": founding.Metric, "charge": "60 kg", "grows": founding.Drum, "dryer 1": founding.TrayKiln, "malt": "pilsner"}, 60},
}

func TestAHouseIsBegunOnATerminal(t *testing.T) {
	for i, home := range homes {
		t.Run(home.name, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			s := onTerminal(t, folder, []uint16{80, 40}[i%2], "new", "house")
			a := founding.Answers{}
			given := founding.Answers{"treated": "no"}
			maps.Copy(given, home.answers)
			s.sees("arrows and Enter")
			s.converses(a, given, all)
			s.sees("Write these files?arrows and Enter")
			s.types(keyEnter)
			s.sees("maltwright begin house/")
			assert.Equal(t, ExitClean, s.ends())

			made, err := founding.Write(t.Context(), a, founding.There{})
			require.NoError(t, err)
			assert.Empty(t, made.WhyNot)
			for _, file := range made.Files {
				text, err := os.ReadFile(filepath.Join(folder, "house", file.Name))
				require.NoError(t, err)
				assert.Equal(t, string(file.Text), string(text))
			}
			believable(t, filepath.Join(folder, "house"), made.In, home.charge)
		})
	}
}

// believable asks that check passes a file without a caution, and that its forecast is that of a
// pale malt: steeped to 42 to 47 % in one to three days, ready in 6 to 14 days at no more than 5 %,
// of 78 to 88 % of the weight of the grain, with a dry matter that is 6 to 14 % less (common practice).
func believable(t *testing.T, folder, name string, charge float64) {
	t.Helper()
	code, out, errs := runIn(folder, "check", "--fail-on", "caution", name)
	assert.Equal(t, ExitClean, code, out+errs)
	code, out, errs = runIn(folder, "forecast", "--format", "json", name)
	require.Equal(t, ExitClean, code, errs)
	var f struct {
		Charge   float64 `json:"charge_kg"`
		Complete bool    `json:"complete"`
		Totals   struct {
			SteepHours float64 `json:"steep_out_h"`
			SteepOut   float64 `json:"steep_out_moisture_wb_pct"`
			Hours      float64 `json:"total_h"`
			Final      float64 `json:"final_moisture_wb_pct"`
			Yield      float64 `json:"yield_as_is_pct"`
			Lost       float64 `json:"dry_matter_lost_pct"`
		} `json:"totals"`
	}
	require.NoError(t, json.Unmarshal([]byte(out), &f), out)
	assert.True(t, f.Complete)
	assert.InDelta(t, charge, f.Charge, 0.001, "all the grain that was said is malted")
	for _, c := range []struct {
		what            string
		is, least, most float64
	}{
		{"hours in the steep", f.Totals.SteepHours, 24, 72},
		{"moisture at steep-out, %", f.Totals.SteepOut, 42, 47},
		{"hours in all", f.Totals.Hours, 6 * 24, 14 * 24},
		{"moisture of the malt, %", f.Totals.Final, 2, 5.05},
		{"yield, %", f.Totals.Yield, 78, 88},
		{"dry matter lost, %", f.Totals.Lost, 6, 14},
	} {
		assert.GreaterOrEqual(t, c.is, c.least, c.what)
		assert.LessOrEqual(t, c.is, c.most, c.what)
	}
}

// begun is what a conversation has left in the folder, beside what it keeps of the answers.
func begun(t *testing.T, folder string) (names []string) {
	t.Helper()
	list, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range list {
		if e.Name() != ".cache" {
			names = append(names, e.Name())
		}
	}
	return names
}

func TestWhatStopsAConversationLosesNothing(t *testing.T) {
	for _, how := range []string{"Ctrl-C", "the window is closed", "killed", "Ctrl-C of plain lines"} {
		t.Run(how, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			args := []string{"new", "house"}
			if strings.Contains(how, "plain") {
				args = append(args, "--plain")
			}
			s := onTerminal(t, folder, 80, args...)
			given := founding.Answers{"units": founding.Pounds, "house": "Porch", "grain": "rye"}
			a := founding.Answers{}
			if len(args) > 2 {
				for _, q := range []string{"units", "house", "grain"} {
					s.sees("] >")
					s.types(given[q] + keyEnter)
				}
				s.sees("this lot")
			} else {
				s.sees("arrows and Enter")
				s.converses(a, given, 3)
				require.Eventually(t, func() bool { return keptIn(folder, "rye") }, hung, 5*time.Millisecond, "the third answer is kept")
			}
			switch how {
			case "killed":
				require.NoError(t, s.cmd.Process.Kill())
				s.ends()
			case "the window is closed":
				require.NoError(t, s.cmd.Process.Signal(syscall.SIGHUP))
				s.ends()
			default:
				s.types(keyCtrlC)
				s.sees("stopped; nothing is written, and your 3 answers are kept: maltwright new house goes on from there")
				assert.Equal(t, ExitFailed, s.ends())
			}
			assert.Empty(t, begun(t, folder))

			s = onTerminal(t, folder, 80, "new", "house")
			s.sees("3 answers were given here before. Go on from there?arrows and Enter")
			s.types(keyEnter)
			s.sees("Go on from there? yes")
			s.types(keyEscape)
			s.sees("* rye")
			s.types(keyEnter)
			s.sees("Which grain is it? rye")
			maps.Copy(a, given)
			s.converses(a, founding.Answers{"treated": "no"}, all)
			s.sees("Write these files?arrows and Enter")
			s.types(keyEnter)
			s.sees("maltwright begin house/")
			s.ends()
			assert.Equal(t, []string{"house"}, begun(t, folder))

			s = onTerminal(t, folder, 80, "new", "house")
			s.sees("What shall be added to")
			s.types(keyCtrlC)
			s.sees("stopped; nothing is written")
			s.ends()
		})
	}
}

func TestHelpAndRefusalsOnATerminal(t *testing.T) {
	s := onTerminal(t, t.TempDir(), 40, "new", "house")
	s.sees("Which units does your house read?arrows and Enter")
	s.types("?")
	s.sees("You may still answer with another unit")
	s.types(keyEscape) // there is nothing to go back to
	s.sees("arrows and Enter; ? help")
	s.types("2" + keyEnter)
	s.sees("Which units does your house read? °F and lb")
	s.types(`a "house"` + keyEnter)
	s.sees("holds no quotes")
	s.types("\x15back" + keyEnter)
	s.sees("* °F and lb")
	s.types(keyCtrlC)
	assert.Equal(t, ExitFailed, s.ends())
}
