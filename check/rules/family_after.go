package rules

// afterRules are listed in the order in which they are run.
func afterRules() []Rule { return nil }
