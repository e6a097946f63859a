package chart

import "image/color"

// Scheme is the colour of every ink on one paper.
type Scheme [Inks]color.RGBA

// Of is the colour of an ink.
func (s *Scheme) Of(i Ink) color.RGBA { return s[i] }

// The colours of roles were chosen by search, so that any two differ by 12 and more in CIEDE2000 for an eye that sees
// all colours, and for one without red, without green and without blue. Steps of a field differ in lightness, all one way.
// Tests hold both to that, and letters and lines to their contrast.
var (
	Light = scheme(
		"fcfbf7 1c1e21 5a5d60 6b6e70 dedcd5 eeece4 1c1e21 1c1e21 777777",
		"1f2d79 b04146 0e5a11 aa7a2b 6665ba 7d0241",
		"faf0d6 cfd6ae a8c09c 80ae95 5d9c91 468991 237690 0f5d84 024174")
	Dark = scheme(
		"1a1d20 e8e7e2 adb0ae 8f9391 33383c 0e1012 e8e7e2 e8e7e2 8f8f8f",
		"9fa5ff dc9752 60f5cc f0e482 607fd6 b35698",
		"1d2a43 164665 116381 307c87 43938d 70a591 99ba95 c7d2a7 f7ebc5")
	// Print is for white paper. Its roles are told apart by dash and mark where it is black and white.
	Print = scheme(
		"ffffff 000000 454545 555555 dddddd eeeeee 000000 000000 777777",
		"1f2d79 b04146 0e5a11 aa7a2b 6665ba 7d0241",
		"faf0d6 cfd6ae a8c09c 80ae95 5d9c91 468991 237690 0f5d84 024174")
)

// scheme reads colours of six hexadecimal digits: of the inks in their order, of the roles, of the steps.
func scheme(inks, roles, steps string) *Scheme {
	s, list := &Scheme{}, inks+" "+roles+" "+steps
	for i := range s {
		at := 7 * i
		s[i] = color.RGBA{hex(list[at:]), hex(list[at+2:]), hex(list[at+4:]), 0xff}
	}
	return s
}

func hex(text string) uint8 { return digit(text[0])<<4 | digit(text[1]) }

func digit(c byte) uint8 {
	if c <= '9' {
		return c - '0'
	}
	return c - 'a' + 10
}
