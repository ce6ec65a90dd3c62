#pragma once
#include <map>
#include <vector>

/// Inside report: a row for each load case is for the result file; a printed page shows the one that counts.
namespace thinskin::report {

/// Of the rows with the same name the one with the largest figure, in the order of their first; a figure that is not a number is the largest.
template <class Row, class Name, class Figure>
[[nodiscard]] std::vector<const Row*> hardest(const std::vector<Row>& rows, Name name, Figure figure)
{
    std::vector<const Row*> out;
    std::map<decltype(name(rows.front())), std::size_t> place;
    for (const Row& r : rows) {
        const auto [at, first] = place.emplace(name(r), out.size());
        if (first) out.push_back(&r);
        else if (figure(*out[at->second]) == figure(*out[at->second]) && !(figure(r) <= figure(*out[at->second]))) out[at->second] = &r;
    }
    return out;
}

} // namespace thinskin::report
