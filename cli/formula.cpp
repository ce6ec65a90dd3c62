#include "formulary/formulary.h"

#include "base/status.h"
#include "commands.h"
#include "report/figures.h"
#include "report/json.h"
#include "report/table.h"

#include <fmt/format.h>

namespace thinskin::cli {
namespace {

constexpr int width = 100;

std::string caution() { return "\n" + report::wrapped("", base::caution_text, width); }

Exit list(bool json)
{
    const auto& cards = formulary::all_cards();
    if (json) {
        fmt::print("{}", report::cards_json(cards));
        return Exit::passed;
    }
    report::Table table({{"id"}, {"what"}, {"result"}, {"source"}});
    for (const base::Card* c : cards) table.row({c->id, c->title, c->unit, c->source});
    fmt::print("{}\nthinskin formula ID shows one, with symbol=value for each symbol it is worked out.\n{}", table.text(), caution());
    return Exit::passed;
}

Exit show(const base::Card& card, bool json)
{
    if (json) fmt::print("{}", report::cards_json({&card}));
    else fmt::print("{}{}", formulary::describe(card), caution());
    return Exit::passed;
}

std::string evaluation_text(const base::Card& card, const formulary::Evaluation& e)
{
    std::string s = fmt::format("{}  {}\n  {}\n", card.id, card.title, card.formula);
    for (std::size_t i = 0; i < card.symbols.size(); ++i)
        s += fmt::format("  {} = {:.6g} {}\n", card.symbols[i].name, e.values[i], card.symbols[i].unit == "-" ? "" : card.symbols[i].unit);
    const base::Resistance& r = e.resistance;
    if (!r.covered) return s + fmt::format("not covered: {}\n", r.reason);
    s += fmt::format("nominal {:.6g} {}, divided by {:.6g}\ncapacity {:.6g} {}\n", r.nominal, card.unit, r.factor, r.capacity, card.unit);
    return s + fmt::format("source: {}, {} [{}]\n", card.source, card.edition, base::name(card.label));
}

Exit work_out(const base::Card& card, const FormulaOptions& options)
{
    const formulary::Evaluation e = formulary::evaluate(card, options.values);
    if (!e.ok) {
        fmt::print(stderr, "error: {}\n", e.error);
        return Exit::bad_command;
    }
    if (options.json) fmt::print("{}", report::evaluation_json(card, e.values, e.resistance));
    else fmt::print("{}{}", evaluation_text(card, e), caution());
    return e.resistance.covered ? Exit::passed : Exit::not_covered;
}

} // namespace

Exit run_formula(const FormulaOptions& options)
{
    if (options.id.empty()) return list(options.json);
    const base::Card* card = formulary::find(options.id);
    if (card == nullptr) {
        fmt::print(stderr, "error: no formula called \"{}\"; thinskin formula lists them\n", options.id);
        return Exit::bad_command;
    }
    return options.values.empty() ? show(*card, options.json) : work_out(*card, options);
}

} // namespace thinskin::cli
