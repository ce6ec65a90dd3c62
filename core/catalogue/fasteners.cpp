#include "catalogue/rows.h"

#include <numbers>
#include <stdexcept>

namespace thinskin::catalogue {
namespace {

BoltSize thread_of(const RowView& r)
{
    BoltSize s;
    s.name = r.text("size");
    s.d = r.number("d mm");
    s.pitch = r.number("pitch mm");
    s.stress_area = r.number("A_s mm2");
    s.thread = origin(r);
    return s;
}

void set_head(BoltSize& s, const RowView& r)
{
    s.across_flats = r.number("s mm");
    s.across_points = r.number("e mm");
    s.mean_diameter = (s.across_flats + s.across_points) / 2;
    s.head = origin(r);
}

void set_holes(BoltSize& s, const RowView& r)
{
    s.hole_fine = r.number("fine mm");
    s.hole_medium = r.number("medium mm");
    s.hole_coarse = r.number("coarse mm");
    s.hole = origin(r);
}

/// Completes every size from a second table, which must have the same sizes.
template <class Set>
void complete(std::vector<BoltSize>& sizes, std::string_view file, Set set)
{
    const Rows rows = read_rows(file);
    if (rows.cells.size() != sizes.size()) throw std::logic_error(std::string(file) + ".yaml: other sizes than bolt_threads.yaml");
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const RowView r(rows, i);
        if (r.text("size") != sizes[i].name) throw std::logic_error(std::string(file) + ".yaml: expected " + sizes[i].name);
        set(sizes[i], r);
    }
}

std::vector<BoltSize> load_bolt_sizes()
{
    auto sizes = load_rows("bolt_threads", thread_of);
    complete(sizes, "bolt_heads", set_head);
    complete(sizes, "clearance_holes", set_holes);
    return sizes;
}

BoltGrade grade_of(const RowView& r)
{
    return {r.text("name"), r.text("kind") == "stainless", r.number("fub MPa"), r.number("fyb MPa"), origin(r)};
}

WasherRow washer_of(const RowView& r)
{
    return {r.text("size"), r.text("series"), r.number("hole mm"), r.number("diameter mm"), r.number("thickness mm"), origin(r)};
}

} // namespace

double BoltSize::gross_area() const { return std::numbers::pi / 4 * d * d; }

const std::vector<BoltSize>& bolt_sizes()
{
    static const std::vector<BoltSize> all = load_bolt_sizes();
    return all;
}

const std::vector<BoltGrade>& bolt_grades()
{
    static const std::vector<BoltGrade> all = load_rows("bolt_grades", grade_of);
    return all;
}

const std::vector<WasherRow>& washers()
{
    static const std::vector<WasherRow> all = load_rows("washers", washer_of);
    return all;
}

const BoltSize* bolt_size(std::string_view name)
{
    return find_row(bolt_sizes(), [name](const BoltSize& s) { return s.name == name; });
}

const BoltGrade* bolt_grade(std::string_view name)
{
    return find_row(bolt_grades(), [name](const BoltGrade& g) { return g.name == name; });
}

const WasherRow* washer(std::string_view size, std::string_view series)
{
    return find_row(washers(), [size, series](const WasherRow& w) { return w.size == size && w.series == series; });
}

} // namespace thinskin::catalogue
