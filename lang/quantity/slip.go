package quantity

import (
	"slices"
	"strings"
)

// Slip is a number that may have been meant in the place of another.
type Slip struct {
	Text    string // as it would be written: 5.24 kg
	SI      float64
	Swapped bool // two neighbouring digits are the other way round; else the point is elsewhere
	Places  int  // by how many places the point is elsewhere; negative to the left
}

// Slips lists what may have been meant by a quantity of one unit: with two neighbouring
// digits the other way round, then with the point elsewhere. It is empty where the quantity
// has two units, or is no decimal number.
func Slips(q Quantity) (list []Slip) {
	number, unit, _ := strings.Cut(q.String(), " ")
	if strings.Contains(unit, " ") || strings.Trim(number, "0123456789.") != "" {
		return nil
	}
	add := func(meant string, places int) {
		if !strings.HasPrefix(meant, "0.") {
			meant = strings.TrimLeft(meant, "0")
		}
		other, err := Make(Part{Number: meant, Unit: unit})
		if err == nil && other.SI != q.SI && !slices.ContainsFunc(list, func(n Slip) bool { return n.SI == other.SI }) {
			list = append(list, Slip{strings.TrimSpace(meant + " " + unit), other.SI, places == 0, places})
		}
	}
	for _, meant := range turned(number) {
		add(meant, 0)
	}
	whole, _, _ := strings.Cut(number, ".")
	digits := strings.Replace(number, ".", "", 1)
	for k := 1; k <= len(digits)+1; k++ {
		switch {
		case k == len(whole): // where it stands
		case k < len(digits):
			add(digits[:k]+"."+digits[k:], k-len(whole))
		case k == len(digits):
			add(digits, k-len(whole))
		default:
			add(digits+"0", k-len(whole))
		}
	}
	return list
}

// turned gives a number with each two neighbouring digits the other way round; a point may
// stand between them.
func turned(number string) (list []string) {
	for k := 0; k+1 < len(number); k++ {
		for _, d := range []int{1, 2} {
			if k == 0 && strings.HasPrefix(number, "0.") {
				continue // nobody swaps the nought that stands for nothing
			}
			if k+d >= len(number) || number[k] == '.' || number[k+d] == '.' || d == 2 && number[k+1] != '.' {
				continue
			}
			b := []byte(number)
			b[k], b[k+d] = b[k+d], b[k]
			list = append(list, string(b))
		}
	}
	return list
}
