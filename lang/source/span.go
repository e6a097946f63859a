package source

// Span is the half-open range of bytes [Start, End) in one file.
type Span struct{ Start, End int }

// Empty tells whether the span covers nothing.
func (s Span) Empty() bool { return s.End <= s.Start }

// Join gives the smallest span that covers both; an empty span at 0 joins as nothing.
func (s Span) Join(o Span) Span {
	if s == (Span{}) {
		return o
	}
	if o == (Span{}) {
		return s
	}
	return Span{min(s.Start, o.Start), max(s.End, o.End)}
}

func (s Span) within(size int) Span {
	s.Start = min(max(s.Start, 0), size)
	s.End = min(max(s.End, s.Start), size)
	return s
}

// Place is a span in a known file: what every finding and every value points at.
type Place struct {
	File *File
	Span
}

// Text is the text at the place, or "" where there is no file.
func (p Place) Text() string {
	if p.File == nil {
		return ""
	}
	return p.File.Text(p.Span)
}

// Known tells whether the place is in a file.
func (p Place) Known() bool { return p.File != nil }

// Within tells whether it lies in another place, by the name of the file: one that is read
// twice is two.
func (p Place) Within(scope Place) bool {
	return p.Known() && scope.Known() && p.File.Name() == scope.File.Name() && scope.Start <= p.Start && p.End <= scope.End
}
