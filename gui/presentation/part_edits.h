#pragma once
#include "presentation/inputs.h"

#include <set>

/// Inside presentation: what edits of whole parts share.
namespace thinskin::gui {

[[nodiscard]] FieldEdit refused(std::string why);
[[nodiscard]] FieldEdit edit_called(std::string name, std::vector<casefile::Change> changes);
/// In double quotes, for the flow form.
[[nodiscard]] std::string quoted(const std::string& text);
/// "angle 3": the first number that no name of the case has.
[[nodiscard]] std::string new_name(const std::set<std::string>& taken, const std::string& stem, const std::string& between);
[[nodiscard]] std::set<std::string> all_names(const model::Case& c);

} // namespace thinskin::gui
