package founding

import (
	"errors"
	"regexp"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// senseOf is what makes sense in the first value of a statement.
func senseOf(in vocabulary.Block, word string) *vocabulary.Sense {
	if row, ok := vocabulary.Lookup(in, word); ok && len(row.Slots) > 0 {
		return row.Slots[0].Sense
	}
	return nil
}

// amount takes a number with its unit.
func (q Question) amount(text string) (string, error) {
	made, err := q.quantity(text)
	if err != nil {
		return "", err
	}
	return made.String(), q.sensible(made)
}

// quantity reads a number, with the unit of the question where it has none.
func (q Question) quantity(text string) (quantity.Quantity, error) {
	if area, ok := laidOut(text, q.Unit); ok && q.of == quantity.Area {
		text = area
	}
	if q.Unit == "gal-us" { // only a house of lb is asked in it
		text = american(text)
	}
	made, err := quantity.Parse(text)
	if err == nil && made.Dimension == quantity.Number && q.Unit != "" {
		made, err = quantity.Parse(text + " " + q.Unit)
	}
	if why := (*quantity.Error)(nil); errors.As(err, &why) {
		do := why.Hint
		if do == "" {
			do = "type " + q.form()
		}
		return made, refuse(do, "%q: %s", text, why.Message)
	}
	if made.Dimension != q.of {
		return made, refuse("type "+q.form(), "%s is a %s, and the question asks for a %s", made, made.Dimension, q.of)
	}
	return made, nil
}

// sensible refuses what cannot be, and what hardly is.
func (q Question) sensible(made quantity.Quantity) error {
	if q.sense == nil {
		return nil
	}
	s := q.sense.Of(made.Dimension)
	if s == nil {
		return nil
	}
	band := s.Can
	if s.Usual != nil {
		band = *s.Usual
	}
	if band.Contains(made.SI) {
		return nil
	}
	unit := made.Unit()
	low, high := quantity.Say(band.Low.SI, unit), quantity.Say(band.High.SI, unit)
	return refuse("look at the number and its unit", "%s is outside what %s can be: %s to %s is usual", made, s.What, strings.TrimSuffix(low, " "+unit), high)
}

// between finds what stands between two numbers of a span.
var between = regexp.MustCompile(`(?i)^(.*?[\d½¼¾].*?)\s*(?:\bto\b|\band\b|–|—|\.\.+|-)\s*(.*[\d½¼¾].*)$`)

// span takes two numbers with their unit, the lower first, or one that is both.
func (q Question) span(text string) (string, error) {
	parts := between.FindStringSubmatch(text)
	if parts == nil {
		return q.amount(text)
	}
	high, err := q.quantity(strings.TrimSpace(parts[2]))
	if err != nil {
		return "", err
	}
	low, err := quantity.Parse(strings.TrimSpace(parts[1]))
	if err != nil || low.Dimension == quantity.Number {
		low, err = quantity.Parse(strings.TrimSpace(parts[1]) + " " + high.Unit())
	}
	if err != nil || low.Dimension != high.Dimension {
		return "", refuse("type "+q.form(), "%q is no %s", parts[1], q.of)
	}
	if low.SI > high.SI {
		low, high = high, low
	}
	for _, end := range []quantity.Quantity{low, high} {
		if err := q.sensible(end); err != nil {
			return "", err
		}
	}
	return quantity.Range{Low: low, High: high}.String(), nil
}

// hours takes a span of the day, or several with "and" between them.
func (q Question) hours(text string) (string, error) {
	var spans []string
	for _, part := range strings.Split(strings.ReplaceAll(text, ", ", " and "), " and ") {
		span, err := q.hoursOnce(strings.TrimSpace(part))
		if err != nil {
			return "", err
		}
		spans = append(spans, span)
	}
	if up := awakeFor(spans); up < 4*60 {
		return "", refuse("write all hours in which somebody can look after it, as 06:00 to 08:00 and 17:00 to 22:00", "%d min of the day is too short for the turns and the changes of water", up)
	}
	return strings.Join(spans, " and "), nil
}

// awakeFor is how long spans of the day last together, min.
func awakeFor(spans []string) (minutes int) {
	for _, s := range spans {
		m, ok := momentOf(s)
		span, bad := value.SpanOfDay(m)
		if !ok || bad != nil {
			continue
		}
		if span[1] <= span[0] {
			span[1] += 24 * 3600
		}
		minutes += (span[1] - span[0]) / 60
	}
	return minutes
}

func (q Question) hoursOnce(text string) (string, error) {
	if low := strings.ToLower(text); low == "always" || low == "day and night" {
		return "00:00 to 24:00", nil
	}
	if parts := between.FindStringSubmatch(text); parts != nil {
		text = parts[1] + " to " + parts[2]
	}
	moment, ok := momentOf(text)
	if !ok || moment.To == nil {
		return "", refuse("type "+q.form(), "%q is no span of the day", text)
	}
	span, bad := value.SpanOfDay(moment)
	if bad != nil || span[0] == span[1] {
		return "", refuse("type "+q.form(), "%q is no span of the day", text)
	}
	return value.ClockText(moment.From, false) + " to " + value.ClockText(*moment.To, true), nil
}

// momentOf reads a time or a span as the line of a site has it.
func momentOf(text string) (syntax.Moment, bool) {
	if strings.ContainsAny(text, "{};#\"\n") {
		return syntax.Moment{}, false
	}
	tree, found := syntax.Parse(source.New("answer", []byte("site \"x\" {\nawake "+text+"\n}\n")))
	if len(found) > 0 || len(tree.Top.Statements) != 1 || tree.Top.Statements[0].Body == nil {
		return syntax.Moment{}, false
	}
	body := tree.Top.Statements[0].Body.Statements
	if len(body) != 1 || len(body[0].Terms) != 1 || len(body[0].Clauses) > 0 {
		return syntax.Moment{}, false
	}
	m, ok := body[0].Terms[0].(syntax.Moment)
	return m, ok
}

// counts are the forms of a count.
var counts = regexp.MustCompile(`^(\d{1,6})\s*(?:/|of|out of)\s*(\d{1,6})(?:\s*\w+)?$`)

// count takes how many of how many; a share in per cent stands without the second.
func (q Question) count(text string) (string, error) {
	parts := counts.FindStringSubmatch(strings.ToLower(text))
	if parts == nil {
		return "", refuse("type "+q.form(), "%q does not say how many of how many", text)
	}
	n, _ := strconv.Atoi(parts[1]) // six digits at the most
	of, _ := strconv.Atoi(parts[2])
	switch {
	case of == 0 || n > of:
		return "", refuse("count the kernels that sprouted, and all that were laid out", "%d of %d cannot be", n, of)
	case of < 20:
		return "", refuse("lay out 100, or answer "+DontKnow, "a count of %d kernels says too little", of)
	}
	return strconv.Itoa(n) + " of " + strconv.Itoa(of), nil
}
