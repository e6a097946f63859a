package grain

import "maltwright/sim/drying"

// Figures of barley from which the other species are scaled.
const (
	// barleyHuskWater, kg/kg dry matter: calibrated, with barleyFilmWater, to
	// the steeping table of [kunze], the weighings of [molina-cano-1995] and
	// 23.2 % after five minutes at 18 °C [heriot-watt-icbd], which it gives
	// from a first moisture of 14 %.
	barleyHuskWater = 0.06
	// barleyFilmWater, kg/kg dry matter: calibrated, as barleyHuskWater.
	barleyFilmWater = 0.08
	// barleyCoreWater, kg/kg dry matter: calibrated to the same table. It is 1/k2 of
	// Peleg's law.
	barleyCoreWater = 1 / 1.2
	// barleyUptakeEnergy, J/mol: published, unpolished barley [mok-1983]. A cereal
	// of which no other is known has it too.
	barleyUptakeEnergy = 48.5e3
	// barleyLeachPool, share of dry matter: calibrated so that a steep with 20
	// to 24 h under water loses 1.0 % (handbook, from memory [narziss]).
	barleyLeachPool = 0.015
	// barleyDrowns, s: calibrated to common practice, as drownBy. A day without oxygen left
	// malt that was friable [bryce-2010].
	barleyDrowns = 24 * 3600.0
	// barleyDryStop, wet basis: common practice; growth ends under 30 %.
	barleyDryStop = 0.30
	// barleyMoistFull, wet basis: calibrated to cast moistures of 42 to 45 %.
	barleyMoistFull = 0.42
	// barleyWakeEarly, wet basis: calibrated, as barleyChit; barley begins to
	// germinate on some points less water than it needs to grow on (common
	// practice).
	barleyWakeEarly = 0.06
	// barleyChit, °C·h: calibrated to two checks together: the daily-counted
	// germination index of 6.7 to 9.4 at 20 °C, and chit above 80 % at cast in
	// the schedule of [canadian-guide].
	barleyChit = 94.0
	// barleyChitSpread, natural log: calibrated to the same index.
	barleyChitSpread = 0.75
	// barleyMarkSpread, natural log: calibrated so that a piece with a mean
	// acrospire near three quarters has few kernels overgrown (common practice).
	barleyMarkSpread = 0.15
	// barleyRootlets, share of dry matter: handbook, from memory [narziss].
	barleyRootlets = 0.037
)

// barleyMarks, °C·h after half the kernels chitted: calibrated so that the middle
// between three quarters and full falls inside 7–9 days at 12 °C, 6–7 at 14,
// 5–6 at 16 and 4–5 at 18 °C (handbook, from memory [kunze]).
func barleyMarks() [4]float64 { return [4]float64{700, 1250, 1850, 2400} }

// barleyRespiration, share of the first dry matter per day at 16 °C on days one
// to six: calibrated to a total of 5.8 % (handbook, from memory [narziss]).
func barleyRespiration() [6]float64 {
	return [6]float64{0.0052, 0.0093, 0.0124, 0.0124, 0.0104, 0.0083}
}

// barley: bulk density inside the 650–750 kg/m³ of a sound lot (handbook, from
// memory [mebak]); final germination over temperature published [onofri-2018];
// base temperature by the convention of the handbooks; best temperature where
// that final germination starts to fall fast.
func barley() Profile {
	return Profile{
		Name:        "barley",
		BulkDensity: 680, KernelWeight: 0.045,
		HuskWater: barleyHuskWater, FilmWater: barleyFilmWater,
		CoreWater: barleyCoreWater,
		Uptake:    1, UptakeEnergy: barleyUptakeEnergy, LeachPool: barleyLeachPool,
		Drowns:  barleyDrowns,
		DryStop: barleyDryStop, MoistFull: barleyMoistFull, WakeEarly: barleyWakeEarly,
		BaseT: 0, BestT: 25, CeilingT: 40,
		Germinates: [6]Germinates{{0, 0.95}, {15, 0.95}, {25, 0.89}, {30, 0.77}, {35, 0.19}, {40, 0}},
		Chit:       barleyChit, ChitSpread: barleyChitSpread,
		Marks: barleyMarks(), MarkSpread: barleyMarkSpread,
		RespirationT: 16, Respiration: barleyRespiration(),
		RootletShare: barleyRootlets,
		Malt:         drying.Malt{},
	}
}

// scaled returns barley's growth with every clock mark multiplied by pace and
// every respiration rate by breath. It keeps barley's figures of drying, see dries.
func scaled(pace, breath float64) Profile {
	p := barley()
	p.Chit *= pace
	for i := range p.Marks {
		p.Marks[i] *= pace
	}
	for i := range p.Respiration {
		p.Respiration[i] *= breath
	}
	return p
}
