#pragma once
#include <cstddef>
#include <functional>
#include <string>

namespace thinskin::search {

/// How far the work is: stage `step` of `steps`, each with its own count and its own time left. The first three count schemes and all of them
/// against the whole space: looked at; bounded, impossible ones at once; decided. Then come, of propose(), stage_frequencies, stage_bad_ends and stage_losses;
/// or, where nothing holds, stage_closest, stage_limits (where the case sets some) and stage_changes. Stages with nothing to do are left out.
/// `steps` is known from the first call on, but is another when nothing holds, as something else is tried then.
struct Progress {
    std::string stage;
    std::size_t done = 0, of = 0;
    double seconds_left = -1;            ///< of this stage, from its pace so far; < 0: not known yet
    int step = 1, steps = 3;
    std::string so_far;                  ///< the best that holds so far, for a person; empty: nothing yet
};
inline constexpr const char* stage_geometry = "what can be built";
inline constexpr const char* stage_bounds = "closed formulas";
inline constexpr const char* stage_schemes = "schemes decided";
inline constexpr const char* stage_frequencies = "natural frequencies";
inline constexpr const char* stage_bad_ends = "bad ends of assumptions";
inline constexpr const char* stage_losses = "single losses";
inline constexpr const char* stage_closest = "closest scheme";
inline constexpr const char* stage_limits = "without the limits given";
inline constexpr const char* stage_changes = "what would make it hold";

using Tell = std::function<void(const Progress&)>;

/// "stage 3 of 5, schemes decided", for a line or beside a bar.
[[nodiscard]] std::string stage_words(const Progress& p);
/// "stage 3 of 5, schemes decided: 17 of 60, about 4 s left of this stage; so far ...", the same in the window and on the command line.
[[nodiscard]] std::string progress_words(const Progress& p);

} // namespace thinskin::search
