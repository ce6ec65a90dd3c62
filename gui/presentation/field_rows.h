#pragma once
#include "casefile/edit.h"
#include "casefile/values.h"
#include "presentation/inputs.h"

/// Inside presentation: one field from a value and its row of the schema.
namespace thinskin::gui {

/// "centre_of_mass" and "leg.gauge" in words: "centre of mass", "leg gauge".
[[nodiscard]] std::string in_words(std::string key);

[[nodiscard]] Field field_of(const Document& d, const model::Case& c, const casefile::Value& v, const std::string& section, UnitSystem units);

/// A field for a key that is not there yet.
[[nodiscard]] Field empty_field(const model::Case& c, const casefile::Row& row, const std::string& path, const std::string& label, UnitSystem units);

/// Block of the schema in which the keys of a section are listed.
[[nodiscard]] std::string block_of_section(const std::string& path);

} // namespace thinskin::gui
