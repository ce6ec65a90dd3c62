#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace thinskin::base {

/// Number of single-letter insertions, removals, replacements and swaps of neighbours that turn one word into the other.
[[nodiscard]] int edit_distance(std::string_view a, std::string_view b);

/// The candidate that is most probably meant (at most a third of its letters differ, at least one slip allowed),
/// or an empty text. Ties go to the first.
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& candidates);

/// "did you mean thickness?" or an empty text.
[[nodiscard]] std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates);

} // namespace thinskin::base
