#pragma once
#include "report/record_parts.h"
#include "report/svg.h"
#include "support/cases.h"

#include <map>

namespace thinskin::tests {

/// A shipped case as its record draws it.
struct Drawn {
    const pipeline::Analysis& analysis;
    report::Sheet sheet;
};

inline Drawn drawn_from(const Analysed& a)
{
    return {a.analysis, report::draw_to_fit(*a.analysis.layout, &*a.analysis.outcome, {.notes = report::part_notes(*a.analysis.outcome)})};
}

/// Analysed and drawn once a program.
inline const Drawn& drawn(const std::string& name)
{
    static std::map<std::string, Drawn> all;
    const auto known = all.find(name);
    return known != all.end() ? known->second : all.emplace(name, drawn_from(analysed(name))).first->second;
}

} // namespace thinskin::tests
