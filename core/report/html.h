#pragma once
#include "report/svg.h"

#include <string>
#include <string_view>
#include <vector>

/// Inside report: pieces of HTML. What is called `html` is markup already; everything else is escaped here.
namespace thinskin::report {

/// <h2 id=...>number title</h2>; numbers are counted by the caller.
[[nodiscard]] std::string html_heading(int number, std::string_view title);
[[nodiscard]] std::string html_paragraph(std::string_view text, std::string_view css = "");
[[nodiscard]] std::string html_list(const std::vector<std::string>& items);

struct HtmlColumn { std::string title; bool figure = false; }; ///< figure: to the right

/// A table whose header is repeated on every printed page. Rows that belong together are kept on one page.
class HtmlTable {
public:
    explicit HtmlTable(std::vector<HtmlColumn> columns, std::string css = "") : columns_(std::move(columns)), css_(std::move(css)) {}
    /// One cell a column. `data`: attributes of the row as markup; `below_html`: a second line over the whole width.
    void row(const std::vector<std::string>& cells, std::string_view data = "", std::string_view below_html = "");
    [[nodiscard]] bool empty() const { return body_.empty(); }
    [[nodiscard]] std::string html() const; ///< nothing without rows

private:
    std::vector<HtmlColumn> columns_;
    std::string css_, body_;
};

/// The style of the record, without the drawing's.
[[nodiscard]] std::string_view record_style();

} // namespace thinskin::report
