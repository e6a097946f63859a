package quantity

import (
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const messages = "testdata/messages.golden"

// misread are texts that Parse refuses.
var misread = []string{
	"", "kg", "abc", "12.4.5 kg", "1e5 kg", "+5 kg", "..5 kg", "5. kg", "1.5½ kg", "1½½ kg", "½/2 kg", "3/0", "1.5/2", "8 5/4 h", "1:30 h",
	"12,4 %", "0,125 kg", "1,200 kg", "1,200,500 kg", "1,20,0", "1,x",
	"99999999999999999999999999 kg", "2000000000000 kg", "-300 °C", "-460 °F", "-1 K",
	"3 w", "5 gal", "5 tons", "20 degrees", "20 °", "3 bu", "12 gr", "3 pints", "2 qtr", "3 hp", "1 bar",
	"5 KG", "5 Kgs.", "4 Mg", "4 T", "3 litres/sec", "30 m3/hr", "9 ° K", "3 minuts", "20 farenheit", "2 kq", "3 zorkmids",
	"1 \x1b[31m", "1 \xff", "1 " + strings.Repeat("x", 60),
	"5 lb 4", "1 200 kg", "3 4", "1/2 3 lb", "½ 3 lb", "½ 3",
	"5 lb 4 min", "30 min 1 h", "1 h 1 h", "1.5 h 30 min", "1/2 h 10 min", "1 h 90 min", "1 day 24 h", "5 lb -4 oz", "5 lb 4,5 oz", "20 °C 5 K", "5 % 3 %",
	"1 week 2 days 3 h 4 min 5 s", strings.Repeat("1 h ", 200),
}

func TestMessagesReadAsTheGoldenFileSays(t *testing.T) {
	var out strings.Builder
	for _, text := range misread {
		_, err := Parse(text)
		record(t, &out, fmt.Sprintf("%.40q", text), err)
	}
	for _, c := range []struct{ low, high string }{
		{"17", "14 °C"}, {"17 °C", "62 °F"}, {"45 %", "43 %"}, {"14 kg", "17 °C"}, {"30 %", "45 % dry basis"}, {"14", "17"}, {"14 °C", "17"},
		{"x", "17 °C"}, {"5", "6 lb 4 oz"}, {"14 °C", "17,5 °C"}, {"5 lb 4 oz", "5 lb 3 oz"}, {"5 lb 4 oz", "5 lb 3 foo"},
	} {
		if _, err := Between(partsOf(c.low), partsOf(c.high)); err != nil {
			record(t, &out, c.low+" to "+c.high, err)
		}
	}
	for _, c := range []struct {
		text string
		to   Dimension
	}{
		{"12", Mass}, {"12", Temperature}, {"12", Share}, {"8 h", Mass}, {"8 h", Time + 99}, {"3 kg", Area}, {"5 lb 4 oz", Volume}, {"3 times", Time},
		{"100 %", DryShare}, {"-100 % dry basis", Share}, {"4 kg", Number}, {"8 h", Length}, {"3 h", Flow}, {"3 h", Energy},
	} {
		_, err := mustParse(t, c.text).As(c.to)
		record(t, &out, fmt.Sprintf("%s as %s", c.text, c.to), err)
	}
	_, err := mustParse(t, "-300 K/h").As(Temperature)
	record(t, &out, "-300 K/h as temperature", err)
	for _, c := range []struct {
		si   float64
		unit string
	}{{math.NaN(), "kg"}, {math.Inf(1), "m2"}, {1e300, "mg"}, {-1, "°C"}, {1, "fooo"}} {
		_, err := In(c.si, c.unit)
		record(t, &out, fmt.Sprintf("%g in %s", c.si, c.unit), err)
	}
	_, err = Make(Part{"", "kg"})
	record(t, &out, "a part with no number", err)
	compareGolden(t, messages, out.String())
}

// record writes an error down, and checks what every one of them owes the reader.
func record(t *testing.T, out *strings.Builder, asked string, err error) {
	var e *Error
	if !assert.True(t, errors.As(err, &e), "%s: %v is no *Error", asked, err) {
		return
	}
	assert.NotEqual(t, NoError, e.Kind, asked)
	assert.NotEmpty(t, e.Message, asked)
	assert.NotEmpty(t, e.Hint, asked)
	assert.NotContains(t, e.Error(), "\x1b", asked)
	assert.Equal(t, e.Message+"; "+e.Hint, e.Error())
	fmt.Fprintf(out, "%s\n  kind %d, part %d: %s\n  %s\n", asked, e.Kind, e.Part, e.Message, e.Hint)
	if e.Fix != "" {
		fmt.Fprintf(out, "  fix: %s\n", e.Fix)
	}
	out.WriteString("\n")
}

func TestEveryKindOfErrorHasAMessageInTheGoldenFile(t *testing.T) {
	text, err := os.ReadFile(messages)
	require.NoError(t, err)
	for kind := NotANumber; kind <= UpsideDown; kind++ {
		assert.Contains(t, string(text), fmt.Sprintf("  kind %d, ", kind))
	}
}

func TestAFixIsReadWithoutFault(t *testing.T) {
	for _, text := range misread {
		_, err := Parse(text)
		var e *Error
		if !errors.As(err, &e) || e.Fix == "" {
			continue
		}
		switch e.Kind {
		case UnknownUnit:
			_, ok := Lookup(e.Fix)
			assert.True(t, ok, "%q for %q", e.Fix, text)
		default:
			_, err := Parse(e.Fix)
			assert.NoError(t, err, "%q for %q", e.Fix, text)
		}
	}
}

func compareGolden(t *testing.T, path, got string) {
	t.Helper()
	if os.Getenv("MALTWRIGHT_UPDATE") != "" {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}

func mustParse(t require.TestingT, text string) Quantity {
	q, err := Parse(text)
	require.NoError(t, err, text)
	return q
}

// partsOf cuts a text into parts without reading them: number, unit, number, unit;
// a text with no unit is a number alone.
func partsOf(text string) (parts []Part) {
	for f := strings.Fields(text); len(f) > 0; f = f[min(2, len(f)):] {
		p := Part{Number: f[0]}
		if len(f) > 1 {
			p.Unit = f[1]
		}
		if len(f) > 3 && f[1] == "%" {
			p.Unit = strings.Join(f[1:], " ")
			return append(parts, p)
		}
		parts = append(parts, p)
	}
	return parts
}
