// Package steep wets grain: soaks under water and rests in air, until it is
// cast.
//
// # How it works
//
// A kernel holds three waters, all counted per kg of the first dry matter: the
// core, the husk and the film on the surface. In water the film and the husk
// fill within minutes and the core drinks by Peleg's law [peleg-1988], written
// as a rate so that it runs through every change of temperature and every rest:
//
//	d(core)/dt = m·s·(1 − k2·core)²/k1(T)
//
// where core is the water drunk so far, k1 falls with warmth [mok-1983], s is
// the lot's own speed and m rises as the kernels take up breathing, from the third
// to the ninth hour of air [yin-1996]. In air the core goes on drinking from film
// and husk while they last, so the drained weight moves by evaporation only.
//
// Each of these has a closed solution over a stretch of constant conditions. A
// step is cut where the conditions change by themselves (film and husk used up,
// oxygen gone), so the waters do not depend on how the caller cuts the time.
//
// Growth rides on top: the clock and the respiration of package grain, slowed
// alike by the oxygen that the kernels can take over what they want. Under water
// that is what comes through it and what bubbles bring, in a rest what diffuses
// into the bed and what drawn air carries. Kernels that lack it owe for it later,
// and drown where it lasts for days. It is integrated with steps of some minutes.
//
// [State] is a plain value. To find the hour of an event, copy it, advance the
// copy, and bisect.
package steep
