package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A word leads to one command, which there is, and is none itself.
func TestNeighbourWordsLeadToOneCommand(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range neighbours {
		if n.command != "new" {
			assert.True(t, isCommand(n.command), n.command)
		}
		for _, word := range n.written {
			assert.False(t, seen[word], "%s stands twice", word)
			assert.False(t, isCommand(word), "%s is a command", word)
			seen[word] = true
		}
	}
}

// house is a folder with some files of processes and a record.
func house(t *testing.T, files ...string) string {
	t.Helper()
	folder := t.TempDir()
	for _, from := range files {
		text, err := os.ReadFile(filepath.Join("../../examples", from))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, filepath.Base(from)), text, 0o600))
	}
	return folder
}

func TestAnUnknownCommandIsAnsweredWithTheLineToType(t *testing.T) {
	folder := house(t, "pale.malt", "loft.malt", "batches/26-03.malt")
	for line, want := range map[string]string{
		"lint pale.malt":                        "there is no command lint; type: maltwright check pale.malt",
		"validate":                              "there is no command validate; type: maltwright check",
		"simulate pale.malt":                    "there is no command simulate; type: maltwright forecast pale.malt",
		"forcast pale.malt --spread":            "there is no command forcast; type: maltwright forecast pale.malt --spread",
		"Forecast pale.malt":                    "there is no command Forecast; type: maltwright forecast pale.malt",
		"fmt pale.malt":                         "there is no command fmt; type: maltwright tidy pale.malt",
		"diff pale.malt loft.malt":              "there is no command diff; type: maltwright contrast pale.malt loft.malt",
		"log 26-03.malt turned":                 "there is no command log; type: maltwright note 26-03.malt turned",
		"weigh 26-03.malt 7.1 kg":               "there is no command weigh; type: maltwright note 26-03.malt weighed 7.1 kg",
		"calc target 6kg 12% 44%":               "there is no command calc; type: maltwright reckon target 6kg 12% 44%",
		"schedule pale.malt":                    "there is no command schedule; type: maltwright visits pale.malt",
		"status 26-03.malt":                     "there is no command status; type: maltwright follow 26-03.malt",
		"man soak":                              "there is no page of soak; type: maltwright explain soak",
		"pale.malt check --odds":                "the command comes first; type: maltwright check pale.malt --odds",
		"wibble pale.malt":                      "there is no command wibble; maltwright --help lists them",
		"pael.malt":                             "pael.malt: there is no such file; did you mean pale.malt?",
		"check pael.malt":                       "pael.malt: there is no such file; did you mean pale.malt?",
		"forecast . --spread":                   ". is a folder; forecast takes one file, such as: maltwright forecast pale.malt",
		"forecast pale.malt --start":            "--start needs a value behind it; see maltwright forecast --help",
		"tidy":                                  "tidy needs a file, such as: maltwright tidy 26-03.malt; see maltwright tidy --help",
		"reckon target 6 kg 12.4 44":            "12.4 and 44 have no unit; type: maltwright reckon target 6kg 12.4% 44%",
		"reckon target 6 12.4 44 %":             "6 and 12.4 have no unit; type: maltwright reckon target 6kg 12.4% 44%, or maltwright reckon target 6lb 12.4% 44%",
		"reckon weight 9.1 kg --from 6 kg 12.4": "12.4 has no unit; type: maltwright reckon weight 9.1kg --from 6kg 12.4%",
	} {
		code, out, errs := runIn(folder, strings.Fields(line)...)
		assert.Contains(t, []int{ExitUsage, ExitFailed}, code, line)
		assert.Empty(t, out, line)
		assert.Equal(t, "maltwright: "+want+"\n", errs, line)
	}
	code, _, errs := runIn(folder, "simulate", "my pale's.malt")
	assert.Equal(t, ExitUsage, code)
	assert.Equal(t, "maltwright: there is no command simulate; type: maltwright forecast 'my pale'\\''s.malt'\n", errs)
}

func TestAFileAloneIsAnsweredWithWhatCanBeDone(t *testing.T) {
	folder := house(t, "pale.malt", "loft.malt", "batches/26-03.malt")
	for file, want := range map[string][]string{
		"pale.malt":  {"maltwright check pale.malt ", "maltwright forecast pale.malt ", "maltwright begin pale.malt "},
		"Pale":       {"maltwright check pale.malt ", "maltwright forecast pale.malt "},
		"26-03.malt": {"maltwright check 26-03.malt ", "maltwright follow 26-03.malt ", "maltwright note 26-03.malt weighed 7.1 kg "},
	} {
		code, out, errs := runIn(folder, file)
		assert.Equal(t, ExitUsage, code)
		assert.Empty(t, out)
		for _, line := range want {
			assert.Contains(t, errs, line)
		}
	}
}

