package profile

// Spelt is malted as wheat is.
var spelt = as(wheat, "spelt")
