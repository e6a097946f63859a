package figure

// Soak is a continuous steep of barley of 12 %: so warm, so long, and the moisture then.
type Soak struct{ T, Hours, Moisture float64 } // °C, h, % wet basis

// Kunze is continuous steeping: hours to 40, 43 and 46 % by the temperature of the
// water [kunze], from memory. The table's own steps are uneven by about a point.
func Kunze() []Soak {
	var list []Soak
	for _, line := range [][4]float64{{9, 47.5, 78, 101}, {13, 34, 54, 78}, {17, 30, 46.5, 73}, {21, 21, 28, 44.5}} {
		for i, w := range []float64{40, 43, 46} {
			list = append(list, Soak{line[0], line[1+i], w})
		}
	}
	return list
}

// Series is a lot of barley that was weighed in the steep: grams of a 50 g sample at each of
// WeighedAt.
type Series struct {
	Lot   string
	Grams []float64
}

// WeighedAt, h under water.
func WeighedAt() []float64 { return []float64{5, 10, 15, 20, 30, 35} }

// MolinaCano are two of six steep series distributed with a public statistics data set
// [molina-cano-1995], seen. Temperature and first moisture are not given: 15 °C and 12 %
// are taken.
func MolinaCano() []Series {
	return []Series{
		{"91-1-1", []float64{58.29, 61.67, 64.28, 66.56, 70.39, 71.76}},
		{"91-2-1", []float64{60.80, 65.21, 68.40, 71.16, 74.80, 75.86}},
	}
}
