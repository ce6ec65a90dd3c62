#pragma once
#include "casefile/edit.h"
#include "casefile/values.h"
#include "presentation/inputs.h"

/// Inside presentation: one field from a value and its row of the schema.
namespace thinskin::gui {

/// "centre_of_mass" and "leg.gauge" in words: "centre of mass", "leg gauge".
[[nodiscard]] std::string in_words(std::string key);

[[nodiscard]] Field field_of(const Document& d, const model::Case& c, const casefile::Value& v, const std::string& section, UnitSystem units);

/// Optional keys of a section's own block that are not written and have no default, as paths.
[[nodiscard]] std::vector<std::string> missing_keys(const Section& s);

} // namespace thinskin::gui
