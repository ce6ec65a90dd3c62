#include "presentation/words.h"

#include "base/units.h"
#include "report/figures.h"

#include <algorithm>
#include <array>
#include <map>

namespace thinskin::gui {

Mark mark_of(base::Status s)
{
    switch (s) {
    case base::Status::pass: return Mark::pass;
    case base::Status::judgement: return Mark::judgement;
    case base::Status::not_covered: return Mark::not_covered;
    case base::Status::fail: return Mark::fail;
    }
    return Mark::fail;
}

Mark mark_of(base::Verdict v)
{
    switch (v) {
    case base::Verdict::pass: return Mark::pass;
    case base::Verdict::not_covered: return Mark::not_covered;
    case base::Verdict::not_solved: return Mark::not_solved;
    case base::Verdict::fail: return Mark::fail;
    }
    return Mark::fail;
}

std::string_view word(Mark m)
{
    switch (m) {
    case Mark::pass: return base::name(base::Status::pass);
    case Mark::judgement: return base::name(base::Status::judgement);
    case Mark::not_covered: return base::name(base::Status::not_covered);
    case Mark::fail: return base::name(base::Status::fail);
    case Mark::not_solved: return base::name(base::Verdict::not_solved);
    case Mark::linear: return "rough (linear)";
    case Mark::stale: return "stale";
    case Mark::aside: return "not met";
    }
    return "fail";
}

std::string_view sign(Mark m)
{
    switch (m) {
    case Mark::pass: return "OK";
    case Mark::judgement: return "J ";
    case Mark::not_covered: return "? ";
    case Mark::fail: return "X ";
    case Mark::not_solved: return "- ";
    case Mark::linear: return "~ ";
    case Mark::stale: return "..";
    case Mark::aside: return "i ";
    }
    return "X ";
}

std::string_view meaning(Mark m)
{
    switch (m) {
    case Mark::pass: return "The formula applies and there is enough.";
    case Mark::judgement: return "Passes by a stated analogy or bound.";
    case Mark::not_covered: return "No formula, a value outside a formula's range, or an input that is missing. It is not a pass.";
    case Mark::fail: return "Not enough.";
    case Mark::not_solved: return "No equilibrium was found: there are no figures to go by.";
    case Mark::linear: return "Linear theory, which does not stand here: a picture while you drag, worked out properly when you let go. It is not a pass.";
    case Mark::stale: return "Of an earlier state of the case.";
    case Mark::aside: return "Looked at and not met; it does not count in the verdict of this case.";
    }
    return "";
}

std::string plain_words(const std::string& key)
{
    static const std::map<std::string, std::string> said{{"quasi_static", "factors of the road"}, {"base_pulse", "a single bump"}, {"random_vibration", "shaking all along"},
                                                         {"allowable_strength", "allowable strengths (AISI, AISC)"}, {"partial_factors", "partial factors (Eurocode)"},
                                                         {"maker_limit", "the maker's limit"}, {"proof_hang", "hung and looked at"}, {"regulation", "tried to UN Regulation 11"}, {"us_regulation", "tried to 49 CFR 571.206"}};
    if (const auto it = said.find(key); it != said.end()) return it->second + " (" + key + ")";
    std::string words = key;
    const bool is_key = words.find(' ') == std::string::npos; // a name of the user's own stays as it is
    if (is_key && std::none_of(words.begin(), words.end(), [](char c) { return c >= 'A' && c <= 'Z'; })) std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

namespace {

/// A unit of results in the inner unit of its dimension, and what it becomes in US units.
struct Unit { std::string_view name; base::Dimension dimension; double inner; std::string_view us, shown; };

constexpr std::array units = {
    Unit{"N", base::Dimension::force, 1, "lbf", "lbf"},
    Unit{"kN", base::Dimension::force, 1000, "lbf", "lbf"},
    Unit{"N mm", base::Dimension::moment, 1, "lbf*in", "lbf in"},
    Unit{"N m", base::Dimension::moment, 1000, "lbf*ft", "lbf ft"},
    Unit{"MPa", base::Dimension::stress, 1, "ksi", "ksi"},
    Unit{"mm", base::Dimension::length, 1, "in", "in"},
    Unit{"kg", base::Dimension::mass, 1, "lb", "lb"},
    Unit{"N/mm", base::Dimension::stiffness, 1, "lbf/in", "lbf/in"},
};

double converted(double inner, std::string_view unit, base::Dimension d)
{
    const auto u = base::find_unit(unit, d);
    return u ? inner * u->denominator / u->numerator : inner;
}

} // namespace

ShownFigure shown_figure(double value, const std::string& unit, UnitSystem u)
{
    if (u == UnitSystem::us) {
        if (unit == "kg m") return {report::figure(converted(converted(value, "lb", base::Dimension::mass) * 1000, "ft", base::Dimension::length)), "lb ft"};
        for (const Unit& k : units)
            if (k.name == unit) return {report::figure(converted(value * k.inner, k.us, k.dimension)), std::string(k.shown)};
    }
    return {report::figure(value), unit};
}

} // namespace thinskin::gui
