package qr

import (
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
