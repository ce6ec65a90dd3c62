#pragma once
#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace thinskin::base {

/// How well a formula or a value is sourced. Never label better than the truth.
enum class Label { published_read, read_in_copy, computed, from_memory, common_practice, judgement, read_by_user };
[[nodiscard]] constexpr std::string_view name(Label l)
{
    switch (l) {
    case Label::published_read: return "published (read)";
    case Label::read_in_copy: return "published (read in a copy made by others)";
    case Label::computed: return "computed from the formula";
    case Label::from_memory: return "from memory";
    case Label::common_practice: return "common practice, no source";
    case Label::judgement: return "engineering judgement";
    case Label::read_by_user: return "read by whoever wrote the case";
    }
    return "engineering judgement";
}

/// A nominal strength divided by its safety factor, or the reason why there is none.
struct Resistance {
    bool covered = false;
    double nominal = 0;   ///< Rn, in the card's unit
    double factor = 1;    ///< Omega (allowable strength) or gamma_M (partial factors)
    double capacity = 0;  ///< nominal / factor
    std::string reason;   ///< set when not covered: "t = 0.5 mm is outside 0.61 .. 4.76 mm"
};
[[nodiscard]] Resistance covered(double nominal, double factor); ///< a NaN or a negative nominal is turned into not covered
[[nodiscard]] Resistance not_covered(std::string reason);

/// One symbol of a clause: name as printed, unit, admissible range, meaning.
struct Symbol {
    std::string name, unit, meaning;
    double lower = -std::numeric_limits<double>::infinity();
    double upper = std::numeric_limits<double>::infinity();
    bool lower_open = false; ///< true: value must be > lower
    std::vector<double> choices = {}; ///< not empty: only these values are admissible (a case or a type factor)
};

/// "0.61 .. 4.76 mm", "> 0 mm", "one of 0.75, 1, 1.33": the admissible range of a symbol in words.
[[nodiscard]] std::string range_text(const Symbol& s);
/// Empty when the value is admissible, otherwise "t = 0.5 mm is outside 0.61 .. 4.76 mm", "mf = 2 is not one of 0.75, 1". NaN and infinities are never admissible.
[[nodiscard]] std::string outside(const Symbol& s, double value);

/// One clause as data: what `thinskin formula`, the report and the docs print. `evaluate` takes the symbols in order.
struct Card {
    std::string id;       ///< "BB-1": ties code, theory page, published test and output
    std::string title;    ///< "Bolt bearing in thin sheet, hole deformation considered"
    std::string formula;  ///< one line of plain text
    std::string unit;     ///< of the result: "N", "N mm", "MPa", "-"
    std::string rule;     ///< "allowable_strength", "partial_factors", "actions", "statics"
    std::string source;   ///< "AISI S100-16 J3.3.2"
    std::string edition;  ///< "2016"
    Label label = Label::from_memory;
    std::string range;    ///< validity in words
    std::string not_for;  ///< what it does not say
    std::vector<Symbol> symbols = {};
    Resistance (*evaluate)(const std::vector<double>& in) = nullptr;
};

} // namespace thinskin::base
