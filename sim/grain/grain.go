// Package grain describes the kernel itself: what each species is like, how a lot
// differs from its species, and how a kernel grows once it is wet.
//
// # How it works
//
// A [Profile] is the data of one species; a table holds ten of them. A [Lot] is
// a profile with what is known of one delivery. A [Batch] is the grain as it is
// carried from stage to stage: its dry matter, its water and its growth.
//
// Growth runs on one clock, counted in degree-hours above the base temperature
// of the species: d(clock)/dt = (T − T_base)·φ(w)·access·(1 − debt). The chit,
// the acrospire, the modification and the respiration are all read from that
// clock, so a stage only has to advance three numbers, the clock, the dry matter
// respired and what the kernels owe for want of oxygen, and the steep, the bed and
// the withering floor can hand the same growth on.
//
// Kernels differ. A kernel that is z standard deviations slow chits when the clock
// reads C·exp(σ_c·z), and its acrospire then reaches mark k after a further
// M_k·exp(σ_a·z). Both rise with z, so the share of kernels past a mark is the
// normal integral up to the z that solves their sum for the clock.
package grain
