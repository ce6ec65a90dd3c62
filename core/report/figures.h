#pragma once
#include <string>

/// Figures as printed: never better than computed.
namespace thinskin::report {

/// Rounded down to two decimals with a sign: "+0.29", "-0.01"; "> 5" above 5; "no load" for infinity; "no figure" for NaN.
/// A negative margin never prints as "+0.00".
[[nodiscard]] std::string margin_text(double margin);

/// Rounded up to two decimals: "0.78"; a value above 1 never prints as "1.00"; "no figure" unless finite.
[[nodiscard]] std::string utilisation_text(double utilisation);

/// Three significant digits or all before the point: "1305", "72.4", "0.123"; "no figure" unless finite.
[[nodiscard]] std::string figure(double value);

/// Fixed number of decimals without a negative zero; "no figure" unless finite.
[[nodiscard]] std::string fixed(double value, int decimals);

} // namespace thinskin::report
