package rules

// kilnRules are of drying and curing.
func kilnRules() []Rule { return []Rule{equipmentCannot, hotWhileWet} }
