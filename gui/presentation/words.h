#pragma once
#include "base/status.h"
#include "document/units.h"
#include "results/results.h"

#include <string>
#include <string_view>

/// Verdicts are told by word and mark as well as by colour. A mark has a shape for a drawn symbol and a letter for plain text.
namespace thinskin::gui {

enum class Mark { pass, judgement, not_covered, fail, not_solved, linear, stale };

[[nodiscard]] Mark mark_of(base::Status s);
[[nodiscard]] Mark mark_of(base::Verdict v);
[[nodiscard]] std::string_view word(Mark m);     ///< "pass", "judgement", "not covered", "fail", "not solved", "linear only", "stale"
[[nodiscard]] std::string_view sign(Mark m);     ///< two letters of ASCII: "OK", "J ", "? ", "X ", "- ", "~ ", ".."
[[nodiscard]] std::string_view meaning(Mark m);  ///< one sentence for a tip

/// A result's figure with the unit named in results ("N", "N mm", "N m", "kg m", "MPa", "mm", "-") in the system's units; demand and
/// capacity keep their ratio. Unknown units stay.
struct ShownFigure { std::string text, unit; };
[[nodiscard]] ShownFigure shown_figure(double value, const std::string& unit, UnitSystem u);

} // namespace thinskin::gui
