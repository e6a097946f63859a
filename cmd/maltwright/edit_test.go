package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/rewrite"
	"maltwright/lang/source/golden"
)

// loud is a buffer that several may write to.
type loud struct {
	mutex sync.Mutex
	text  bytes.Buffer
}

func (l *loud) Write(p []byte) (int, error) {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	return l.text.Write(p)
}

func (l *loud) String() string {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	return l.text.String()
}

// inFolder is a world in a folder that tells everything to one buffer.
func inFolder(folder string, said *loud, o rewrite.Options) World {
	return World{Out: said, Err: said, Folder: folder, Env: func(string) string { return "" }, writing: o}
}

// untidy makes a record that tidy and check --mend have something to do with, time after
// time: a line laid out otherwise, and a unit misspelt.
func untidy(text string) string {
	return text + "site   \"Other loft\" { air 8 to 15 °C }\nvessel \"new tub\" { holds 25 litter }\n"
}

// writers are the commands that write a record beside note.
var writers = map[string][]string{
	"tidy":         {"tidy", "batch.malt"},
	"check --mend": {"check", "--mend", "--no-forecast", "batch.malt"},
	"merge":        {"merge", "base.malt", "batch.malt", "theirs.malt"},
}

// beside is a record that each of the writers would change.
func beside(t *testing.T) (folder, file string) {
	t.Helper()
	folder, file = newRecord(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	now := untidy(string(text))
	for name, text := range map[string]string{
		"batch.malt": now, "base.malt": now, "theirs.malt": strings.Replace(now, "8 to 15", "9 to 15", 1),
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	return folder, file
}

// While a command has its text made and not yet in place, somebody notes a reading. It
// has to wait, it says so, and both are there at the end.
func TestAReadingThatIsNotedWhileAnotherCommandSyncsStays(t *testing.T) {
	for name, args := range writers {
		t.Run(name, func(t *testing.T) {
			folder, file := beside(t)
			var noted sync.WaitGroup
			var said, heard loud
			slow := rewrite.Options{Sync: func(f *os.File) error {
				waiting := make(chan struct{})
				o := rewrite.Options{Say: time.Millisecond, Waiting: sync.OnceFunc(func() { close(waiting) })}
				noted.Go(func() {
					assert.Equal(t, ExitClean, Main(inFolder(folder, &said, o), []string{"note", "batch.malt", weighing(1)}), said.String())
				})
				select {
				case <-waiting:
				case <-time.After(20 * time.Second):
					t.Error("note did not wait")
				}
				return f.Sync()
			}}
			code := Main(inFolder(folder, &heard, slow), args)
			noted.Wait()
			assert.Less(t, code, ExitUsage, heard.String())
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Equal(t, 1, countOf(text, 1), "the reading is there\n%s", text)
			assert.NotContains(t, string(text), untidy(""), "and what the command did")
			assert.Contains(t, said.String(), "maltwright: waiting for another maltwright that is writing batch.malt\n")
			left, err := filepath.Glob(filepath.Join(folder, ".*"))
			require.NoError(t, err)
			assert.Empty(t, left)
		})
	}
}

// What was read before the lock was taken is old when a reading came in between.
func TestACommandThatWaitedGoesByWhatStandsThereThen(t *testing.T) {
	for name, args := range writers {
		t.Run(name, func(t *testing.T) {
			folder, file := beside(t)
			var other sync.WaitGroup
			var said, heard loud
			slow := rewrite.Options{Sync: func(f *os.File) error {
				waiting := make(chan struct{})
				o := rewrite.Options{Say: time.Millisecond, Waiting: sync.OnceFunc(func() { close(waiting) })}
				other.Go(func() { assert.Less(t, Main(inFolder(folder, &heard, o), args), ExitUsage, heard.String()) })
				select {
				case <-waiting:
				case <-time.After(20 * time.Second):
					t.Error(name + " did not wait")
				}
				return f.Sync()
			}}
			assert.Equal(t, ExitClean, Main(inFolder(folder, &said, slow), []string{"note", "batch.malt", weighing(1)}), said.String())
			other.Wait()
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Equal(t, 1, countOf(text, 1), "%s", text)
			assert.NotContains(t, string(text), untidy(""), "the command did its work as well:\n%s", heard.String())
		})
	}
}

// Many readings, and a command that never stops to write the same file.
func TestNoReadingIsLostBesideAnyCommand(t *testing.T) {
	for name, args := range writers {
		t.Run(name, func(t *testing.T) {
			folder, file := beside(t)
			readings := 8
			if golden.Long() {
				readings = 36
			}
			var said, heard loud
			done := make(chan struct{})
			var wait sync.WaitGroup
			wait.Go(func() {
				for i := 0; ; i++ {
					select {
					case <-done:
						return
					default:
					}
					// somebody with an editor of ours spoils it again, under the lock
					assert.NoError(t, rewrite.Edit(file, rewrite.Options{}, func(old []byte) ([]byte, error) {
						kept, _, _ := strings.Cut(string(old), "site ")
						return []byte(untidy(kept)), nil
					}))
					assert.Less(t, Main(inFolder(folder, &heard, rewrite.Options{}), args), ExitUsage, heard.String())
				}
			})
			for i := range readings {
				assert.Equal(t, ExitClean, Main(inFolder(folder, &said, rewrite.Options{}), []string{"note", "batch.malt", weighing(i)}), said.String())
			}
			close(done)
			wait.Wait()
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			for i := range readings {
				assert.Equal(t, 1, countOf(text, i), weighing(i))
			}
		})
	}
}
