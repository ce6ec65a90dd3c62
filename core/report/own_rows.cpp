#include "report/own_rows.h"

#include "report/table.h"

namespace thinskin::report {

namespace {

std::string base_name(const std::string& file)
{
    const auto at = file.find_last_of("/\\");
    return at == std::string::npos ? file : file.substr(at + 1);
}

/// Where a row stands, whose figures it has and how they are known.
std::vector<std::string> with_origin(std::vector<std::string> cells, const model::OwnRow& r)
{
    cells.push_back(base_name(r.where.file) + ":" + std::to_string(r.where.line));
    cells.push_back(r.source + " [" + r.label + "]");
    return cells;
}

template <class Own, class Cells> void add(std::string& out, const std::string& title, std::vector<Column> columns, const std::vector<Own>& rows, Cells cells)
{
    if (rows.empty()) return;
    columns.push_back({"stands in"});
    columns.push_back({"source"});
    Table t(columns);
    for (const Own& r : rows) t.row(with_origin(cells(r), r));
    out += title + "\n\n" + t.text() + "\n";
}

} // namespace

std::string own_rows_text(const model::OwnRows& rows)
{
    using Cells = std::vector<std::string>;
    std::string out;
    add(out, "materials", {{"name"}, {"kind"}, {"product"}, {"from"}, {"to"}, {"yield"}, {"tensile"}}, rows.materials,
        [](const model::OwnMaterial& m) { return Cells{m.name, m.kind, m.product, m.from.text, m.to.text, m.yield.text, m.tensile.text}; });
    add(out, "bolt_grades", {{"name"}, {"yield"}, {"tensile"}}, rows.bolt_grades, [](const model::OwnBoltGrade& g) { return Cells{g.name, g.yield.text, g.tensile.text}; });
    add(out, "screws", {{"name"}, {"diameter"}, {"head"}}, rows.screws, [](const model::OwnScrew& s) { return Cells{s.name, s.diameter.text, s.head.text}; });
    add(out, "rivets", {{"name"}, {"diameter"}, {"head"}, {"shear"}, {"tension"}}, rows.rivets,
        [](const model::OwnRivet& r) { return Cells{r.name, r.diameter.text, r.head.text, r.shear.text, r.tension.text}; });
    add(out, "roads", {{"name"}, {"down"}, {"up"}, {"lateral"}, {"fore_aft"}}, rows.roads,
        [](const model::OwnRoad& r) { return Cells{r.name, r.down.text, r.up.text, r.lateral.text, r.fore_aft.text}; });
    add(out, "base_pulses", {{"name"}, {"shape"}, {"peak"}, {"duration"}}, rows.base_pulses,
        [](const model::OwnPulse& p) { return Cells{p.name, p.shape, p.peak.text, p.duration.text}; });
    return out.empty() ? "The case has no rows of its own.\n" : out;
}

} // namespace thinskin::report
