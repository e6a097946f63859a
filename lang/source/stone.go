package source

import (
	"sort"
	"unicode/utf8"
)

// stone is a place along a text up to which characters have been counted, so that a column far out on a
// line is not counted from the start of the line each time: many are asked for, and then the time would go
// with the square of the length of the line.
type stone struct {
	at         int // the offset, where a character starts
	characters int // from the start of the text
	utf16      int // units
}

const apart = 1 << 10 // bytes between stones, about

// along are the stones of a text.
func (f *File) along() []stone {
	f.marked.Do(func() {
		s := stone{}
		for s.at < len(f.text) {
			if n := len(f.stones); n == 0 || s.at-f.stones[n-1].at >= apart {
				f.stones = append(f.stones, s)
			}
			r, size := utf8.DecodeRune(f.text[s.at:])
			s.at += size
			s.characters++
			s.utf16++
			if r > 0xffff {
				s.utf16++
			}
		}
	})
	return f.stones
}

func (s stone) count(enc Encoding) int {
	switch enc {
	case Bytes:
		return s.at
	case UTF16:
		return s.utf16
	}
	return s.characters
}

// width counts what stands between two offsets at which characters start.
func (f *File) width(from, to int, enc Encoding) int {
	if enc == Bytes || to-from < 4*apart {
		return width(f.text[from:to], enc)
	}
	stones := f.along()
	first := sort.Search(len(stones), func(i int) bool { return stones[i].at >= from })
	last := sort.Search(len(stones), func(i int) bool { return stones[i].at > to }) - 1
	a, b := stones[first], stones[last] // they are less than twice apart from each other, so both lie between
	return width(f.text[from:a.at], enc) + b.count(enc) - a.count(enc) + width(f.text[b.at:to], enc)
}

// before gives a place on a line that lies before a column or at it, and its own column.
func (f *File) before(line Span, column int, enc Encoding) (at, is int) {
	if column-1 < 4*apart || line.End-line.Start < 4*apart {
		return line.Start, 1
	}
	stones := f.along()
	first := sort.Search(len(stones), func(i int) bool { return stones[i].at >= line.Start })
	past := sort.Search(len(stones), func(i int) bool { return stones[i].at > line.End })
	at, is = line.Start, 1
	lead := width(f.text[line.Start:stones[first].at], enc)
	n := sort.Search(past-first, func(i int) bool {
		return 1+lead+stones[first+i].count(enc)-stones[first].count(enc) > column
	})
	if n > 0 {
		s := stones[first+n-1]
		at, is = s.at, 1+lead+s.count(enc)-stones[first].count(enc)
	}
	return at, is
}
