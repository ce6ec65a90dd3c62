#include "checks/checks.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// The first line of the output: verdict and what governs. The second: advice.cpp.
namespace thinskin::checks {

namespace {

using base::Status;
using base::Verdict;

/// Rounded down to two decimals, never better than computed.
std::string margin_text(double m) { return !std::isfinite(m) || m > 5 ? "more than +5" : fmt::format("{:+.2f}", std::floor(m * 100) / 100); }

const results::Check* first_not_covered(const results::Outcome& o)
{
    for (const results::Check& c : o.checks)
        if (c.required && c.status == Status::not_covered) return &c;
    return nullptr;
}

std::string tightest(const results::Outcome& o)
{
    if (!o.governing) return "";
    const results::Check& g = *o.governing;
    return fmt::format("{} ({}), margin {}", g.title, g.load_case, margin_text(g.margin()));
}

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

bool large_deflection(const results::Outcome& o)
{
    return std::any_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == Status::not_covered && starts(c.note, "large deflection"); });
}

} // namespace

std::string aside(const results::Outcome& o)
{
    if (o.verdict != Verdict::pass) return "";
    for (const results::Check& c : o.checks)
        if (c.group == "vibration" && c.status == Status::fail) return " But it shakes: " + c.title + ", see Natural frequencies.";
    return "";
}

std::string headline(const results::Outcome& o)
{
    const results::Check* open = first_not_covered(o);
    const int judged = static_cast<int>(std::count_if(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == Status::judgement; }));
    switch (o.verdict) {
    case Verdict::not_solved: return "NOT SOLVED: " + (o.not_solved.empty() ? std::string("no result") : o.not_solved.front());
    case Verdict::fail: return "FAILS: " + tightest(o) + "." + (large_deflection(o) ? " Not covered besides: figures that hang on the bending of the thin skin." : "");
    case Verdict::not_covered:
        return fmt::format("NOT COVERED: {}: {}.{}", open ? open->title : "nothing to check", open ? open->note : "the case has no part with a check", o.governing ? " Tightest of what is covered: " + tightest(o) + "." : "");
    case Verdict::pass: return fmt::format("PASSES: the tightest is {}.{}", tightest(o), judged > 0 ? fmt::format(" {} {} on judgement.", judged, judged == 1 ? "row passes" : "rows pass") : "") + o.aside;
    }
    return "";
}

} // namespace thinskin::checks
