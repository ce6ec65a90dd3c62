#include "base/nearest.h"
#include "catalogue/rows.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace thinskin::catalogue {
namespace {

template <class Row>
std::vector<std::string> names_of(const std::vector<Row>& rows)
{
    std::vector<std::string> names;
    for (const Row& r : rows) names.push_back(r.name);
    return names;
}

std::vector<std::string> names(Lookup what)
{
    switch (what) {
    case Lookup::material: return names_of(materials());
    case Lookup::bolt_size: return names_of(bolt_sizes());
    case Lookup::bolt_grade: return names_of(bolt_grades());
    case Lookup::road_surface: return names_of(road_surfaces());
    case Lookup::base_pulse: return names_of(base_pulses());
    case Lookup::screw_size: return names_of(screw_sizes());
    case Lookup::blind_rivet: return names_of(blind_rivets());
    case Lookup::wood_screw_size: return names_of(wood_screw_sizes());
    case Lookup::wood: return names_of(woods());
    }
    return {};
}

std::string_view noun(Lookup what)
{
    switch (what) {
    case Lookup::material: return "material";
    case Lookup::bolt_size: return "bolt size";
    case Lookup::bolt_grade: return "bolt grade";
    case Lookup::road_surface: return "road surface";
    case Lookup::base_pulse: return "base pulse";
    case Lookup::screw_size: return "screw size";
    case Lookup::blind_rivet: return "blind rivet";
    case Lookup::wood_screw_size: return "wood screw size";
    case Lookup::wood: return "wood";
    }
    return "row";
}

bool digit(char c) { return c >= '0' && c <= '9'; }

/// A number with decimals, without the zeros at its end: "4.80" becomes "4.8", "5.0" becomes "5".
std::string without_zeros(std::string number)
{
    if (number.find('.') == std::string::npos) return number;
    number.erase(number.find_last_not_of('0') + 1);
    if (number.back() == '.') number.pop_back();
    return number;
}

/// Small letters, no spaces, numbers in their shortest form.
std::string plain(std::string_view name)
{
    std::string out;
    for (std::size_t i = 0; i < name.size();) {
        std::size_t end = i;
        while (end < name.size() && (digit(name[end]) || (name[end] == '.' && end > i))) ++end;
        if (end > i) {
            out += without_zeros(std::string(name.substr(i, end - i)));
            i = end;
            continue;
        }
        const char c = name[i++];
        if (c != ' ') out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return out;
}

/// A designation as its letters and its size: "M8" is m and 8, "5/16 in" is /in and 0.3125, "No. 10" is no. and 10.
struct Sized { std::string letters; double size = NAN; };
Sized sized(std::string_view name)
{
    Sized out;
    std::vector<double> numbers;
    const std::string p = plain(name);
    for (std::size_t i = 0; i < p.size();) {
        std::size_t end = i;
        while (end < p.size() && (digit(p[end]) || (p[end] == '.' && end > i))) ++end;
        if (end == i) out.letters += p[i++];
        else numbers.push_back(std::atof(p.substr(i, end - i).c_str())), i = end;
    }
    if (numbers.size() == 1) out.size = numbers[0];
    if (numbers.size() == 2 && p.find('/') != std::string::npos && numbers[1] > 0) out.size = numbers[0] / numbers[1];
    return out;
}

/// Of the same letters the next smaller and the next larger one, whichever is nearer; both when they are as near.
std::string nearest_size(std::string_view name, const std::vector<std::string>& known)
{
    const Sized wanted = sized(name);
    std::string best;
    double gap = 0.35 * wanted.size; // farther away it is a slip of the pen, not a size that is not made
    for (const std::string& k : known) {
        const Sized s = sized(k);
        if (s.letters != wanted.letters) continue;
        const double d = std::abs(s.size - wanted.size); // NaN: never less
        if (d < gap * (1 - 1e-9)) best = k, gap = d;
        else if (!best.empty() && d <= gap * (1 + 1e-9) && s.size != sized(best).size) best += " or " + k;
    }
    return best;
}

/// "dc04" is two slips of the pen by count but one in the fitter's mind.
std::optional<std::string> nearest_of(std::string_view name, const std::vector<std::string>& known)
{
    for (const std::string& k : known)
        if (alike(name, k)) return k;
    const std::string near = base::nearest(name, known);
    return near.empty() ? std::nullopt : std::optional(near);
}

std::string message(std::string_view noun, std::string_view name, const std::vector<std::string>& known)
{
    std::string text = "no " + std::string(noun) + " called " + std::string(name);
    const bool spelt = std::any_of(known.begin(), known.end(), [name](const std::string& k) { return alike(name, k); });
    if (const std::string size = spelt ? "" : nearest_size(name, known); !size.empty()) return text + "; did you mean " + size + "?";
    if (const auto near = nearest_of(name, known)) return text + "; did you mean " + *near + "?";
    text += "; there are ";
    for (std::size_t i = 0; i < known.size(); ++i) text += (i == 0 ? "" : ", ") + known[i];
    return text;
}

} // namespace

bool alike(std::string_view a, std::string_view b) { return plain(a) == plain(b); }

std::optional<std::string> row_alike(Lookup what, std::string_view name)
{
    for (const std::string& known : names(what))
        if (alike(known, name)) return known;
    return std::nullopt;
}

std::optional<std::string> nearest(Lookup what, std::string_view name) { return nearest_of(name, names(what)); }

std::string no_such_row(Lookup what, std::string_view name, const std::vector<std::string>& more)
{
    std::vector<std::string> known = names(what);
    known.insert(known.end(), more.begin(), more.end());
    return message(noun(what), name, known);
}

const std::vector<TableInfo>& tables()
{
    static const std::vector<TableInfo> all = [] {
        std::vector<TableInfo> infos;
        for (const DataFile& d : data_files()) infos.push_back({std::string(d.name), std::string(d.title)});
        return infos;
    }();
    return all;
}

std::optional<Table> table(std::string_view name)
{
    for (const TableInfo& info : tables()) {
        if (info.name != name) continue;
        Rows rows = read_rows(name);
        return Table{info, std::move(rows.columns), std::move(rows.cells)};
    }
    return std::nullopt;
}

std::string no_such_table(std::string_view name) { return message("table", name, names_of(tables())); }

} // namespace thinskin::catalogue
