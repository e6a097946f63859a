package quantity

import "testing"

func BenchmarkMake(b *testing.B) {
	for name, parts := range map[string][]Part{
		"one part": {{"12.4", "%"}}, "plain": {{"200", ""}}, "fraction": {{"8 1/3", "lb"}}, "two parts": {{"5", "lb"}, {"4", "oz"}},
		"unknown unit": {{"5", "minuts"}},
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = Make(parts...)
			}
		})
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Parse("5 lb 4 oz")
	}
}

func BenchmarkLike(b *testing.B) {
	q, err := Parse("5 lb 4 oz")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		_ = q.Like(2.3)
	}
}
