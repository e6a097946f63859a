package drying

import "maltwright/sim/air"

const (
	// dampestX bounds the moisture, kg/kg dry basis, that malt can be given:
	// 80 % wet basis.
	dampestX = 4.0

	// Coldest and Hottest bound the temperature of malt, °C.
	Coldest, Hottest = -20.0, 180.0
)

func checkMoisture(x float64) error {
	return air.Within("moisture, dry basis", x, "kg/kg", 0, dampestX)
}

func checkTemperature(t float64) error {
	return air.Within("temperature of the malt", t, "°C", Coldest, Hottest)
}
