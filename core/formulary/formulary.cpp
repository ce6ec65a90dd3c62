#include "formulary/formulary.h"

#include "actions/cards.h"
#include "statics/cards.h"
#include "strength/cards.h"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>

namespace thinskin::formulary {

namespace {

/// The one place where folders are joined: a folder with cards gets one line here.
std::vector<const base::Card*> join()
{
    std::vector<const base::Card*> all;
    all.insert(all.end(), strength::cards().begin(), strength::cards().end());
    for (const base::Card& card : actions::cards()) all.push_back(&card);
    for (const base::Card& card : statics::cards()) all.push_back(&card);
    return all;
}

bool same_letters(std::string_view a, std::string_view b)
{
    const auto upper = [](char c) { return std::toupper(static_cast<unsigned char>(c)); };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return upper(x) == upper(y); });
}

} // namespace

const std::vector<const base::Card*>& all_cards()
{
    static const std::vector<const base::Card*> all = join();
    return all;
}

const base::Card* find(std::string_view id)
{
    for (const base::Card* card : all_cards())
        if (same_letters(card->id, id)) return card;
    return nullptr;
}

std::string describe(const base::Card& card)
{
    std::string text = fmt::format("{}  {}\n  {}   [{}]\n", card.id, card.title, card.formula, card.unit);
    for (const base::Symbol& s : card.symbols)
        text += fmt::format("    {:<10} {:<5} {:<28} {}\n", s.name, s.unit, base::range_text(s), s.meaning);
    text += fmt::format("  rule:    {}\n  source:  {} ({}), {}\n", card.rule, card.source, card.edition, base::name(card.label));
    text += fmt::format("  range:   {}\n  not for: {}\n", card.range, card.not_for);
    return text;
}

} // namespace thinskin::formulary
