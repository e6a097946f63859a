package vocabulary

import "slices"

// Other is a word that people write where the language has another one.
type Other struct {
	In      []Block
	Written []string
	Means   string // the statement that it is, with the values that stand behind it
	Write   string // how it is said where the values stand elsewhere: what to write
	Sample  string // the value in Write that stands for one that was written
}

// others are other words for statements.
var others = []Other{
	{In: blocks(Floor, KilnFacts, Vessel), Written: []string{"recirculate", "recirculates", "recirculation", "recirculated", "recirculating", "return", "return-air", "returned"}, Means: "returns"},
	{In: blocks(KilnFacts), Written: []string{"recovery", "recover", "recovering", "heat-recovery", "exchanger"}, Means: FactRecovers},
	{In: blocks(Floor, KilnFacts, Vessel), Written: []string{"drum", "rotating", "rotates", "rotate", "rotated", "turning", "turns", "tumbling", "tumbler"}, Means: FactTumbles},
	{In: blocks(Floor, KilnFacts, Vessel), Written: []string{"burner", "furnace", "stove", "heating", "element"}, Means: "heater"},
	{In: blocks(Floor, KilnFacts, Vessel), Written: []string{"blower", "ventilator"}, Means: FactFan},
	{In: blocks(KilnFacts), Written: []string{"stack"}, Means: FactChimney},
	{In: blocks(KilnFacts), Written: []string{"fuel", "fire", "firing"}, Means: "fired"},
	{In: blocks(KilnFacts), Written: []string{"wall", "walling"}, Means: "walls"},
	{In: blocks(KilnFacts), Written: []string{"insulation", "insulated"}, Write: "say it of the walls, with what they are made of: walls brick with insulation"},
	{In: blocks(Floor, KilnFacts, Vessel), Written: []string{"efficiency", "efficient"}, Write: "write it behind the power of the heater: heater 110 kW at 85 %", Sample: "85 %"},
	{In: blocks(KilnFacts), Written: []string{"holds-malt", "volume", "capacity"}, Means: FactHolds},

	{In: blocks(Kiln), Written: []string{"quench", "quenched", "quenching", "douse"}, Write: "write it of the cooling, with the temperature to cool to: cool to malt 30 °C with water 2 l", Sample: "2 l"},
	{In: blocks(Kiln), Written: []string{"smoke", "smoked", "smoking"}, Write: "say it of the step that is done in smoke, and the peat or the wood of the kiln: dry at air-on 45 °C for 8 h with smoke, and fired peat by direct", Sample: "8 h"},
	{In: blocks(Kiln), Written: []string{"toast", "toasted", "bake", "torrefy"}, Means: VerbRoast},
}

// OtherWord gives the statement of the block that somebody means who writes the word.
func OtherWord(in Block, written string) (Other, bool) {
	i := slices.IndexFunc(others, func(o Other) bool { return slices.Contains(o.In, in) && slices.Contains(o.Written, written) })
	if i < 0 {
		return Other{}, false
	}
	return others[i], true
}

// synonyms are other words for choices. Of what is only the nearest of those there are, Sure
// is false.
var synonyms = []struct {
	written []string
	means   string
	sure    bool
}{
	{[]string{"steel", "iron", "aluminium", "aluminum", "tin", "sheet", "sheet-metal", "stainless"}, WallsMetal, true},
	{[]string{"timber", "plywood", "boards", "planks", "wooden"}, WallsWood, true},
	{[]string{"bricks", "brickwork", "masonry"}, WallsBrick, true},
	{[]string{"stones", "stonework", "granite", "sandstone"}, WallsStone, true},
	{[]string{"concrete", "cement", "limestone"}, WallsStone, false},
	{[]string{"block", "blocks", "clay", "adobe", "tile", "tiles", "firebrick"}, WallsBrick, false},
	{[]string{"insulated", "insulating"}, WithInsulation, true},
	{[]string{"turf"}, FiredPeat, true},
	{[]string{"logs", "chips", "pellets"}, FiredWood, true},
	{[]string{"propane", "butane", "lpg", "methane"}, FiredGas, true},
	{[]string{"diesel", "kerosene", "fuel-oil"}, FiredOil, true},
	{[]string{"electricity", "electrical", "mains"}, FiredElectric, true},
	{[]string{"open", "opened"}, DoorAjar, true},
	{[]string{"recirculation", "recirculated", "recirculating", "recirculate", "return-air", "return"}, WithReturns, true},
	{[]string{"smoked", "smoking"}, WithSmoke, true},
	{[]string{"air", "flow"}, WithAirflow, false},
	{[]string{"dried", "finished"}, MaltKilned, false},
}

// Synonym gives the word of a list that somebody means who writes another one, and whether it
// is the same thing or only the nearest to it.
func Synonym(written string, among []string) (word string, sure, ok bool) {
	for _, s := range synonyms {
		if slices.Contains(s.written, written) && slices.Contains(among, s.means) {
			return s.means, s.sure, true
		}
	}
	return "", false, false
}
