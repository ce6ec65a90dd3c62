#pragma once
#include "base/location.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thinskin::yaml {

/// Where lines start, so that a byte column can be told as a character column.
class LineTable {
public:
    LineTable(std::string_view text, std::string file);
    /// 0-based line and byte column to a 1-based place in characters.
    [[nodiscard]] base::Location place(int line, int byte_column) const;
    [[nodiscard]] base::Location place(std::size_t offset) const;

private:
    std::string_view text_;
    std::string file_;
    std::vector<std::size_t> starts_;
};

/// The text without its byte order mark.
[[nodiscard]] std::string_view without_mark(std::string_view text);

/// First thing wrong with the bytes themselves: too many, not UTF-8, NUL or another control character, a tab outside a
/// comment. The library would take all of these in silence.
[[nodiscard]] std::optional<base::Diagnostic> check_bytes(std::string_view text, const std::string& file, std::size_t max_bytes);

} // namespace thinskin::yaml
