#pragma once
#include <string_view>
#include <vector>

namespace thinskin::casefile {

struct StarterText {
    std::string_view kind, purpose, text;
};

/// The values of the starter cases; comments come from the schema.
[[nodiscard]] const std::vector<StarterText>& starter_texts();

} // namespace thinskin::casefile
