package vocabulary

import "slices"

// drives are the blocks of what air is driven through.
var drives = blocks(Floor, KilnFacts, Vessel)

// others are other words for statements.
var others = slices.Concat(othersOfFile, othersOfHouse, othersOfProcess, othersOfStages, othersOfBatch)

var othersOfFile = []Other{
	{In: blocks(File), Written: []string{"tub", "bucket", "tank", "steeptank", "steeper", "steepingvessel", "pot", "kettle", "pail", "barrel", "bin", "container", "cistern", "pan", "crock"}, Means: "vessel"},
	{In: blocks(File), Written: []string{"couch", "germinationfloor", "maltingfloor", "growingfloor", "germinator", "germinationbox"}, Means: "floor"},
	{In: blocks(File), Written: []string{"tray", "rack", "box", "mat", "bed", "shelf", "drum"}, Means: "floor", Likely: true},
	{In: blocks(File), Written: []string{"oven", "dehydrator", "dryer", "drier", "dryingcabinet", "cabinet", "dryingroom", "roaster", "smoker"}, Means: VerbKiln},
	{In: blocks(File), Written: []string{"room", "place", "location", "cellar", "ambient", "workplace", "loft", "shed"}, Means: "site"},
	{In: blocks(File), Written: []string{"lot", "seed", "crop", "cereal", "variety", "rawgrain"}, Means: "grain"},
	{In: blocks(File), Written: []string{"recipe", "schedule", "program", "programme", "procedure", "malting", "plan"}, Means: "process"},
	{In: blocks(File), Written: []string{"balance", "weighingscale"}, Means: "scale"},
	{In: blocks(File), Written: []string{"record", "log", "logbook", "journal", "run"}, Means: "batch", Likely: true},
	{In: blocks(File), Written: []string{"include", "import", "load", "read", "with", "using"}, Means: "use"},
	{In: blocks(File, Process), Written: []string{"limit", "threshold", "thresholds"}, Means: "limits"},
}

