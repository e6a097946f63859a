package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestReckonedValuesAreSaidInDigitsThatMeanSomething(t *testing.T) {
	for want, got := range map[string]string{
		"132 kg":              Say(131.96, "kg"),
		"0.008 kg":            Say(0.0081, "kg"),
		"135 m2":              Say(135.3, "m2"),
		"unknown":             Say(math.NaN(), "kg"),
		"130 kg":              About(131.96, "kg"),
		"5.2 m3":              About(5.23, "m3"),
		"7 m3":                About(6.96, "m3"),
		"0 W":                 About(0, "W"),
		"12 cm":               Depth(0.1234),
		"8 mm":                Depth(0.008),
		"0.04 mm":             Depth(0.0000407),
		"4000 m":              Depth(4000),
		"99 cm":               Depth(0.99),
		"1 m":                 Depth(0.999),
		"1.3 m":               Depth(1.27),
		"4.2 ft":              (System{British: true}).Depth(1.27),
		"36 in":               (System{British: true}).Depth(0.92),
		"150 ml":              (System{British: true}).Water(0.15),
		"0.5 gal-us":          (System{British: true}).Water(1.9),
		"240 ml of water":     (System{British: true}).Retold("0.24 l of water"),
		"2.1 gal-us of water": (System{British: true}).Retold("8 l of water"),
		"300 ml":              (System{British: true}).Room(0.0003),
		"7.34 kg":             System{}.WeightBy(7.337, 0.001),
		"7.35 kg":             System{}.WeightBy(7.337, 0.05),
		"7.4 kg":              System{}.WeightBy(7.337, 0.2),
		"8 kg":                System{}.WeightBy(7.337, 4),
		"10.26 kg":            System{}.WeightBy(10.254, 0.02),
		"10.45 kg":            System{}.WeightBy(10.465, 0.05),
		"8.45 kg":             System{}.WeightBy(8.465, 0.05),
		"8.325 kg":            System{}.WeightBy(8.32, 0.025),
		"123.5 kg":            System{}.WeightBy(123.46, 0.05),
		"14.61 lb":            System{British: true}.WeightBy(6.6265, Pound/160),
		"16.1 lb":             System{British: true}.WeightBy(7.31, Pound/10),
		"16.09 lb":            System{British: true}.WeightBy(7.31, 0.05),
		"7.31 kg":             System{}.WeightBy(7.3068, 0.005),
		"1845 kg":             System{}.WeightBy(1846.2, 5),
		"131 g":               System{}.WeightBy(0.1313, 0.0001),
		"130 g":               System{}.WeightBy(0.1313, 0.005),
		"1000 g":              System{}.WeightBy(0.998, 0.005),
		"834 g":               System{}.WeightBy(0.834, 0),
		"16.18 lb":            System{British: true}.WeightBy(7.337, 0.001),
		"4.6 oz":              System{British: true}.WeightBy(0.1313, 0.001),
		"5 oz":                System{British: true}.WeightBy(0.1313, Pound/16),
		"0.25 m2":             System{}.Area(0.2456),
		"40 cm2":              System{}.Area(0.004),
		"7.1 gal-us":          System{British: true}.Water(26.9),
		"90 gal-imp":          System{British: true, Imperial: true}.Water(409),
		"91 m3/h":             System{}.Airflow(0.0252),
		"0.4 m3/h":            System{}.Airflow(0.00011),
		"380 Pa":              System{}.Pressure(377.6),
		"1.5 inches of water": System{British: true}.Pressure(377.6),
		"+1.5":                Signed(1.52, 1),
		"-0.3":                Signed(-0.31, 1),
		"":                    Signed(-0.04, 1),
		"0":                   Rounded(-0.04, 1),
		"13.5":                Rounded(13.52, 1),
		"14":                  Rounded(13.98, 1),
		"12346":               Rounded(12345.98, 1),
	} {
		assert.Equal(t, want, got)
	}
	assert.Empty(t, Signed(math.Inf(1), 1))
	assert.Equal(t, "unknown", Rounded(math.Inf(1), 1))
}
