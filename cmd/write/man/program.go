package man

// codes are the exit codes that all commands share, variables the environment that they read, and files what they keep.
var (
	codes = []Word{
		{"0", "Done, and nothing was found at or above the level asked."},
		{"1", "Something was found, or an answer could not be given as it stands."},
		{"2", "The command line cannot be understood."},
		{"3", "It could not be done: a file, a disk."},
	}
	variables = []Word{
		{"NO_COLOR", "Where it is set to anything, nothing is written in colour."},
		{"TERM", "On a terminal that calls itself dumb nothing is written in colour."},
		{"XDG_CACHE_HOME", "Where forecasts are kept from one run to the next, on Linux, in a folder maltwright; ~/.cache if it is not set. The folder may be removed at any time."},
	}
)

// program writes what holds for all commands.
func (r *roff) program() {
	r.macro("SH", "EXIT STATUS")
	for _, c := range codes {
		r.item(bold(c.Name), c.Help, "")
	}
	r.macro("SH", "ENVIRONMENT")
	for _, v := range variables {
		r.item(bold(v.Name), v.Help, "")
	}
	r.macro("SH", "CAUTIONS")
	r.prose(`A forecast is a plan, not a measurement: weigh, feel and look. Wet grain is heavy, growing grain gives off carbon dioxide,
kilns burn, fuel gives off carbon monoxide, malt dust hurts the lungs and can explode, and dressed seed is poison. Local codes
and licensed practice come before anything the program says.`)
}