var othersOfHouse = []Other{
	{In: drives, Written: []string{"recirculate", "recirculates", "recirculation", "recirculated", "recirculating", "return", "returnair", "returned"}, Means: FactReturns},
	{In: blocks(KilnFacts), Written: []string{"recovery", "recover", "recovering", "heatrecovery", "exchanger"}, Means: FactRecovers},
	{In: drives, Written: []string{"drum", "rotating", "rotates", "rotate", "rotated", "turning", "turns", "tumbling", "tumbler"}, Means: FactTumbles},
	{In: drives, Written: []string{"burner", "furnace", "stove", "heating", "element", "power", "heat", "heaterpower", "heatingpower", "heatingelement", "wattage", "watt", "watts", "kw", "kilowatt", "kilowatts", "rating", "rated"}, Means: "heater"},
	{In: drives, Written: []string{"blower", "ventilator"}, Means: FactFan},
	{In: drives, Written: []string{"flow", "air", "airspeed", "ventilation", "throughput", "cfm"}, Means: "airflow"},
	{In: blocks(KilnFacts), Written: []string{"stack"}, Means: FactChimney},
	{In: blocks(KilnFacts), Written: []string{"fuel", "fire", "firing", "energy", "heated", "heating"}, Means: "fired"},
	{In: blocks(KilnFacts), Written: []string{"wall", "walling"}, Means: "walls"},
	{In: blocks(KilnFacts), Written: []string{"insulation", "insulated"}, Write: "say it of the walls, with what they are made of: walls brick with insulation"},
	{In: drives, Written: []string{"efficiency", "efficient"}, Write: "write it behind the power of the heater: heater 110 kW at 85 %", Sample: "85 %"},
	{In: blocks(KilnFacts), Written: []string{"holdsmalt", "volume", "capacity"}, Means: FactHolds},
	{In: blocks(KilnFacts), Written: []string{"reach", "range", "temperature", "temperatures", "temp", "temps", "temperaturerange", "temprange", "thermostat"}, Means: "reaches"},
	{In: blocks(KilnFacts), Written: []string{"maxtemp", "maxtemperature", "maximumtemperature", "upto"}, Means: "reaches", Likely: true},
	{In: blocks(KilnFacts), Written: []string{"draft"}, Means: FactDraught},
	{In: drives, Written: []string{"size", "surface", "space", "floorarea", "trayarea", "bedarea", "sqft", "squarefeet", "squarefoot", "sqm", "squaremetres", "squaremeters", "m2", "ft2"}, Means: FactArea},
	{In: blocks(Floor, Vessel), Written: []string{"chiller", "cooling", "aircon", "refrigerator", "cooled"}, Means: "cooler"},

	{In: blocks(Vessel), Written: []string{"capacity", "volume", "size", "holding", "litre", "litres", "liter", "liters", "gallon", "gallons", "contains", "content", "contents"}, Means: FactHolds},
	{In: drives, Written: []string{"weight", "tare", "empty", "emptyweight", "mass", "tareweight"}, Means: "weighs"},
	{In: blocks(Scale), Written: []string{"resolution", "precision", "increment", "step", "graduation", "readability", "accuracy", "resolves"}, Means: "division"},
	{In: blocks(Scale), Written: []string{"capacity", "max", "maximum", "range", "upto", "load", "weighs"}, Means: FactHolds},

	{In: blocks(Grain), Written: []string{"mc", "moisturecontent", "watercontent", "water", "wetness", "humidity", "moist"}, Means: MeasureMoisture},
	{In: blocks(Grain), Written: []string{"type", "kind", "grain", "cereal", "specie"}, Means: "species"},
	{In: blocks(Grain), Written: []string{"kernelweight", "cornweight", "thousandkernelweight", "thousandcornweight", "thousandgrainweight", "tkw", "tgw", "tcw", "1000kernelweight", "1000cornweight", "1000grainweight", "grainweight", "seedweight", "kernelmass"}, Means: "kernel-weight"},
	{In: blocks(Grain), Written: []string{"germinationrate", "germinativecapacity", "germinativeenergy", "germinationtest", "germ", "viability", "germinates", "germinated"}, Means: "germination"},
	{In: blocks(Grain), Written: []string{"proteins", "proteincontent", "crudeprotein"}, Means: "protein"},
	{In: blocks(Grain), Written: []string{"untreated", "undressed", "notreatment", "nottreated", "seeduntreated", "notdressed"}, Means: "treated " + SaidNo},
	{In: blocks(Grain), Written: []string{"noergot", "ergotfree"}, Means: "ergot " + SaidNone},
	{In: blocks(Grain), Written: []string{"nomould", "nomold", "mouldfree"}, Means: "mould " + SaidNone},
	{In: blocks(Grain), Written: []string{"dressed", "coated", "treatment", "seedtreated", "seeddressing", "dressing"}, Means: "treated"},
	{In: blocks(Grain), Written: []string{"mold", "molds", "moulds", "moldy", "mouldy", "mildew"}, Means: "mould"},
	{In: blocks(Grain), Written: []string{"delivery", "received", "bought", "purchased", "intake", "arrived"}, Means: "delivered"},
	{In: blocks(Grain), Written: []string{"stored", "storage", "kept", "location"}, Means: VerbStore},

	{In: blocks(Site), Written: []string{"temp", "temps", "temperature", "temperatures", "room", "ambient", "ambienttemperature", "ambienttemp", "roomtemperature", "roomtemp", "airtemp", "airtemperature", "ambientair", "roomair"}, Means: VerbAir},
	{In: blocks(Site), Written: []string{"rh", "humid", "relativehumidity", "airhumidity", "moisture", "roomhumidity"}, Means: "humidity"},
	{In: blocks(Site), Written: []string{"watertemp", "watertemperature", "steepwater", "tap", "tapwater", "well", "wellwater", "mains"}, Means: PlaceWater},
	{In: blocks(Site), Written: []string{"elevation", "height", "asl", "alt", "sealevel", "abovesea"}, Means: "altitude"},
	{In: blocks(Site), Written: []string{"up", "hours", "workinghours", "shift", "working", "work", "day", "daytime", "waking"}, Means: "awake"},
	{In: blocks(Site), Written: []string{"holiday", "holidays", "absent", "vacation", "closed", "out"}, Means: "away"},
}

