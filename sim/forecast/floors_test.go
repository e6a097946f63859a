package forecast

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const towerHouse = `
site "maltings" { air 12 °C; humidity 70 %; water 12 °C; altitude 100 m }
grain "lot" { species barley; already green malt; moisture 44 % }
kiln "lower floor" { area 8 m2; airflow 3200 m3/h; heater 90 kW; reaches 20 to 100 °C; fired gas by indirect }
kiln "upper floor" { area 8 m2; air from "lower floor" }
`

func towerText(upper, lower string) string {
	return towerHouse + "process \"p\" {\n make pale malt\n from 800 kg of \"lot\"\n at \"maltings\"\n kiln in \"upper floor\" { " + upper + " }\n kiln in \"lower floor\" { " + lower + " }\n}\n"
}

const lowerSteps = "dry at air-on 60 °C for 6 h; dry at air-on 65 °C for 4 h; cure from air-on 65 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"

func TestTry(t *testing.T) {
	for _, c := range [][2]string{
		{"dry for 18 h", lowerSteps},
		{"dry until moisture at most 12 % allow 8 to 40 h", "dry at air-on 60 °C until moisture at most 7 % allow 2 to 20 h; cure from air-on 60 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"},
		{"dry at air-on 50 °C until moisture at most 12 % allow 8 to 40 h", "dry at air-on 65 °C until moisture at most 7 % allow 2 to 20 h; cure from air-on 65 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"},
		{"dry for 12 h", "dry at air-on 60 °C until moisture at most 7 % allow 2 to 20 h; cure from air-on 60 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"},
		{"dry for 20 h", "dry at air-on 60 °C until moisture at most 7 % allow 2 to 20 h; cure from air-on 60 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"},
	} {
		for _, air := range []string{"3200", "1500", "1000"} {
			f, err := Run(load(t, strings.Replace(towerText(c[0], c[1]), "3200", air, 1)), Options{})
			require.NoError(t, err)
			fmt.Println(air, c[0])
			for _, st := range f.Stages {
				for _, s := range st.Steps {
					fmt.Printf("  %s %s %.2f-%.2f  %.4f %.4f %v\n", st.Kind, s.Label, s.Start/3600, s.End/3600, s.MoistureStart, s.MoistureEnd, s.EndedBy)
				}
			}
			fmt.Printf("  %+v\n", *f.Kilns[0].Fed)
			fmt.Printf("  %.0f kWh, %.0f kWh/t %T\n", f.Totals.KilnEnergy/3.6e6, f.Totals.KilnEnergy/3.6e3/f.Totals.Malt, f.Trouble)
			for s, v := range f.fixed {
				fmt.Println(s.Kiln.Name, v)
			}
		}
	}
}
