#pragma once
#include "model/case.h"

#include <string>
#include <string_view>

namespace thinskin::casefile {

/// The case as a case file, keys in the order of the schema, units as written. Reading it gives the same case in all
/// fields but locations, `file` and `text`. Defaults that were taken are left out, so they are taken again.
/// A quantity without a text (set by a program) is written in the inner unit with all its digits.
[[nodiscard]] std::string write(const model::Case& c);

/// One block of it in flow form, for a Change: block_text(c, "brackets"), block_text(c, "fastener_kinds[M8 bolt]"). Empty: the case has none.
[[nodiscard]] std::string block_text(const model::Case& c, std::string_view path);

} // namespace thinskin::casefile