var othersOfProcess = []Other{
	{In: blocks(Process), Written: []string{"malt", "type", "style", "produce", "product", "malttype"}, Means: "make"},
	{In: blocks(Process, Batch), Written: []string{"grain", "charge", "take", "lot", "use", "barley", "ingredient"}, Means: "from"},
	{In: blocks(Process), Written: []string{"site", "location", "place", "where", "room", "in"}, Means: "at"},
	{In: blocks(Process), Written: []string{"soaking", "soak", "wetting", "steepage"}, Means: VerbSteep, Likely: true},
	{In: blocks(Process), Written: []string{"germination", "germinating", "germanate", "germanating", "germanation", "sprout", "sprouting", "sprouts", "ferment", "grow", "growing", "growth", "couch", "couching", "flooring", "floor", "germ", "modify", "modification"}, Means: VerbGerminate},
	{In: blocks(Process), Written: []string{"kilndry", "kilndrying", "drying", "dry", "oven", "ovendry", "dryingstage", "dehydrate", "dehydrator", "bake"}, Means: VerbKiln},
	{In: blocks(Process), Written: []string{"withered", "predry", "airdry", "airdrying"}, Means: VerbWither, Likely: true},
	{In: blocks(Process), Written: []string{"deroot", "derooting", "polish", "polishing", "clean", "cleaning", "sieve", "sieving", "derootlet", "rubbing", "culm", "deculming"}, Means: VerbDeculm},
	{In: blocks(Process), Written: []string{"storage", "keep", "mature", "age", "condition", "conditioning", "cellar"}, Means: VerbStore},
	{In: blocks(Process), Written: []string{"promise", "target", "goal", "want", "aim", "should"}, Means: "expect"},
}

var othersOfStages = []Other{
	{In: blocks(Steep, Repeat), Written: []string{"soke", "submerge", "immerse", "immersion", "cover", "wet", "steep", "steeping", "water", "underwater", "fill", "wetstand"}, Means: VerbSoak},
	{In: blocks(Steep, Repeat), Written: []string{"dry", "drain", "drained", "draining", "airrest", "airrests", "couch", "drip", "stand", "airstand", "drainage", "breathe", "dryrest", "air"}, Means: VerbRest},
	{In: blocks(Steep), Written: []string{"aeration", "bubble", "bubbling", "airpump"}, Means: VerbAerate},
	{In: blocks(Steep, Repeat), Written: []string{"cycle", "loop", "again"}, Means: VerbRepeat, Likely: true},
	{In: blocks(Steep, Germinate, Wither), Written: []string{"end", "stop", "till", "til", "ends", "finish", "endwhen", "stopat", "stopwhen", "endat", "waituntil"}, Means: "until"},
	{In: blocks(Germinate, Wither), Written: []string{"grow", "days", "day", "duration", "time", "germinate", "last", "lasts", "length", "hours", "sprout", "wait", "during"}, Means: "for"},

	{In: blocks(Germinate), Written: []string{"keep", "maintain", "temp", "temperature", "bedtemp", "bedtemperature", "holdtemp", "holdtemperature", "keepat"}, Means: VerbHold},
	{In: blocks(Germinate), Written: []string{"bed"}, Means: "hold bed"},
	{In: blocks(Germinate), Written: []string{"room"}, Means: "hold room"},
	{In: blocks(Germinate, Wither), Written: []string{"flip", "flipping", "stir", "mix", "rake", "plough", "plow", "toss", "shovel", "loosen", "turnover", "fluff"}, Means: VerbTurn},
	{In: blocks(Germinate), Written: []string{"spray", "mist", "water", "wet", "moisten", "spritz", "rewet", "addwater", "sprinkler"}, Means: VerbSprinkle},
	{In: blocks(Germinate, Wither), Written: []string{"ventilate", "aerate", "blow", "fan"}, Means: VerbAir},
	{In: blocks(Germinate, Wither), Written: []string{"humid", "rh", "relativehumidity"}, Means: "humidity"},
	{In: blocks(Steep, Germinate, Wither, Kiln), Written: []string{"check", "holdpoint", "checkpoint", "require", "mustbe", "wait", "waituntil", "waitfor"}, Means: VerbGate, Likely: true},
	{In: blocks(Germinate, Wither), Written: []string{"max", "maximum", "upto", "nolongerthan"}, Means: "allow at most"},
	{In: blocks(Germinate, Wither), Written: []string{"guard", "limit", "within", "between", "min", "minimum", "takes"}, Means: "allow", Likely: true},

	{In: blocks(Kiln), Written: []string{"quench", "quenched", "quenching", "douse"}, Write: "write it of the cooling, with the temperature to cool to: cool to malt 30 °C with water 2 l", Sample: "2 l"},
	{In: blocks(Kiln), Written: []string{"smoke", "smoked", "smoking"}, Write: "say it of the step that is done in smoke, and the peat or the wood of the kiln: dry at air-on 45 °C for 8 h with smoke, and fired peat by direct", Sample: "8 h"},
	{In: blocks(Kiln), Written: []string{"toast", "toasted", "torrefy"}, Means: VerbRoast},
	{In: blocks(Kiln), Written: []string{"kiln", "kilning", "kilndry", "wither", "dehydrate", "airdry", "predry"}, Means: VerbDry},
	{In: blocks(Kiln), Written: []string{"ramp", "rampup", "raise", "rise", "heat", "heatup", "warm", "warmup", "hold", "keep", "holdtemperature", "maintain"}, Means: VerbDry, Likely: true},
	{In: blocks(Kiln), Written: []string{"cureing", "finish", "finishing", "bake"}, Means: VerbCure, Likely: true},
	{In: blocks(Kiln), Written: []string{"cooldown", "chill", "cooling"}, Means: VerbCool},
	{In: blocks(Kiln), Written: []string{"turn", "flip", "flipping", "mix", "rake", "toss", "shuffle", "rotate"}, Means: VerbStir},
	{In: blocks(Kiln), Written: []string{"caramelise", "caramelize", "sugar", "saccharify", "mash"}, Means: VerbStew},
}

