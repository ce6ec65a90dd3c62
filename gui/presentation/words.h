#pragma once
#include "base/status.h"
#include "document/units.h"
#include "results/results.h"

#include <string>
#include <string_view>

/// Verdicts are told by word and mark as well as by colour. A mark has a shape for a drawn symbol and a letter for plain text.
namespace thinskin::gui {

enum class Mark { pass, judgement, not_covered, fail, not_solved, linear, stale, aside /* not met, and not counted in the verdict */ };

[[nodiscard]] Mark mark_of(base::Status s);
[[nodiscard]] Mark mark_of(base::Verdict v);
[[nodiscard]] std::string_view word(Mark m);     ///< "pass", "judgement", "not covered", "fail", "not solved", "rough (linear)", "stale", "not met"
[[nodiscard]] std::string_view sign(Mark m);     ///< two letters of ASCII: "OK", "J ", "? ", "X ", "- ", "~ ", "..", "i "
[[nodiscard]] std::string_view meaning(Mark m);  ///< one sentence for a tip

/// A word of the case file as a fitter says it, with the file's own word behind it: "factors of the road (quasi_static)". One without an
/// underscore says it already.
[[nodiscard]] std::string plain_words(const std::string& key);

/// A result's figure with the unit named in results ("N", "N mm", "N m", "kg m", "MPa", "mm", "-") in the system's units; demand and
/// capacity keep their ratio. Unknown units stay.
struct ShownFigure { std::string text, unit; };
[[nodiscard]] ShownFigure shown_figure(double value, const std::string& unit, UnitSystem u);

} // namespace thinskin::gui
