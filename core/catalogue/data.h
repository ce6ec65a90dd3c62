#pragma once
#include "base/card.h"

#include <string>
#include <string_view>
#include <vector>

/// Inside the catalogue: the data files as compiled in, and the reader of their rows.
/// A data file is a subset of YAML so that any editor knows it: blank lines, lines that start with '#', and one row a line
///   - {name: DC04, fy MPa: 140, note: "text with a comma, in double quotes"}
/// Every row of a file has the same keys in the same order and ends with source, label, note. "-" = nothing to say.
namespace thinskin::catalogue {

struct DataFile { std::string_view name, title, text; }; ///< name: "materials" for data/materials.yaml
[[nodiscard]] const std::vector<DataFile>& data_files();

/// Columns and cells of a data file as text.
struct Rows {
    std::string file;
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> cells;
};
/// Throws std::logic_error "materials.yaml:7: ..." : the data is part of the program, so a mistake in it is a defect.
[[nodiscard]] Rows read_rows(std::string_view file, std::string_view text);
[[nodiscard]] Rows read_rows(std::string_view file);

/// One row by column names; throws std::logic_error for a missing column or a text that is not a finite number > 0.
class RowView {
public:
    RowView(const Rows& rows, std::size_t index) : rows_(rows), index_(index) {}
    [[nodiscard]] const std::string& text(std::string_view column) const;
    [[nodiscard]] double number(std::string_view column) const;
    [[nodiscard]] base::Label label() const;

private:
    [[noreturn]] void fail(std::string_view column, std::string_view what) const;
    const Rows& rows_;
    std::size_t index_;
};

} // namespace thinskin::catalogue
