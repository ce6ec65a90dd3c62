#pragma once
#include "base/clause.h"

/// Clauses of this folder, see base/clause.h.
namespace thinskin::strength {

template <class In> using Row = base::Row<In>;

template <class In> class Clause : public base::Clause<In> {
public:
    Clause(base::Card card, std::vector<Row<In>> rows, typename base::Clause<In>::Formula formula);
};

/// The clause that belongs to an input struct; specialised beside each struct.
template <class In> [[nodiscard]] const Clause<In>& clause();

/// The three things a margin row needs, for any input struct of this folder.
template <class In> [[nodiscard]] base::Resistance resistance(const In& in) { return clause<In>()(in); }
template <class In> [[nodiscard]] const base::Card& card_of(const In&) { return clause<In>().card(); }
template <class In> [[nodiscard]] std::map<std::string, double> inputs_of(const In& in) { return clause<In>().inputs(in); }

// ---- implementation of the template

template <class In> base::Resistance evaluate_values(const std::vector<double>& values) { return clause<In>().from_values(values); }

template <class In>
Clause<In>::Clause(base::Card card, std::vector<Row<In>> rows, typename base::Clause<In>::Formula formula)
    : base::Clause<In>(std::move(card), std::move(rows), formula)
{
    this->card_.evaluate = &evaluate_values<In>;
}

} // namespace thinskin::strength
