package rules

// lotRules are listed in the order in which they are run.
func lotRules() []Rule { return nil }
