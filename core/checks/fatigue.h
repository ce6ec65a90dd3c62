#pragma once
#include "checks/checks.h"

/// Life under repeated stress, from load cases that are there already. Everything is linear between them.
namespace thinskin::checks {

/// One figure of a detail in the road states that a vertical shake runs through.
struct Swing { double parked = 0, pothole = 0, rebound = 0; };
/// The vertical accelerations of those states, g.
struct Heave { double parked = -1, pothole = 0, rebound = 0; };

/// The most that a figure changes per g of vertical acceleration, whatever the size of the shake:
///   max(|F(a)|/|a|) over the three states, and |F(a) - F(b)|/|a - b| from the parked one to the two others
/// Contacts without preload answer in proportion, each sense with its own slope, so no swing about 1 g changes a figure, signed or
/// the size of a vector, by more than the larger slope times the swing. A state nearer than 0.2 g to weightless gives no ratio.
/// NaN stays NaN.
[[nodiscard]] double per_g(const Swing& f, const Heave& a);

/// Damage over the wanted distance of one detail; the largest over all mounts that the road allows (engineering judgement), with the
/// compressor's own shaking added by Miner. Fills sigma, damage, km and years.
void work_out(results::Life& life, const results::Shaking& s);

} // namespace thinskin::checks
