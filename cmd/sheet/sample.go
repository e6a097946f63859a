package sheet

// sampleSum lays out the moisture of a sample. The oven is that of a household: 103 to 105 °C until
// nothing more comes off is the drying to constant weight of laboratories, with whole grain crushed
// (common practice; the figures from memory).
func sampleSum(of string) Block {
	return SampleSum{
		Title: "Moisture of a sample of " + of,
		Steps: []string{
			"1. Weigh the empty dish. Crush or grind some 20 g coarsely, spread it in the dish, weigh at once.",
			"2. Dry it in the oven at 103 to 105 °C (217 to 221 °F), 3 h at the least. Let it cool with a lid on, and weigh.",
			"3. Dry it for 1 h more, and weigh again, until drying takes no more off it.",
		},
		Boxes: []Box{{Label: "D: dish", Unit: "g"}, {Label: "W: dish, wet", Unit: "g"}, {Label: "E: dish, dried", Unit: "g"}, {Label: "moisture", Unit: "%"}},
		Sum:   "moisture = 100 × (W − E) / (W − D) = 100 × (" + blank + " − " + blank + ") / (" + blank + " − " + blank + ") = " + blank + " %",
	}
}
