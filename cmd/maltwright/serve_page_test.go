package main

import (
	"net/netip"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
	"maltwright/lang/source/golden"
)

const pageOfDocs = "../../docs/page.md"

// fixedTokens are tokens that are always the same.
var fixedTokens = guard.Options{Write: "ABCDEFGHIJKLMNOPQRSTUVWXYZ", Read: "BCDEFGHIJKLMNOPQRSTUVWXYZA", Calendar: "CDEFGHIJKLMNOPQRSTUVWXYZAB"}

// servedScreen is what the command prints of a place on a terminal so wide; 0 is no terminal.
func servedScreen(p place, width int) string {
	var out strings.Builder
	w := World{Out: &out, Err: &out, Terminal: width > 0, Width: width, Env: func(name string) string { return map[string]string{"NO_COLOR": "1"}[name] },
		clock: func() time.Time { return time.Date(2026, 3, 6, 9, 0, 0, 0, time.UTC) }}
	w.tellServed(p, fixedTokens, false)
	return out.String()
}

var (
	here      = place{folder: "/home/malt/loft", address: loopback, host: "127.0.0.1", port: 54321}
	inTheWLAN = place{folder: "/home/malt/loft", address: netip.MustParseAddr("192.168.1.20"), host: "192.168.1.20", port: 54321, until: time.Date(2026, 3, 6, 21, 0, 0, 0, time.UTC)}
)

func TestTheAddressesAndTheCodeFitTheTerminal(t *testing.T) {
	for name, text := range map[string]string{
		"serve-80": servedScreen(here, 80), "serve-40": servedScreen(here, 40),
		"serve-lan-80": servedScreen(inTheWLAN, 80), "serve-lan-40": servedScreen(inTheWLAN, 40),
	} {
		golden.File(t, filepath.Join("testdata/screens", name+".txt"), text)
		width := map[bool]int{true: 80, false: 40}[strings.HasSuffix(name, "80")]
		for _, line := range strings.Split(text, "\n") {
			if !strings.Contains(line, "http") { // an address stays whole
				assert.LessOrEqual(t, len([]rune(line)), width, "%s: %s", name, line)
			}
		}
	}
	lan := servedScreen(inTheWLAN, 40)
	assert.Contains(t, lan, "▀")
	_, below, _ := strings.Cut(lan, "▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀▀\n")
	assert.LessOrEqual(t, 19+strings.Count(below, "\n"), screenLines, "the code stands whole on a screen")
	assert.NotContains(t, servedScreen(inTheWLAN, 0), "▀", "to a file there is no code")
	assert.Contains(t, servedScreen(inTheWLAN, 30), "this terminal has 30")
	far := inTheWLAN
	far.address = netip.MustParseAddr("203.0.113.9")
	assert.Contains(t, servedScreen(far, 80), "the whole internet may reach it")
}

func TestThePageOfTheDocsIsTrue(t *testing.T) {
	golden.Between(t, pageOfDocs, "<!-- serve: begin (made by go test ./cmd/maltwright with MALTWRIGHT_UPDATE=1) -->\n", "<!-- serve: end -->", "```text\n"+servedScreen(here, 80)+"```\n")
	page, err := os.ReadFile(pageOfDocs)
	require.NoError(t, err)

	t.Run("every test of the table is there", func(t *testing.T) {
		there := testNames(t)
		named := regexp.MustCompile("`(Test[A-Za-z]+)`").FindAllStringSubmatch(string(page), -1)
		assert.Greater(t, len(named), 20)
		for _, m := range named {
			assert.True(t, there[m[1]], "no test is called %s", m[1])
		}
	})
	t.Run("its flags are those of the command", func(t *testing.T) {
		_, help, _ := runIn(t.TempDir(), "serve", "--help")
		for _, m := range regexp.MustCompile("[` ](--[a-z]+[a-z-]*)").FindAllStringSubmatch(string(page), -1) {
			assert.True(t, strings.Contains(help, m[1]), m[1])
		}
	})
	t.Run("the certificate that it makes is taken", func(t *testing.T) {
		line := regexp.MustCompile(`(?m)^openssl (.*)$`).FindStringSubmatch(string(page))
		require.NotNil(t, line)
		if _, err := exec.LookPath("openssl"); err != nil {
			t.Skip("openssl is not installed: the certificate of the page is NOT TESTED")
		}
		own, folder := ownAddress(t).String(), browsertest.Folder(t, "home")
		cmd := exec.Command("openssl", strings.Fields(strings.ReplaceAll(line[1], "192.168.1.20", own))...)
		cmd.Dir = folder
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
		s := servingFolder(t, folder, nil, "--lan", own, "--cert", "malt.pem", "--key", "malt.key")
		assert.Contains(t, s.page, "https://")
	})
}

// testNames are the names of the tests of the page and its command.
func testNames(t testing.TB) map[string]bool {
	t.Helper()
	names := map[string]bool{}
	for _, pattern := range []string{"*_test.go", "../serve/*_test.go", "../serve/*/*_test.go"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, m := range regexp.MustCompile(`(?m)^func (Test[A-Za-z0-9]+)\(`).FindAllStringSubmatch(string(text), -1) {
				names[m[1]] = true
			}
		}
	}
	return names
}
