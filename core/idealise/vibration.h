#pragma once
#include "fem/modes.h"
#include "idealise/structure.h"

/// Natural frequencies of the whole (ID-13): skin, ribs, angles, brackets, the item as a uniform cuboid, masses on the skin.
namespace thinskin::idealise {

/// Masses of all bodies of the assembly, in its order.
[[nodiscard]] std::vector<fem::MassMatrix> body_masses(const Structure& s);

/// all: the whole list. lowest_hung: as many modes as lowest_hung_Hz() needs, in a fraction of the time; the same figure to 1e-7.
enum class Modes { all, lowest_hung };

/// `about`: the solved state whose closed contacts stay closed. `up_to_Hz`: what must be known; the number of modes is bounded.
[[nodiscard]] results::Vibration vibration(const Structure& s, const fem::JointState& about, double up_to_Hz, Modes which, SkinCache& cache);

/// The edges of a door are not those of a body: hinges, latch and frame give.
[[nodiscard]] inline bool on_a_door(const layout::Layout& l) { return l.kind != model::PanelKind::wall; }

/// Up to which frequency the checks of this case look.
[[nodiscard]] double highest_asked_Hz(const layout::Layout& l);

/// The frequencies with the door's own frame, where its sections, hinges and latches are known, else none; `cache` is for that skin alone.
[[nodiscard]] std::vector<results::NaturalMode> door_frame_modes(const layout::Layout& l, const Options& options, const fem::JointState& about, Modes which, SkinCache& cache);

/// Frequency of the hung parts, Hz, of which half is taken for the lowest: the lowest with rigid edges, an upper bound, or twice the
/// lowest on the door's own frame, a low estimate, whichever is less. None: not worked out. Engineering judgement.
[[nodiscard]] std::optional<double> lowest_hung_Hz(const results::Vibration& v);

/// Fills all_closed_Hz and all_open_Hz; bolts stay tight in both. A part that comes loose has 0 Hz.
void add_contact_bounds(const Structure& s, double up_to_Hz, results::Vibration& out);

/// What the figures are good for: bound, state, what is left out.
[[nodiscard]] std::string bound_words(const layout::Layout& l, const results::Vibration& v);

} // namespace thinskin::idealise
