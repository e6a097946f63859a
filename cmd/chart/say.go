package chart

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"maltwright/lang/source"
)

// Say tells in words what a chart shows: from when to when, and of each line and range where it begins, its least, its
// most, and where it ends.
func (c Chart) Say() string {
	from, to := c.ends()
	k := c.Clock()
	parts := []string{strings.TrimSuffix(c.Title+": "+c.Sub, ": "), "From " + k.Say(from) + " to " + k.Say(to)}
	if !k.ByDay() && c.Since != "" {
		parts[1] += " from " + c.Since
	}
	if c.Now != nil {
		parts = append(parts, "Now is "+k.Say(*c.Now))
	}
	for _, p := range c.Panels {
		parts = append(parts, p.say(k)...)
	}
	return source.Safe(sentences(parts))
}

// sentences begins each part with a capital and ends it with a full stop.
func sentences(parts []string) string {
	var b strings.Builder
	for _, part := range parts {
		if part = strings.Trim(part, " .:"); part != "" {
			first, size := utf8.DecodeRuneInString(part)
			b.WriteString(string(unicode.ToUpper(first)) + part[size:] + ". ")
		}
	}
	return strings.TrimSuffix(b.String(), " ")
}

func (p Panel) say(k Clock) (parts []string) {
	if f := p.Field; f != nil {
		low, high := f.limits()
		return []string{f.Name + " by depth and time: from " + shown(low, f.Places, f.Unit) + " to " + shown(high, f.Places, f.Unit)}
	}
	of := func(name string) string {
		if name == "" || name == p.Name {
			return p.Name
		}
		return strings.TrimPrefix(p.Name+", "+name, ", ")
	}
	for _, l := range p.Lines {
		parts = append(parts, of(l.Name)+": "+p.course(l.At, l.Value, k))
	}
	for _, b := range p.Bands {
		parts = append(parts, of(b.Name)+": "+p.reach(b, k))
	}
	parts = append(parts, p.sayPoints()...)
	for _, g := range p.Gates {
		parts = append(parts, "A line marks "+p.level(g))
	}
	return parts
}

// level tells a gate, with its value where its words do not hold it.
func (p Panel) level(g Gate) string {
	tens := math.Pow10(max(0, p.Places))
	if value := strconv.FormatFloat(math.Round(tens*g.Value)/tens, 'f', -1, 64); !strings.Contains(g.Name, value) {
		return g.Name + " at " + shown(g.Value, p.Places, p.Unit)
	}
	return g.Name
}

// course tells where a line begins, its least, its most, and where it ends.
func (p Panel) course(at, value []float64, k Clock) string {
	first, last, low, high := -1, -1, -1, -1
	for i := range min(len(at), len(value)) {
		if !known(value[i]) || !known(at[i]) {
			continue
		}
		if first < 0 {
			first, low, high = i, i, i
		}
		if value[i] < value[low] {
			low = i
		}
		if value[i] > value[high] {
			high = i
		}
		last = i
	}
	if first < 0 {
		return "no figures"
	}
	say := func(i int) string { return shown(value[i], p.Places, p.Unit) }
	text := "begins at " + say(first)
	if high != first && high != last {
		text += ", is at most " + say(high) + " at " + k.Say(at[high])
	}
	if low != first && low != last {
		text += ", at least " + say(low) + " at " + k.Say(at[low])
	}
	return text + ", ends at " + say(last) + " at " + k.Say(at[last])
}

// reach tells where a range ends and where it is widest.
func (p Panel) reach(b Band, k Clock) string {
	at, low, high := both(b)
	last, wide := -1, -1
	for i := range low {
		if !known(low[i]) {
			continue
		}
		if last = i; wide < 0 || high[i]-low[i] > high[wide]-low[wide] {
			wide = i
		}
	}
	if last < 0 {
		return "no figures"
	}
	say := func(i int) string {
		return shown(low[i], p.Places, "") + " to " + shown(high[i], p.Places, p.Unit) + " at " + k.Say(at[i])
	}
	text := "ends at " + say(last)
	if wide != last {
		text += ", is widest with " + say(wide)
	}
	return text
}

func (p Panel) sayPoints() []string {
	n, doubted, low, high := 0, 0, math.Inf(1), math.Inf(-1)
	for _, q := range p.Points {
		if !known(q.Value) {
			continue
		}
		n++
		if q.Doubted {
			doubted++
		}
		low, high = math.Min(low, q.Value), math.Max(high, q.Value)
	}
	if n == 0 {
		return nil
	}
	text := p.Name + " was measured " + times(n) + ", from " + shown(low, p.Places, "") + " to " + shown(high, p.Places, p.Unit)
	if doubted > 0 {
		text += "; " + times(doubted) + " in doubt"
	}
	return []string{text}
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return strconv.Itoa(n) + " times"
}
