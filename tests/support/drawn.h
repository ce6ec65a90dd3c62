#pragma once
#include "report/record_parts.h"
#include "report/svg.h"
#include "support/cases.h"

#include <map>
#include <memory>

namespace thinskin::tests {

/// A shipped case, analysed and drawn as its record draws it. The layout points into the case.
struct Drawn {
    std::unique_ptr<model::Case> source;
    pipeline::Analysis analysis;
    report::Sheet sheet;
};

inline Drawn drawn_anew(const std::string& name, const Edits& edits = {})
{
    Drawn d;
    d.source = std::make_unique<model::Case>(read_case(edited_text(name, edits)));
    pipeline::Workspace w;
    d.analysis = pipeline::analyse(*d.source, w, pipeline::Depth::margins);
    REQUIRE(d.analysis.outcome);
    REQUIRE(d.analysis.layout);
    d.sheet = report::draw_to_fit(*d.analysis.layout, &*d.analysis.outcome, {.notes = report::part_notes(*d.analysis.outcome)});
    return d;
}

/// The same, worked out once a program: large deflection takes seconds.
inline const Drawn& drawn(const std::string& name)
{
    static std::map<std::string, Drawn> all;
    const auto known = all.find(name);
    return known != all.end() ? known->second : all.emplace(name, drawn_anew(name)).first->second;
}

} // namespace thinskin::tests
