package pdf

import (
	"bytes"
	"compress/flate"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"maltwright/lang/source/golden"
)

func TestTheFontsAreThoseOfTheModule(t *testing.T) {
	for _, font := range []struct {
		file, packed string
		want         []byte
	}{{"go-regular.ttf.flate", packedRegular, goregular.TTF}, {"go-bold.ttf.flate", packedBold, gobold.TTF}} {
		if golden.Updating() {
			var b bytes.Buffer
			w, err := flate.NewWriter(&b, flate.BestCompression)
			require.NoError(t, err)
			_, err = w.Write(font.want)
			require.NoError(t, err)
			require.NoError(t, w.Close())
			require.NoError(t, os.WriteFile(font.file, b.Bytes(), 0o644))
			continue
		}
		assert.True(t, bytes.Equal(font.want, unpacked(font.packed)), "%s: MALTWRIGHT_UPDATE=1 makes it anew", font.file)
		assert.Less(t, len(font.packed), len(font.want)/2)
	}
}
