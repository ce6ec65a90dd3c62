#include "search/progress.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::search {

std::string stage_words(const Progress& p) { return fmt::format("stage {} of {}, {}", p.step, p.steps, p.stage); }

std::string progress_words(const Progress& p)
{
    const std::string left = p.seconds_left < 0 ? "time left not known yet" : fmt::format("about {:.0f} s left of this stage", std::ceil(p.seconds_left));
    return fmt::format("{}: {} of {}, {}{}", stage_words(p), p.done, p.of, left, p.so_far.empty() ? "" : "; so far " + p.so_far);
}

} // namespace thinskin::search
