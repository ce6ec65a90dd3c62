#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace thinskin::report {

enum class Align { left, right };
struct Column { std::string title; Align align = Align::left; };

/// A plain table: header, a rule of dashes, one line a row, two blanks between columns, indented by two.
class Table {
public:
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
    /// Cells beyond the columns are dropped, missing ones are empty.
    void row(std::vector<std::string> cells);
    [[nodiscard]] bool empty() const { return rows_.empty(); }
    [[nodiscard]] std::string text() const;

private:
    [[nodiscard]] std::vector<std::size_t> widths() const;
    [[nodiscard]] std::string line(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) const;
    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
};

/// Characters as seen on a screen: code points of UTF-8 text (no combining marks, no wide scripts expected).
[[nodiscard]] std::size_t screen_width(std::string_view text);

/// Wraps at blanks; the first line starts with `first`, the others with as many blanks. Ends with a newline.
[[nodiscard]] std::string wrapped(std::string_view first, std::string_view text, int width);

/// "Heading" over a rule of equal signs, with a blank line before.
[[nodiscard]] std::string heading(std::string_view text);

} // namespace thinskin::report
