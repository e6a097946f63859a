package vocabulary

// What makes sense for heat and for the air that carries it.
var (
	efficiency = bandsOf("an efficiency", "20 to 100 %", "45 to 100 %", "only an open fire gives the air less, a third of its heat; a burner in the air gives it all: "+practice)
	fanDraws   = bandsOf("a power that a fan draws", "1 W to 5000 kW", "5 W to 500 kW", practice)
	fanFlow    = bandsOf("a flow of a fan", "0 to 3000000 m3/h", "", "")
	fanned     = func() *Sense { s := *fanFlow; return s.also(fanDraws) }()

	fanPressure = bandsOf("a pressure of a fan", "0 to 20000 Pa", "0 to 5000 Pa", "fans of kilns give up to some 2000 Pa: "+practice)
	chimney     = bandsOf("a chimney", "0.5 to 30 m", "1 to 25 m", practice)
	recovered   = bandsOf("a share of the heat", "5 to 95 %", "20 to 85 %", "plates and glass tubes have temperature ratios of 40 to 80 %: "+practice)
	wallArea    = bandsOf("an area of walls", "100 cm2 to 10000 m2", "0.3 to 3000 m2", practice)
	doorGap     = bandsOf("the gap of a door", "0.5 to 60 cm", "0.5 to 20 cm", practice)

	quenchWater = bandsOf("an amount of water", "1 ml to 50 m3", "", "").also(bandsOf("an amount of water", "1 g to 50 t", "", ""))
	stepAir     = func() *Sense { s := *airflow; return s.also(returned) }()
	changedMuch = func() *Sense { // of a time or a temperature the rules of the record judge
		flow, share := *airflow, *returned
		return flow.also(share.also(quenchWater))
	}()
)
