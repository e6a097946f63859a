package profile

// Triticale is malted as rye is.
var triticale = as(rye, "triticale")

// as is a grain under another name, malted in the same way.
func as(g Grain, name string) Grain {
	g.Name = name
	return g
}
