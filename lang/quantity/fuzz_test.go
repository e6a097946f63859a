package quantity

import (
	"errors"
	"math"
	"testing"
	"unicode/utf8"
)

// longestFuzzed is longer than any number or unit may be; what is longer is slow to
// minimise and tells nothing.
const longestFuzzed = 60 // bytes

func FuzzParse(f *testing.F) {
	for _, text := range append(misread, "5 lb 4 oz", "8h", "1h30min", "62 °F", "3/4", "8 1/3 lb", "12.4 %", "45 % dry basis", "60 m^3/h", "−5 °C", "2 m2 3", ".5 l", "10½ lb", "10 ½ lb", "-⅓ K/h", "3 sq ft", "62 degrees F") {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > longestFuzzed {
			return
		}
		q, err := Parse(text)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Kind == NoError || e.Message == "" || e.Hint == "" {
				t.Fatalf("%q: error without kind, message or hint: %#v", text, err)
			}
			if !utf8.ValidString(e.Message + e.Hint) {
				t.Fatalf("%q: the message is not UTF-8: %q", text, e.Message)
			}
			return
		}
		if math.IsNaN(q.SI) || math.IsInf(q.SI, 0) {
			t.Fatalf("%q is %g", text, q.SI)
		}
		again, err := Parse(q.String())
		if err != nil || again.SI != q.SI || again.String() != q.String() {
			t.Fatalf("%q prints as %q, which reads as %v, %v", text, q, again, err)
		}
		if printed := q.Like(q.SI); printed == "" {
			t.Fatalf("%q like itself is nothing", text)
		}
	})
}

func FuzzMake(f *testing.F) {
	f.Add("5", "lb", "4", "oz")
	f.Add("12,4", "%", "", "")
	f.Add("8 1/3", "\xb0C", "-4", "m3/h")
	f.Fuzz(func(t *testing.T, n1, u1, n2, u2 string) {
		if max(len(n1), len(u1), len(n2), len(u2)) > longestFuzzed {
			return
		}
		low, high := []Part{{n1, u1}}, []Part{{n2, u2}}
		if q, err := Make(low[0], high[0]); err == nil && (math.IsNaN(q.SI) || math.IsInf(q.SI, 0)) {
			t.Fatalf("%v %v is %g", low, high, q.SI)
		}
		r, err := Between(low, high)
		if err == nil && r.Low.SI > r.High.SI {
			t.Fatalf("%v is upside down and was taken", r)
		}
		if err == nil && !r.Contains(r.Low.SI) {
			t.Fatalf("%v does not hold its own end", r)
		}
	})
}
