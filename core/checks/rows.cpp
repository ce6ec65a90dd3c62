#include "checks/rows.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

void put_place(const Place& p, results::Check& c)
{
    c.id = p.id;
    c.group = p.group;
    c.part = p.part;
    c.title = p.title;
    c.lift_with = p.lift_with;
}

results::Check blank(const Place& p)
{
    results::Check c;
    put_place(p, c);
    c.note = p.note;
    return c;
}

int rank(const results::Check& c)
{
    if (c.status == base::Status::fail) return 2;
    return c.status == base::Status::not_covered ? 1 : 0;
}

bool worse(const results::Check& a, const results::Check& b)
{
    if (rank(a) != rank(b)) return rank(a) > rank(b);
    return a.has_numbers() && in_steps(a.utilisation()) > in_steps(b.utilisation());
}

/// Demand and capacity by linear theory, when both are figures.
std::optional<results::Check::Linear> linear_of(const Demand& d, double capacity, const std::string& unit)
{
    if (!std::isfinite(d.value) || !(capacity > 0) || !std::isfinite(capacity)) return std::nullopt;
    return results::Check::Linear{d.load_case, unit, d.value, capacity};
}

/// The worst figure of the rows, whether it stands or not: the picture must not look better than one of its load cases.
std::optional<results::Check::Linear> worst_linear(const std::vector<results::Check>& rows)
{
    std::optional<results::Check::Linear> out;
    for (const results::Check& c : rows) {
        auto k = c.by_linear;
        if (c.has_numbers()) k = results::Check::Linear{c.load_case, c.unit, c.demand, c.capacity};
        if (k && (!out || in_steps(k->utilisation()) > in_steps(out->utilisation()))) out = k;
    }
    return out;
}

/// Written so that a NaN can never pass.
void decide(results::Check& c, bool judgement)
{
    if (!std::isfinite(c.demand) || !std::isfinite(c.capacity) || !(c.capacity > 0)) {
        c.status = base::Status::not_covered;
        c.note = "demand or capacity is not a number";
    } else if (c.demand <= c.capacity) {
        c.status = judgement ? base::Status::judgement : base::Status::pass;
    } else {
        c.status = base::Status::fail;
    }
}

} // namespace

std::string no_aluminium_clause(const catalogue::Material& m, const std::string& missing)
{
    return fmt::format("{} is aluminium: {} has no clause here", m.name, missing);
}

results::Check not_covered(const Place& p, const std::string& reason)
{
    results::Check c = blank(p);
    c.status = base::Status::not_covered;
    c.note = reason;
    return c;
}

results::Check against_limit(const Place& p, const Demand& d, const Limit& limit)
{
    if (!d.stands) {
        results::Check open = not_covered(p, "large deflection: " + d.why_not);
        open.by_linear = linear_of(d, limit.capacity, limit.unit);
        return open;
    }
    results::Check c = blank(p);
    c.load_case = d.load_case;
    c.demand = d.value;
    c.capacity = limit.capacity;
    c.unit = limit.unit;
    c.rule = limit.rule;
    c.source = limit.source;
    c.label = limit.label;
    decide(c, p.judgement);
    return c;
}

namespace {

/// What a row says in figures, with the note that goes with them.
results::Check figures(const Place& p, const Demand& d, const base::Resistance& r, const base::Card& card)
{
    results::Check c;
    c.load_case = d.load_case;
    c.unit = card.unit;
    c.note = p.note;
    c.demand = d.value;
    if (!d.stands) {
        c.note = "large deflection: " + d.why_not;
        if (r.covered) c.by_linear = linear_of(d, r.capacity, card.unit);
    } else if (!r.covered) {
        c.note = r.reason;
    } else {
        c.capacity = r.capacity;
        decide(c, p.judgement || card.label == base::Label::judgement);
    }
    return c;
}

void put_words(const Place& p, const base::Card& card, std::map<std::string, double> inputs, results::Check& c)
{
    put_place(p, c);
    c.formula = card.id;
    c.rule = card.rule;
    c.source = card.source;
    c.edition = card.edition;
    c.label = base::name(card.label);
    c.range = card.range;
    c.inputs = std::move(inputs);
}

} // namespace

results::Check against(const Place& p, const Demand& d, const base::Resistance& r, const base::Card& card, std::map<std::string, double> inputs)
{
    results::Check c = figures(p, d, r, card);
    put_words(p, card, std::move(inputs), c);
    return c;
}

results::Check worst_against(const Place& p, const std::vector<Demand>& demands, const base::Resistance& r, const base::Card& card, std::map<std::string, double> inputs)
{
    if (demands.empty()) return not_covered(p, "no load case was run");
    std::vector<results::Check> rows;
    rows.reserve(demands.size());
    for (const Demand& d : demands) rows.push_back(figures(p, d, r, card));
    results::Check c = worst(std::move(rows));
    put_words(p, card, std::move(inputs), c);
    return c;
}

results::Check worst(std::vector<results::Check> rows)
{
    auto best = rows.begin();
    for (auto c = rows.begin(); c != rows.end(); ++c)
        if (worse(*c, *best)) best = c;
    if (best->by_linear) best->by_linear = worst_linear(rows);
    return std::move(*best);
}

} // namespace thinskin::checks