var othersOfBatch = []Other{
	{In: blocks(Batch), Written: []string{"weight", "mass", "scale", "wt"}, Means: "weighed"},
	{In: blocks(Batch), Written: []string{"start", "started", "begin", "begun", "date", "starting"}, Means: "began"},
	{In: blocks(Batch), Written: []string{"flip", "flipped", "stirred", "stir", "mixed", "raked", "turning"}, Means: "turned"},
	{In: blocks(Batch), Written: []string{"temp", "temperature", "thermometer", "measured", "reading"}, Means: "read"},
	{In: blocks(Batch), Written: []string{PlaceBed}, Means: "read " + PlaceBed},
	{In: blocks(Batch), Written: []string{PlaceRoom}, Means: "read " + PlaceRoom},
	{In: blocks(Batch), Written: []string{PlaceWater}, Means: "read " + PlaceWater},
	{In: blocks(Batch), Written: []string{PlaceMalt}, Means: "read " + PlaceMalt},
	{In: blocks(Batch), Written: []string{PlaceOven}, Means: "read " + PlaceOven},
	{In: blocks(Batch), Written: []string{PlaceAir}, Means: "read " + PlaceAir},
	{In: blocks(Batch), Written: []string{"airon"}, Means: "read " + PlaceAirOn},
	{In: blocks(Batch), Written: []string{"airoff"}, Means: "read " + PlaceAirOff},
	{In: blocks(Batch), Written: []string{"chit", "chitted", "chits", "chitting", "sprouted", "rootlet", "rootlets"}, Means: "counted " + MeasureChit},
	{In: blocks(Batch), Written: []string{"acrospire", "acrospires", "shoot", "shoots"}, Means: "counted " + MeasureAcrospire},
	{In: blocks(Batch), Written: []string{"rub", "rubbed"}, Means: "felt " + MeasureRub},
	{In: blocks(Batch), Written: []string{"feel", "feels"}, Means: "felt"},
	{In: blocks(Batch), Written: []string{"note", "notes", "noted", "comment", "observed", "observation", "smell", "smelled", "noticed"}, Means: VerbRemark},
	{In: blocks(Batch), Written: []string{"lab", "analysis", "analysed", "analyzed", "assayed"}, Means: "tested"},
	{In: blocks(Batch), Written: []string{"altered", "adjusted", "instead", "modified"}, Means: "changed"},
	{In: blocks(Batch), Written: []string{"pin"}, Means: "pinned"},
	{In: blocks(Batch), Written: []string{"bagtare", "tarebag", "tareofbag", "emptybag", "bagempty"}, Means: "tare"},
}
