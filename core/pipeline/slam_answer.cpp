#include "pipeline/slam_answer.h"

#include "base/largest.h"
#include "actions/load_cases.h"
#include "actions/slam_answer.h"
#include "pipeline/wind_limit.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::pipeline {

namespace {

results::Check row(const layout::Layout& l)
{
    results::Check c;
    c.id = "slam/answer";
    c.formula = "AC-4";
    c.title = "answer of the mounted item to the slam";
    c.group = "door";
    c.part = l.item->name;
    c.load_case = actions::name_slam_inward;
    c.unit = "-";
    c.rule = "slam with the largest answer of the mount to the half-sine stop in place of its peak: the largest utilisation of all checks";
    c.source = "shock response of one mass on a spring; shape and duration of a door's stop: common practice, no source";
    c.label = base::name(base::Label::judgement);
    c.range = "lowest mode of what hangs; linear structure";
    return c;
}

results::Check open(results::Check c, bool required, const std::string& why, const std::string& key)
{
    c.status = base::Status::not_covered;
    c.required = required;
    c.note = why;
    c.lift_with = key;
    return c;
}

/// The worst of the rows: one without a figure before all others; none: nothing is stressed.
std::optional<results::Check> hardest(const std::vector<results::Check>& rows)
{
    std::optional<results::Check> worst;
    for (const results::Check& c : rows) {
        if (!c.has_numbers()) return c;
        if (!worst || base::takes_over(c.utilisation(), worst->utilisation())) worst = c;
    }
    return worst;
}

std::string words(const results::Check& c) { return c.title.find(c.part) == std::string::npos ? c.title + " of " + c.part : c.title; }

/// The slams with the answer in place of the stop's own peak.
std::vector<results::LoadCase> answered(const std::vector<results::LoadCase>& cases, double S)
{
    std::vector<results::LoadCase> out;
    for (results::LoadCase c : cases) {
        if (!c.turns || !c.door_closed) continue;
        c.name += ", answered";
        c.spin_rad_s2 *= S;
        c.acceleration_g[0] *= S;
        c.acceleration_g[2] *= S;
        out.push_back(std::move(c));
    }
    return out;
}

} // namespace

std::vector<results::Check> slam_answer_rows(const checks::Demands& d, Rows rows, const SolveMore& more, const std::function<std::optional<double>()>& solver_Hz)
{
    const layout::Layout& l = *d.layout;
    const auto is_slam = [](const results::LoadCase& c) { return c.turns && c.door_closed; };
    if (!actions::slams(l) || l.nothing_hung() || std::none_of(d.load_cases->begin(), d.load_cases->end(), is_slam)) return {};
    results::Check c = row(l);
    for (const results::LoadCase& lc : *d.load_cases) {
        if (!is_slam(lc)) continue;
        const auto worst = hardest(stressed_rows(d, rows, lc.name));
        if (worst && !(worst->has_numbers() && worst->utilisation() <= 1)) return {open(c, false, fmt::format("{} does not hold the stop itself; what the item answers to it was not run", words(*worst)), "door.slam.stop")};
    }
    const auto answer = actions::slam_answer(l, l.source->item->natural_frequency ? std::nullopt : solver_Hz());
    if (!answer) return {open(c, true, "what the item answers to the stop lies outside of the formula's range (AC-4)", "item.natural_frequency")};
    const std::vector<results::LoadCase> again = answered(*d.load_cases, answer->lowest);
    const auto solved = more(again);
    if (!solved) return {open(c, true, answer->words + "; that load case was not solved", "door.slam.stop")};
    for (const results::LoadCase& lc : again) {
        const auto worst = hardest(stressed_rows(demands(l, *solved), rows, lc.name));
        if (!worst) continue;
        if (!worst->has_numbers()) return {open(c, true, fmt::format("{}; {} is not covered under it: {}", answer->words, words(*worst), worst->note), worst->lift_with)};
        if (!c.note.empty() && worst->utilisation() <= c.demand) continue;
        c.demand = worst->utilisation();
        c.load_case = lc.name;
        c.note = fmt::format("{}; it uses up {} first; a mount of the worst frequency would answer with {:.2f}", answer->words, words(*worst), answer->any);
    }
    if (c.note.empty()) return {};
    c.capacity = 1;
    c.inputs = {{"answer over the peak of the stop", answer->lowest}, {"answer of any mount", answer->any}};
    c.status = c.demand <= c.capacity ? base::Status::judgement : base::Status::fail;
    return {c};
}

} // namespace thinskin::pipeline
