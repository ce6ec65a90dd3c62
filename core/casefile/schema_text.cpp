// docs/case_file.md and the comments of starter cases, from the table.
#include "casefile/schema.h"

#include "base/units.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thinskin::casefile {
namespace {

constexpr std::string_view preamble = R"(# The case file

One file is one job: panel, item, fixing, road. It is YAML in UTF-8, at most 1 MiB, and read strictly: an unknown, missing
or doubled key, a number without its unit, a wrong unit, a wrong word are errors with file, line, column and key. All
errors come in one run; only a file that cannot be read as YAML gives its one error alone. This page is written from the
same table the reader uses (`core/casefile/rows_*.cpp`).

* Not read, on purpose: anchors and aliases (`&`, `*`), merge keys (`<<`), tags (`!`), tabs, a second document, more than 32
  blocks in one another, `nan`, `inf`, decimal commas.
* Axes, seen from outside the vehicle: x to the right, y up, z out of the panel. Origin: lower left corner of the outer face
  of the skin.
* Numbers carry their unit, zero too: `0 mm`. Fractions are read: `3/8 in`, `1-1/4 in`.
* A sheet thickness may be `22 ga`: steel manufacturers' standard gauge, 10 to 26, bare steel; printed gauge table,
  published (read). Galvanised, aluminium and wire gauges are other thicknesses and are refused.
* Any measured key may have a sister `<key>_from`, such as `thickness_from: offcut`: how the figure came about, one of
  offcut, hole_lip, ultrasonic, scales, drawing, assumed. Not given: assumed. It goes into the record and sets the spread.
  Sheet below 2 mm measured with ultrasonic gets a caution: an ordinary probe shows the second echo.
* A default marked *assumption* stands for a fact nobody measured. When it is taken, the record lists it with its reason.
* A copy (`copy_of` shifts, `mirror_of` reflects about the bolt line) takes everything else from its original, which must not
  be a copy itself. Fasteners of a copied bracket get names of their own by `rename: {L1: R1}`.
* Names may stand once: among brackets; among ribs, angles, plates, straps and boards; among fasteners; among gauges.
* A case needs an item, brackets, or one of forces, pressures, masses. An item or brackets need `road`. A panel with forces,
  pressures or masses and no road is a case of its own: one load case, `applied`, the weight of the skin left out.
* Ends of a member are `left` and `right`, or `bottom` and `top` when it is steeper than 45 deg. `right: same_as_left` repeats
  an end in mirror image.

)";

constexpr std::array units_of = {
    base::Dimension::length, base::Dimension::mass, base::Dimension::force, base::Dimension::stress,
    base::Dimension::rotational_stiffness, base::Dimension::rotational_spring, base::Dimension::stiffness,
    base::Dimension::angle, base::Dimension::frequency, base::Dimension::speed, base::Dimension::time, base::Dimension::ratio,
    base::Dimension::acceleration_density};

std::string unit_table()
{
    std::string out = "## Units\n\n| quantity | units | inside |\n|---|---|---|\n";
    for (const base::Dimension d : units_of)
        out += fmt::format("| {} | {} | {} |\n", base::name(d), base::unit_list(d), d == base::Dimension::ratio ? "fraction" : base::inner_unit(d));
    return out + "\n";
}

/// A pipe inside a cell would end it.
std::string cell(std::string text)
{
    for (std::size_t i = text.find('|'); i != std::string::npos; i = text.find('|', i + 2)) text.insert(i, "\\");
    return text;
}

std::string range_words(const Row& row)
{
    const Range& r = row.range;
    std::string out;
    const auto add = [&](const char* word, double x) {
        const bool ratio = row.dimension == base::Dimension::ratio;
        out += fmt::format("{}{} {:.4g}{}", out.empty() ? "; " : ", ", word, ratio ? 100 * x : x, x == 0 ? "" : ratio ? " %" : fmt::format(" {}", base::inner_unit(row.dimension)));
    };
    if (row.type == Type::integer) return out;
    if (r.lower > -1e300) add(r.lower_open ? "more than" : "at least", r.lower);
    if (r.upper < 1e300) add(r.upper_open ? "less than" : "at most", r.upper);
    return out;
}

std::string what_it_takes(const Row& row)
{
    const std::string words = fmt::format("{}", fmt::join(row.words, ", "));
    const std::string block = row.shared.empty() ? row.inside() : row.shared;
    switch (row.type) {
    case Type::integer: return row.range.upper == 1 ? "1" : fmt::format("whole number, {:g} to {:g}", row.range.lower, row.range.upper);
    case Type::texts: return "list of texts";
    case Type::text: return "text";
    case Type::word: return words;
    case Type::kind_name: return "name under fastener_kinds";
    case Type::section: return "section";
    case Type::quantity: return std::string(base::name(row.dimension)) + range_words(row);
    case Type::sheet_thickness: return "length, or gauge" + range_words(row);
    case Type::quantities: return fmt::format("list of {}{}", base::name(row.dimension), range_words(row));
    case Type::point2: return fmt::format("[x, y], {}{}", base::name(row.dimension), range_words(row));
    case Type::point3: return fmt::format("[x, y, z], {}{}", base::name(row.dimension), range_words(row));
    case Type::washer: return "washer, `24x2 mm`";
    case Type::foot: return "foot, `60x60x4 mm`";
    case Type::renames: return "{old: new}";
    case Type::block: return fmt::format("block `{}`", block);
    case Type::word_or_block: return fmt::format("{}, or block `{}`", words, block);
    case Type::block_or_edges: return fmt::format("block `{}`, or `<frames>`", block);
    case Type::blocks: return fmt::format("list of `{}`", block);
    case Type::named_blocks: return fmt::format("name: block `{}`", block);
    }
    return {};
}

std::string default_words(const Row& row)
{
    if (row.required) return "**required**";
    if (row.fallback.empty()) return "-";
    if (row.why.empty()) return fmt::format("`{}`", row.fallback);
    return fmt::format("`{}`, *assumption*: {}{}", row.fallback, row.why, row.spread.empty() ? "" : "; spread " + row.spread);
}

std::string block_table(const std::string& block)
{
    std::string out = fmt::format("## {}\n\n| key | what it is | takes | default |\n|---|---|---|---|\n", block.empty() ? "Top level" : "`" + block + "`");
    for (const Row* row : rows_in(block))
        out += fmt::format("| `{}` | {} | {} | {} |\n", row->key(), cell(row->help), cell(what_it_takes(*row)), cell(default_words(*row)));
    return out + "\n";
}

} // namespace

std::string comment_of(const Row& row)
{
    std::string out = row.help;
    if (row.type == Type::word || row.type == Type::word_or_block) out += fmt::format(" One of: {}.", fmt::join(row.words, ", "));
    if (row.type == Type::word_or_block) out += " Or a block of keys.";
    if (!row.fallback.empty()) out += fmt::format(" Not given: {}{}.", row.fallback, row.why.empty() ? "" : ", an assumption");
    return out;
}

std::string schema_markdown()
{
    std::string out(preamble);
    out += unit_table();
    std::vector<std::string> blocks;
    for (const Row& row : schema())
        if (std::find(blocks.begin(), blocks.end(), row.parent()) == blocks.end()) blocks.push_back(row.parent());
    for (const std::string& block : blocks) out += block_table(block);
    out.pop_back();
    return out;
}

} // namespace thinskin::casefile
