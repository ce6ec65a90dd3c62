#pragma once
#include "layout/layout.h"
#include "search/prepare.h"
#include "search/space.h"
#include "support/cases.h"

/// Small spaces for tests of `propose`.
namespace thinskin::tests {

/// Two angles tied to the frame, of three sections: no large deflection, quick grid. 50 schemes of them.
inline model::Case small_space(const std::string& name, const Edits& edits = {})
{
    model::Case c = read_case(edited_text(name, edits));
    c.grid = model::GridSize::quick;
    c.propose = search::default_wishes();
    c.propose->stock = {"angle 40x40x4", "angle 50x30x5", "angle 30x30x4", "M6", "M8", "M10"};
    c.propose->stock_only = true;
    c.propose->not_use = {"nothing", "plates", "one angle", "floating", "two in a row", "10.9", "A2-70"};
    return c;
}

inline search::Options search_of(std::size_t schemes, unsigned threads, bool exhaustive = false)
{
    search::Options o;
    o.schemes = schemes;
    o.threads = threads;
    o.exhaustive = exhaustive;
    return o;
}

/// The whole space, looked at but not solved.
inline search::Searched prepared(const model::Case& c)
{
    search::Searched s;
    s.written = layout::written_out(c);
    for (const search::Choices& k : search::space_of(c).schemes) s.candidates.emplace_back().choices = k;
    search::prepare(c, {}, s, {});
    return s;
}

} // namespace thinskin::tests
