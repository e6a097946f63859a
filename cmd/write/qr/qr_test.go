package qr

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const link = "http://192.168.178.120:54321/K/ABCDEFGHIJKLMNOPQRSTUVWXYZ"

func TestALinkFitsANarrowTerminal(t *testing.T) {
	c, err := Of(link)
	require.NoError(t, err)
	assert.Equal(t, 37, c.Columns(), "of 40")
	assert.Equal(t, 19, c.Rows(), "of 24")
	for _, colour := range []bool{false, true} {
		lines := c.Lines(colour)
		require.Len(t, lines, c.Rows())
		for _, line := range lines {
			line = strings.TrimSuffix(strings.TrimPrefix(line, "\x1b[97;40m"), "\x1b[0m")
			assert.Equal(t, c.Columns(), utf8.RuneCountInString(line))
		}
	}
}

// The drawing is read back square by square.
func TestTheDrawingIsTheCode(t *testing.T) {
	c, err := Of(link)
	require.NoError(t, err)
	lines := c.Lines(false)
	black := 0
	for row := -margin; row < c.code.Size+margin; row++ {
		for column := -margin; column < c.code.Size+margin; column++ {
			sign := []rune(lines[(row+margin)/2])[column+margin]
			light := sign == '█' || sign == '▀' && (row+margin)%2 == 0 || sign == '▄' && (row+margin)%2 == 1
			require.Equal(t, c.Black(column, row), !light, "column %d row %d", column, row)
			if !light {
				black++
			}
		}
	}
	assert.Greater(t, black, 300)
	for _, corner := range [][2]int{{0, 0}, {c.code.Size - 7, 0}, {0, c.code.Size - 7}} { // the three squares by which it is found
		for i := range 7 {
			assert.True(t, c.Black(corner[0]+i, corner[1]) && c.Black(corner[0], corner[1]+i))
		}
	}
}

func TestWhatIsNoAddressHasNoCode(t *testing.T) {
	for _, text := range []string{"", "no address", "http://" + strings.Repeat("a", 8000)} {
		_, err := Of(text)
		assert.Error(t, err)
	}
	six, err := Of("http://[2001:db8:1:2:3:4:5:6]:54321/K/ABCDEFGHIJKLMNOPQRSTUVWXYZ")
	require.NoError(t, err)
	assert.LessOrEqual(t, six.Columns(), 45, "an address in brackets has no short form")
}

// Another program reads what is drawn, as a camera would see it on a dark terminal.
func TestAReaderReadsTheDrawing(t *testing.T) {
	if _, err := exec.LookPath("zbarimg"); err != nil {
		t.Skip("zbarimg is not installed: the code is NOT READ BACK; Debian has it in zbar-tools")
	}
	for _, address := range []string{link, "https://[2001:db8::5]:54321/K/ABCDEFGHIJKLMNOPQRSTUVWXYZ", "http://10.0.0.1:1/K/A"} {
		c, err := Of(address)
		require.NoError(t, err)
		file := filepath.Join(t.TempDir(), "code.pgm")
		require.NoError(t, os.WriteFile(file, picture(c.Lines(false)), 0o600))
		out, err := exec.Command("zbarimg", "--quiet", "--raw", file).Output()
		require.NoError(t, err)
		assert.True(t, strings.EqualFold(address, strings.TrimSpace(string(out))), "%s", out)
		assert.Contains(t, string(out), address[strings.Index(address, "/K/"):], "the path is as it is")
	}
}

// picture is a drawing as a picture of grey squares of eight points.
func picture(lines []string) []byte {
	const side = 8
	columns := len([]rune(lines[0]))
	var b bytes.Buffer
	fmt.Fprintf(&b, "P5 %d %d 255\n", columns*side, 2*len(lines)*side)
	for _, line := range lines {
		for _, half := range []rune{'▀', '▄'} {
			var row []byte
			for _, sign := range line {
				grey := byte(0)
				if sign == '█' || sign == half {
					grey = 255
				}
				row = append(row, bytes.Repeat([]byte{grey}, side)...)
			}
			b.Write(bytes.Repeat(row, side))
		}
	}
	return b.Bytes()
}
