#pragma once
#include <string_view>
#include <vector>

namespace thinskin::casefile {

struct StarterText {
    std::string_view kind, purpose, text;
    /// Keys that many jobs of the kind can give and that the text leaves out, a line each: "door.check_strap: {...}".
    std::vector<std::string_view> offers = {};
};

/// The values of the starter cases; comments come from the schema.
[[nodiscard]] const std::vector<StarterText>& starter_texts();

} // namespace thinskin::casefile
