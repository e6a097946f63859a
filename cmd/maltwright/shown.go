package main

// Shown are the parts of an answer that are a line each, and told in full where they are asked for.
type Shown struct {
	Assumed  bool `help:"Show in full what the forecast had to assume."`
	Cautions bool `help:"Show in full what can hurt somebody, and what to do about it."`
}
