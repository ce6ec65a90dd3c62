#include "report/door_rows.h"

#include "report/figures.h"
#include "report/hardest.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::report {

namespace {

using results::Outcome;

constexpr const char* at_rest = "open"; ///< the state in which nothing but the weight acts
constexpr const char* shared_out = "one hinge, all vertical";

bool closed(const results::HingeForce& r) { return r.state.rfind("closed", 0) == 0; }

double size(const results::HingeForce& r) { return std::hypot(r.force_N[0], r.force_N[1], r.force_N[2]); }

std::vector<results::HingeForce> together(const Outcome& o)
{
    std::vector<results::HingeForce> out = o.hinges;
    for (const auto* list : {&o.latches, &o.stops})
        for (const results::SupportForce& s : *list) out.push_back({s.name, s.state, s.load_case, s.force_N, s.open_deg, s.on_body_N, s.words});
    return out;
}

DoorRow row(const results::HingeForce& r) { return {r.name, r.state, r.load_case, r.words}; }

} // namespace

std::vector<DoorRow> door_rows(const Outcome& o, bool all)
{
    const std::vector<results::HingeForce> rows = together(o);
    double widest = 0;
    for (const results::HingeForce& r : rows) widest = std::max(widest, r.open_deg);
    std::vector<results::HingeForce> shut;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(shut), closed);
    std::vector<DoorRow> out;
    for (const results::HingeForce* r : hardest(shut, [](const auto& x) { return x.name; }, size))
        if (!all) out.push_back(row(*r));
    for (const results::HingeForce& r : rows) {
        const bool rested = closed(r) && r.state.find("rest") != std::string::npos && r.load_case == "parked"; // the other bound beside the hinges without it
        const bool shown = !closed(r) && r.name != shared_out && (r.load_case == at_rest || r.open_deg == widest);
        if (all || shown || rested) out.push_back(row(r));
    }
    return out;
}

std::string door_sag_sentence(const results::DoorSag& s)
{
    return fmt::format("Sag of the free edge by the measured give of the hinges ({} mm/kN each): {} mm with everything on the door, {} mm of it from the bare leaf (ST-14, AC-20).", figure(s.give_mm_N * 1000),
                       fixed(s.edge_mm, 2), fixed(s.bare_mm, 2));
}

} // namespace thinskin::report
