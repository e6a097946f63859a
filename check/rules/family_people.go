package rules

// peopleRules are listed in the order in which they are run.
func peopleRules() []Rule { return nil }
