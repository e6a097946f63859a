package profile

// Amber malt is pale malt, roasted dry for 45 to 50 min to a light buff inside (home practice); no enzymes are expected of it.
// It is coloured by roasting; what is not heated beyond the cure of pale malt is not roasted.
var amber = Malt{
	Name:     "amber",
	Cast:     Band{0.42, 0.46},
	EndMost:  0.04,
	EndLeast: 0.01,
	Cure:     Band{95, 150},
	Colour:   Band{40, 90},
	Least:    Least{Heat: 94, Colour: 10, ElsePale: true},
}
