package inspection

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNamesAreShownFromTheFolder(t *testing.T) {
	for name, want := range map[string]string{
		"/home/mara/house/rooms/loft.malt": "rooms/loft.malt",
		"/home/mara/other/loft.malt":       "/home/mara/other/loft.malt",
		"loft.malt":                        "loft.malt",
		"-":                                "-",
	} {
		assert.Equal(t, want, Named("/home/mara/house", name))
	}
}
