package vocabulary

// greenMoisture is that of a lot that is green malt.
func greenMoisture() *Sense {
	s := bandsOf("a moisture of green malt", "25 to 55 %", "38 to 50 %", practice).
		advised("malt so dry has withered, and no grown malt is so moist: measure it again; green malt has 40 to 46 %, and more if it was steeped again")
	s.Held = true
	return s
}

// kilnedMoisture is that of a lot that is malt; such as is soaked anew for caramel malt holds some 50 %.
func kilnedMoisture() *Sense {
	s := bandsOf("a moisture of kilned malt", "0.5 to 55 %", "2 to 9 %", practice).
		advised("malt so moist was not fully kilned, or lay open in damp air: measure it again; only malt soaked again for stewing to caramel malt may be so moist")
	s.Held = true
	return s
}

// What makes sense for the facts of a house. The bands that a value cannot leave
// are those within which a model holds, or what the thing can be at all.
var (
	lotMoisture = func() *Sense {
		s := bandsOf("a moisture of raw grain", "5 to 35 %", "8 to 17 %", "moister grain heats and loses its germination in store, and ripe grain holds 35 % at most: "+practice).
			advised("raw grain so moist spoils in store, and raw grain so dry was roasted: measure it again, and dry it first if it is so moist; fresh-cut grain may be so moist, and is still dormant")
		s.Held, s.Instead = true, map[string]*Sense{FactAlready + " " + MaltGreen: greenMoisture(), FactAlready + " " + MaltKilned: kilnedMoisture()}
		return s
	}()
	germinated     = bandsOf("a share", "0 to 100 %", "", "")
	kernelsCounted = bandsOf("a count", "1 to 100000 kernels", "20 to 10000 kernels", practice).advised("count 100 or 200 kernels")
	testWater      = bandsOf("the water of a germination test", "0.5 to 100 ml", "2 to 20 ml", "4 ml and 8 ml for 100 kernels: "+practice)
	protein        = bandsOf("a protein", "4 to 25 %", "6 to 19 %", practice).ofDry()
	kernelWeight   = func() *Sense {
		s := bandsOf("a weight of a thousand kernels", "1 to 500 g", "", "handbooks, from memory")
		s.By = []Kin{
			{[]string{"barley"}, band("25 to 70 g")},
			{[]string{"wheat", "triticale"}, band("20 to 70 g")},
			{[]string{"spelt"}, band("25 to 130 g")}, // in its hull two kernels count as one
			{[]string{"rye", "oats"}, band("15 to 60 g")},
			{[]string{"sorghum"}, band("10 to 70 g")},
			{[]string{"millet"}, band("1.5 to 20 g")},
			{[]string{"maize"}, band("80 to 500 g")},
			{[]string{"buckwheat"}, band("12 to 50 g")},
		}
		return s
	}()

	roomAir      = bandsOf("room air", "-20 to 50 °C", "-10 to 38 °C", practice)
	roomHumidity = bandsOf("a relative humidity", "1 to 100 %", "15 to 100 %", "no room is so dry for long: "+practice)
	tapWater     = bandsOf("water", "0 to 60 °C", "1 to 32 °C", "water as drawn: "+practice)
	height       = bandsOf("a height above the sea", "-430 to 5000 m", "-430 to 4000 m", "few live higher")

	wetFlow    = bandsOf("a flow", "0.01 l/h to 100000 m3/h", "", "")
	soakedIn   = bandsOf("an amount of water", "1 ml to 5000 m3", "", "").also(bandsOf("an amount of water", "1 g to 5000 t", "", ""))
	handsThere = bandsOf("a number of hands", "1 to 1000 hands", "1 to 60 hands", practice)

	volume = bandsOf("a volume", "50 ml to 5000 m3", "1 l to 300 m3", practice)
	area   = bandsOf("an area", "10 cm2 to 10000 m2", "100 cm2 to 3000 m2", practice)

	airflow  = bandsOf("an airflow", "1 l/min to 3000000 m3/h", "0.2 to 500000 m3/h", practice)
	reaches  = bandsOf("kiln air", "-20 to 350 °C", "-10 to 320 °C", "dials of kitchen ovens go to 550 °F and some to 600 °F: "+practice)
	power    = bandsOf("a power", "5 W to 100000 kW", "30 W to 20000 kW", practice)
	returned = bandsOf("a share of the air", "0 to 98 %", "", "") // shut flaps leak the rest; the models of kiln and box take no more

	emptyWeight = bandsOf("an empty weight", "1 g to 100 t", "10 g to 20 t", practice)
	division    = bandsOf("a division", "0.0001 g to 20 kg", "0.001 g to 20 kg", practice)
	load        = bandsOf("what a scale holds", "1 g to 100 t", "20 g to 100 t", practice)

	charge        = bandsOf("a charge", "2 g to 1000 t", "40 g to 300 t", practice)
	pieceHumidity = bandsOf("a relative humidity", "1 to 100 %", "20 to 100 %", practice)
)
