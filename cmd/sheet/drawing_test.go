package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var looks = []Look{Chit, NoShoot, Quarter, Half, ThreeQuarters, Whole, Overgrown, RubGummy, RubGritty, RubChalky, Break}

func TestADrawingStaysInItsPicture(t *testing.T) {
	for _, naked := range []bool{false, true} {
		for _, look := range looks {
			p := look.Picture(naked)
			require.NotEmpty(t, p.Strokes, look)
			for _, s := range p.Strokes {
				if s.Curved {
					assert.Equal(t, 1, len(s.Dots)%3, "%s: a start and three dots for each curve", look)
				}
				for _, d := range s.Dots {
					half := s.Thick / 2
					assert.True(t, d.X >= half && d.X <= p.Wide-half && d.Y >= half && d.Y <= 1-half, "%s: %v", look, d)
				}
			}
		}
	}
}

func TestTheShootIsAsLongAsItsClass(t *testing.T) {
	for look, share := range map[Look]float64{Quarter: 0.25, Half: 0.5, ThreeQuarters: 0.75, Whole: 1} {
		for _, naked := range []bool{false, true} {
			reach, shoots := 0.0, 0
			for _, s := range look.Picture(naked).Strokes {
				if s.Ink != Black {
					continue
				}
				shoots++
				for _, d := range s.Dots {
					reach = max(reach, d.X)
				}
			}
			assert.Equal(t, 1, shoots, look)
			assert.InDelta(t, on(share, 0).X, reach, 0.01, look) // half the thickness of the outline
		}
	}
}

func TestTheShootOfANakedKernelLiesOutside(t *testing.T) {
	back := func(strokes []Stroke) (top float64) {
		top = 1
		for _, d := range strokes[0].Dots {
			top = min(top, d.Y)
		}
		return top
	}
	middle := on(0, 0.142).Y // of the shoot under the husk, where it lies highest
	assert.Less(t, back(huskOutline()[2:]), middle-0.026*kernelLong)
	assert.Greater(t, back(nakedOutline()), on(0, 0.246).Y)
}

func TestLooksAreToldApart(t *testing.T) {
	for i, a := range looks {
		for _, b := range looks[i+1:] {
			assert.NotEqual(t, a.Picture(false), b.Picture(false), "%s and %s", a, b)
		}
	}
}
