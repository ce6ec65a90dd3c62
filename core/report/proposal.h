#pragma once
#include "report/text.h"
#include "results/proposal.h"

#include <string>

namespace thinskin::report {

/// `thinskin propose` as text. First line: what can be done, or what binds; second: the next thing to do; then the caution, the schemes
/// nobody beats, each with what is tight, its parts and the next step up. The caution again as the last line. Masses are rounded up, margins down.
/// What nobody measured and the scheme holds by, or does not hold with: "rests on", "a slam at 2 m/s ..., +0.12 (door.slam)".
[[nodiscard]] std::string rest_heading(const results::ProposedScheme::RestsOn& r);
[[nodiscard]] std::string rest_words(const results::ProposedScheme::RestsOn& r);

[[nodiscard]] std::string proposal_text(const results::Proposal& p, const TextOptions& options = {});

/// The same as one JSON object, docs/result_file.md. No timings: the same case gives the same bytes on any number of threads.
[[nodiscard]] std::string proposal_json(const results::Proposal& p);

} // namespace thinskin::report
