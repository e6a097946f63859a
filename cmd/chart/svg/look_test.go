package svg

import (
	"fmt"
	"os"
	"testing"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/sample"
)

func TestLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		t.Skip()
	}
	for name, c := range map[string]Laid{"forecast": sample.Forecast(), "underway": sample.UnderWay(), "season": sample.Season(), "bed": sample.Bed(), "drivers": sample.Drivers()} {
		for _, w := range []float64{900, 390} {
			f, _ := os.Create(fmt.Sprintf("%s/%s-%g.svg", dir, name, w))
			Write(f, c, Options{Options: chart.Options{Width: w}})
			st, _ := f.Stat()
			fmt.Println(name, w, st.Size())
			f.Close()
		}
	}
}
