#pragma once
#include "layout/layout.h"
#include "results/results.h"
#include "results/spread.h"

#include <string>
#include <vector>

namespace thinskin::report {

/// A value of the case file: key path, value as written, where it was measured from ("" = not a measured value).
struct InputRow { std::string key, value, measured_from; };

/// What the record needs beside the outcome. Every text may be empty; the record then has a line to fill in.
struct RecordInputs {
    std::string job_number, vehicle, prepared_by, notes;
    std::string date;                        ///< YYYY-MM-DD, given by the user: the program never looks at a clock
    std::vector<InputRow> values;            ///< the case file's values in its order
    const layout::Layout* layout = nullptr;  ///< for the drawing; null: no drawing
    const results::Spread* spread = nullptr; ///< null: not run, and the record says so
    bool strict = false;                     ///< only says so; pipeline::apply_strict has already changed the outcome
};

/// The job record as one self-contained HTML page: style and drawing inside, no scripts, nothing loaded from elsewhere, printable
/// on A4. Verdict, caution, drawing, inputs, load cases, load path, every margin with formula and numbers in, hand sums beside
/// the demands, stacks, assumptions, cautions, what is not covered, balance, lines to sign.
/// Figures are rounded as in check_text (margins down, utilisations up). Every text of the case is escaped.
/// With verdict `not solved` no margin is printed. Same outcome and inputs, same bytes.
[[nodiscard]] std::string record_html(const results::Outcome& outcome, const RecordInputs& inputs);

} // namespace thinskin::report
