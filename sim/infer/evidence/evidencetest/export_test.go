package evidencetest

// The truth of the loft of the examples, for tests from outside.
var (
	Loft       = loft
	LoftOffset = loftOffset

	Porch       = porch
	PorchOffset = porchOffset
)
