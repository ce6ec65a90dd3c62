#pragma once
#include "base/card.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

/// One clause = one input struct, one row per symbol, one formula. The rows are read by the range check, by
/// `thinskin formula`, by the report and by the docs test, so they cannot drift apart.
namespace thinskin::strength {

/// One symbol of a clause and the member of the input struct that holds it.
template <class In> struct Row {
    double In::*member;
    base::Symbol symbol;
};

template <class In> class Clause {
public:
    using Formula = base::Resistance (*)(const In&);

    Clause(base::Card card, std::vector<Row<In>> rows, Formula formula);

    /// Range check of every symbol, then the formula. Out of range or NaN: not covered, with symbol, value and range.
    [[nodiscard]] base::Resistance operator()(const In& in) const;
    /// Same, from plain values in the order of card().symbols; a wrong count is not covered.
    [[nodiscard]] base::Resistance from_values(const std::vector<double>& values) const;
    /// Symbol -> value, for the record of a check.
    [[nodiscard]] std::map<std::string, double> inputs(const In& in) const;
    [[nodiscard]] const base::Card& card() const { return card_; }

private:
    base::Card card_;
    std::vector<Row<In>> rows_;
    Formula formula_;
};

/// The clause that belongs to an input struct; specialised beside each struct.
template <class In> [[nodiscard]] const Clause<In>& clause();

/// The three things a margin row needs, for any input struct of this folder.
template <class In> [[nodiscard]] base::Resistance resistance(const In& in) { return clause<In>()(in); }
template <class In> [[nodiscard]] const base::Card& card_of(const In&) { return clause<In>().card(); }
template <class In> [[nodiscard]] std::map<std::string, double> inputs_of(const In& in) { return clause<In>().inputs(in); }

// ---- implementation of the template

template <class In> base::Resistance evaluate_values(const std::vector<double>& values)
{
    return clause<In>().from_values(values);
}

template <class In>
Clause<In>::Clause(base::Card card, std::vector<Row<In>> rows, Formula formula)
    : card_(std::move(card)), rows_(std::move(rows)), formula_(formula)
{
    for (const Row<In>& row : rows_) card_.symbols.push_back(row.symbol);
    card_.evaluate = &evaluate_values<In>;
}

template <class In> base::Resistance Clause<In>::operator()(const In& in) const
{
    for (const Row<In>& row : rows_)
        if (std::string why = base::outside(row.symbol, in.*row.member); !why.empty()) return base::not_covered(std::move(why));
    return formula_(in);
}

template <class In> base::Resistance Clause<In>::from_values(const std::vector<double>& values) const
{
    if (values.size() != rows_.size())
        return base::not_covered(card_.id + " takes " + std::to_string(rows_.size()) + " values, got " + std::to_string(values.size()));
    In in{};
    for (std::size_t i = 0; i < rows_.size(); ++i) in.*rows_[i].member = values[i];
    return (*this)(in);
}

template <class In> std::map<std::string, double> Clause<In>::inputs(const In& in) const
{
    std::map<std::string, double> all;
    for (const Row<In>& row : rows_) all[row.symbol.name] = in.*row.member;
    return all;
}

} // namespace thinskin::strength
