package chart

import "unicode"

// Sans measures a text in a sans-serif font that is not known: by the widths of Helvetica, which those that
// stand in for it share, and a tenth more.
type Sans struct{}

// helvetica is the advance of the letters from blank to tilde, thousandths of the size: the metrics of the
// core font, which Arial and Liberation Sans have too.
var helvetica = [...]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// Width is that of a text in letters of a size, px.
func (Sans) Width(text string, size float64, bold bool) float64 {
	sum := 0
	for _, r := range text {
		sum += advance(r)
	}
	wide := 1.1
	if bold {
		wide = 1.2
	}
	return float64(sum) * size * wide / 1000
}

// advance is the width of a letter, thousandths of the size. Letters that have no row have that of a wide one
// of their script.
func advance(r rune) int {
	switch {
	case r >= ' ' && int(r-' ') < len(helvetica):
		return helvetica[r-' ']
	case r == '°', r == '·', r == '’', r == '‘':
		return 400
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case r < 0x2000:
		return 780 // Latin with accents, Greek, Cyrillic, Arabic, Hebrew
	case r < 0x2e80:
		return 1000 // signs
	default:
		return 1100 // ideographs, emoji
	}
}