// The file that is meant is read where it can be one only, and it is said.
func TestAFileThatIsMeantIsRead(t *testing.T) {
	folder := house(t, "pale.malt", "loft.malt")
	for written, read := range map[string]string{"pale": "pale.malt", "Pale.malt": "pale.malt", "PALE": "pale.malt"} {
		code, out, errs := runIn(folder, "check", written)
		assert.Equal(t, ExitClean, code, errs)
		assert.Contains(t, out, "in 1 file")
		assert.Equal(t, "maltwright: there is no file "+written+"; reading "+read+"\n", errs)
	}
	require.NoError(t, os.WriteFile(filepath.Join(folder, "Pale.malt"), nil, 0o600))
	if len(World{Folder: folder}.processFiles("")) == 3 { // the file system tells capitals
		code, _, errs := runIn(folder, "check", "pale")
		assert.Equal(t, ExitFailed, code)
		assert.Contains(t, errs, "pale: there is no such file")
	}
}

func TestCommandsWithoutAFileTakeTheOneOfTheFolder(t *testing.T) {
	folder := house(t, "pale.malt", "loft.malt")
	code, out, errs := runIn(folder, "forecast")
	assert.Equal(t, ExitClean, code)
	assert.Contains(t, out, "Loft pale: pale malt")
	assert.Equal(t, "maltwright: forecast of pale.malt, the one process of this folder\n", errs)
	code, out, _ = runIn(folder, "check")
	assert.Equal(t, ExitClean, code)
	assert.Contains(t, out, "in 2 files")
	code, out, errs = runIn(folder, "begin", "--dry-run", "--at", "2026-03-06", "7", "am")
	assert.Equal(t, ExitClean, code, errs)
	assert.Contains(t, out, "2026-03-06 07:00\n")
	code, _, errs = runIn(folder, "check", "--mend")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "name them, such as: maltwright check --mend ")

	code, _, errs = runIn(folder, "begin", "--at", "2026-03-06", "7", "am")
	require.Equal(t, ExitClean, code, errs)
	records, err := filepath.Glob(filepath.Join(folder, "26-*.malt"))
	require.NoError(t, err)
	require.Len(t, records, 1)
	record := filepath.Base(records[0])
	code, _, errs = runIn(folder, "forecast", record, "--change", "soak 1 to 6 h")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "type: maltwright forecast pale.malt --start 2026-03-06T07:00 --change ")
	code, _, errs = runIn(folder, "forecast", "pale.malt", "--start", "2026-03-06T07:00", "--change", "soak 1 to 6 h")
	assert.Equal(t, ExitClean, code, errs)
	code, out, errs = runIn(folder, "seasons")
	assert.Equal(t, ExitClean, code, errs)
	assert.Contains(t, out, strings.TrimSuffix(record, extension))

	folder = house(t, "pale.malt", "loft.malt", "wheat.malt")
	code, _, errs = runIn(folder, "follow")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "no record of a batch in this folder")
	code, _, errs = runIn(folder, "forecast")
	assert.Equal(t, ExitUsage, code)
	assert.Equal(t, "maltwright: forecast needs to know which file; type: maltwright forecast pale.malt, or maltwright forecast wheat.malt\n", errs)
	code, _, errs = runIn(t.TempDir(), "forecast")
	assert.Equal(t, ExitUsage, code)
	assert.Contains(t, errs, "this folder holds none")
	code, _, errs = runIn(t.TempDir(), "check")
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, errs, "no file ending in .malt below this folder")
}

func TestFlagsMayStandInFront(t *testing.T) {
	for line, want := range map[string]string{
		"--spread forecast pale.malt":        "forecast --spread pale.malt",
		"--start tomorrow 7am forecast pale": "forecast --start tomorrow 7am pale",
		"help forecast":                      "forecast --help",
		"help":                               "--help",
		"-h":                                 "-h",
		"forecast --spread pale.malt":        "forecast --spread pale.malt",
		"-- check":                           "-- check",
		"--format json":                      "--format json",
	} {
		assert.Equal(t, want, strings.Join(ordered(strings.Fields(line)), " "))
	}
	assert.True(t, slices.IsSorted([]int{deep("a"), deep("a/b"), deep("a/b/c")}))
}

// Who names a file to write, where the command writes to standard output, gets the line that makes it.
func TestAFlagForAFileLeadsToTheLineThatWritesIt(t *testing.T) {
	folder := house(t, "loft.malt", "pale.malt")
	for typed, line := range map[string]string{
		"report pale.malt --out r.html":           "maltwright report pale.malt --format html > r.html",
		"chart pale.malt --output=p.svg":          "maltwright chart pale.malt --format svg > p.svg",
		"chart pale.malt -o 'p 1.svg'":            "maltwright chart pale.malt --format svg > 'p 1.svg'",
		"forecast pale.malt --output f.csv":       "maltwright forecast pale.malt --format csv > f.csv",
		"forecast pale.malt --output json":        "maltwright forecast pale.malt --format json",
		"check --format lines pale.malt -o x.txt": "maltwright check --format lines pale.malt > x.txt",
	} {
		code, _, errs := runIn(folder, parted(typed)...)
		assert.Equal(t, ExitUsage, code, typed)
		assert.Contains(t, errs, "; type: "+line+"\n", typed)
	}
}
