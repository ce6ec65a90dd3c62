#pragma once
#include "base/card.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

/// One rule = one input struct, one row per symbol, one formula. The rows are read by the range check, by
/// `thinskin formula`, by the report and by the docs test, so they cannot drift apart. A folder with rules derives
/// its own Clause, which ties the card's `evaluate` to the folder's clause<In>().
namespace thinskin::base {

/// One symbol of a clause and the member of the input struct that holds it.
template <class In> struct Row {
    double In::*member;
    Symbol symbol;
};

template <class In> class Clause {
public:
    using Formula = Resistance (*)(const In&);

    Clause(Card card, std::vector<Row<In>> rows, Formula formula) : card_(std::move(card)), rows_(std::move(rows)), formula_(formula)
    {
        for (const Row<In>& row : rows_) card_.symbols.push_back(row.symbol);
    }

    /// Range check of every symbol, then the formula. Out of range or NaN: not covered, with symbol, value and range.
    [[nodiscard]] Resistance operator()(const In& in) const
    {
        for (const Row<In>& row : rows_)
            if (std::string why = outside(row.symbol, in.*row.member); !why.empty()) return not_covered(std::move(why));
        return formula_(in);
    }
    /// Same, from plain values in the order of card().symbols; a wrong count is not covered.
    [[nodiscard]] Resistance from_values(const std::vector<double>& values) const
    {
        if (values.size() != rows_.size())
            return not_covered(card_.id + " takes " + std::to_string(rows_.size()) + " values, got " + std::to_string(values.size()));
        In in{};
        for (std::size_t i = 0; i < rows_.size(); ++i) in.*rows_[i].member = values[i];
        return (*this)(in);
    }
    /// Symbol -> value, for the record of a check.
    [[nodiscard]] std::map<std::string, double> inputs(const In& in) const
    {
        std::map<std::string, double> all;
        for (const Row<In>& row : rows_) all[row.symbol.name] = in.*row.member;
        return all;
    }
    [[nodiscard]] const Card& card() const { return card_; }

protected:
    Card card_;

private:
    std::vector<Row<In>> rows_;
    Formula formula_;
};

} // namespace thinskin::base
