package folder

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const begun = "use \"pale.malt\"\n\nbatch \"26-06\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n}\n"

// shed is a folder with a record that was begun, without its process: of words alone nothing is forecast.
func shed(t interface {
	require.TestingT
	Helper()
}, dir string) string {
	t.Helper()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	path := filepath.Join(dir, "26-06.malt")
	require.NoError(t, os.WriteFile(path, []byte(begun), 0o644))
	return path
}

// faltering keeps what was sent, and can be ended in the middle, as a program is.
type faltering struct {
	memory
	ends bool // before it can put down that the reading was written
}

var errEnded = errors.New("ended")

func (f *faltering) Put(key string, data []byte) {
	if f.ends && strings.Contains(string(data), `"Done":true`) {
		return
	}
	f.memory.Put(key, data)
}

// sendingOf is the way of one reading to the record in a test.
type sendingOf struct {
	x     Reading
	heard bool // that it is there
}

func lineOfReading(minute int) string { return fmt.Sprintf("turned at 2026-03-06 08:%02d", minute) }

// Whatever is lost on the way, ended in between or sent again, by whichever of two writers, and whatever a
// third writes by command in between: each reading stands in the record once.
func TestEveryReadingIsWrittenOnce(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		path := shed(t, dir)
		kept := &faltering{}
		clock := func() time.Time { return time.Date(2026, 3, 6, 12, 0, 0, 0, time.Local) }
		full := false
		writer := Clerk{Options: Options{Clock: clock}, own: kept}
		writer.Writing.Sync = func(*os.File) error {
			if full {
				return errEnded
			}
			return nil
		}
		record := func() Record {
			f, err := Read(path, dir)
			require.NoError(t, err)
			f.Name = "26-06.malt"
			return Record{File: f}
		}
		var list []*sendingOf
		byCommand := map[string]int{}
		send := func(s *sendingOf) {
			if a, there := writer.there(record(), s.x, true); there {
				s.heard = s.heard || a.There
				return
			}
			a, err := writer.Write(record(), s.x, Answer{})
			if err == nil && !kept.ends {
				s.heard = a.There || a.Written
			}
		}
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			kept.ends, full = false, false
			switch rapid.SampledFrom([]string{"new", "again", "command", "lost"}).Draw(t, "step") {
			case "new":
				list = append(list, &sendingOf{x: Reading{Words: []string{lineOfReading(rapid.IntRange(1, 2).Draw(t, "minute"))}, Own: fmt.Sprint(len(list))}})
				fallthrough
			case "again":
				if len(list) == 0 {
					continue
				}
				s := list[rapid.IntRange(0, len(list)-1).Draw(t, "which")]
				switch rapid.IntRange(0, 3).Draw(t, "fate") {
				case 0:
					kept.ends = true // behind the writing, before it is put down
				case 1:
					full = true // before the writing
				}
				send(s)
			case "command":
				line := lineOfReading(rapid.IntRange(1, 2).Draw(t, "minute"))
				_, err := writer.Write(record(), Reading{Words: []string{line}}, Answer{})
				require.NoError(t, err)
				byCommand[line]++
			}
		}
		kept.ends, full = false, false
		want := map[string]int{}
		for line, n := range byCommand {
			want[line] = n
		}
		for _, s := range list {
			send(s)
			send(s)
			assert.True(t, s.heard)
			want[s.x.Words[0]]++
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for minute := 1; minute <= 2; minute++ {
			line := lineOfReading(minute)
			got := strings.Count(strings.Join(strings.Fields(string(text)), " "), line)
			assert.Equal(t, want[line], got, "%s\n%s", line, text)
		}
	})
}

