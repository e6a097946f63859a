package evidence

// LogPrior is for tests from outside.
var LogPrior = logPrior
