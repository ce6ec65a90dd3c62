#pragma once
#include "base/quantity.h"

#include <string>
#include <string_view>

/// Units on the screen. The file keeps what the user wrote; only an edit changes it, and what is typed keeps its unit.
namespace thinskin::gui {

enum class UnitSystem { metric, us };

/// "mm" or "in", "kg" or "lb", "N" or "lbf", "MPa" or "psi", ...: what a plain number means and what values are shown in.
[[nodiscard]] std::string_view shown_unit(base::Dimension d, UnitSystem u);

/// A value as shown: the user's own text when its unit belongs to the system, else converted and rounded ("9.843 in").
[[nodiscard]] std::string shown(const base::Quantity& q, base::Dimension d, UnitSystem u);

/// A figure in the inner unit as shown; at most five significant digits. `with_unit`: "250 mm", else "250".
[[nodiscard]] std::string shown_value(double inner, base::Dimension d, UnitSystem u, bool with_unit = true);

/// A length on the drawing, without its unit: tenths of a millimetre ("420.5"), hundredths of an inch ("16.56").
[[nodiscard]] std::string drawn_length(double mm, UnitSystem u);

/// What a typed text means for the file: "420" becomes "420 mm" (or "420 in"), "16 1/2 in" stays. ok = false with what was expected
/// when it is not such a quantity.
struct Typed { bool ok = false; std::string text, expected; };
[[nodiscard]] Typed typed(std::string_view text, base::Dimension d, UnitSystem u);
/// The same with the unit that a plain number takes.
[[nodiscard]] Typed typed_in(std::string_view text, base::Dimension d, std::string_view unit);
/// "km" of "15000 km"; empty: no unit.
[[nodiscard]] std::string_view unit_of(std::string_view text);

/// The system that the unit of a text belongs to; metric for units of both ("deg", "km") and for no unit.
[[nodiscard]] UnitSystem system_of(std::string_view text);

/// A coordinate as written to the file by a drag: "420 mm", "16.75 in"; at most 0.0005 mm or 0.00005 in off, no trailing zeros.
[[nodiscard]] std::string written_length(double mm, UnitSystem u);

} // namespace thinskin::gui