// Several send at once, each its reading several times, while others note by command.
func TestManySendersAtOnce(t *testing.T) {
	dir := t.TempDir()
	path := shed(t, dir)
	c := Clerk{Options: Options{Clock: func() time.Time { return time.Date(2026, 3, 6, 12, 0, 0, 0, time.Local) }, Cache: t.TempDir()}}
	f, err := Read(path, dir)
	require.NoError(t, err)
	var wait sync.WaitGroup
	for sender := range 4 {
		for range 3 {
			wait.Go(func() {
				for k := range 3 {
					x := Reading{Words: []string{lineOfReading(sender)}, Own: fmt.Sprint(sender, "-", k)}
					_, err := c.Write(Record{File: f}, x, Answer{})
					assert.NoError(t, err)
				}
			})
		}
		wait.Go(func() {
			_, err := c.Write(Record{File: f}, Reading{Words: []string{lineOfReading(sender)}}, Answer{})
			assert.NoError(t, err)
		})
	}
	wait.Wait()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	for sender := range 4 {
		assert.Equal(t, 3+1, strings.Count(strings.Join(strings.Fields(string(text)), " "), lineOfReading(sender)))
	}
}

// What was sent is known for days, and then no more.
func TestWhatWasSentIsForgottenInTheEnd(t *testing.T) {
	dir, cache := t.TempDir(), t.TempDir()
	path := shed(t, dir)
	c := Clerk{Options: Options{Clock: func() time.Time { return time.Date(2026, 3, 6, 12, 0, 0, 0, time.Local) }, Cache: cache}}
	f, err := Read(path, dir)
	require.NoError(t, err)
	_, err = c.Write(Record{File: f}, Reading{Words: []string{lineOfReading(1)}, Own: "a"}, Answer{})
	require.NoError(t, err)
	kept, err := filepath.Glob(filepath.Join(cache, "sent", "*.kept"))
	require.NoError(t, err)
	require.NotEmpty(t, kept)
	long := time.Now().Add(-sentFor - time.Hour)
	for _, name := range kept {
		require.NoError(t, os.Chtimes(name, long, long))
	}
	c.sendings().Put("other", []byte("x"))
	for _, name := range kept {
		assert.NoFileExists(t, name)
	}
}

// Where nothing can be kept on the disk, as on a full one, a reading that is sent again is known all the same while the program runs.
func TestWithoutRoomForWhatWasSentItIsWrittenOnce(t *testing.T) {
	dir := t.TempDir()
	path := shed(t, dir)
	cache := filepath.Join(dir, "no folder")
	require.NoError(t, os.WriteFile(cache, nil, 0o600))
	d, err := Open(dir, Options{Clock: func() time.Time { return time.Date(2026, 3, 6, 12, 0, 0, 0, time.Local) }, Cache: cache})
	require.NoError(t, err)
	defer d.Close()
	state, err := d.Look(t.Context(), d.clerk.now())
	require.NoError(t, err)
	for range 2 {
		_, err := d.Note(t.Context(), state.Underway[0].ID, Reading{Words: []string{lineOfReading(1)}, Own: "a"}, true)
		require.NoError(t, err)
	}
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, 1, strings.Count(strings.Join(strings.Fields(string(text)), " "), lineOfReading(1)))
}

// A folder is swapped for a link to another one between the look at a record and the writing.
func TestNothingIsWrittenThroughALinkThatCameBetween(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "loft"), 0o755))
	shed(t, filepath.Join(dir, "loft"))
	outside := shed(t, other)
	d, err := Open(dir, Options{Clock: func() time.Time { return time.Date(2026, 3, 6, 12, 0, 0, 0, time.Local) }})
	require.NoError(t, err)
	defer d.Close()
	state, err := d.Look(t.Context(), d.clerk.now())
	require.NoError(t, err)
	r, err := d.record(state.Underway[0].ID)
	require.NoError(t, err)
	require.NoError(t, os.Rename(filepath.Join(dir, "loft"), filepath.Join(dir, "was")))
	if os.Symlink(other, filepath.Join(dir, "loft")) != nil {
		t.Skip("no links here")
	}
	var failed *Failed
	_, err = d.clerk.Write(r, Reading{Words: []string{lineOfReading(1)}}, Answer{})
	require.ErrorAs(t, err, &failed)
	_, err = d.clerk.Undo(r, "", false)
	require.ErrorAs(t, err, &failed)
	text, err := os.ReadFile(outside)
	require.NoError(t, err)
	assert.Equal(t, begun, string(text))
}
