#include "catalogue/rows.h"

namespace thinskin::catalogue {
namespace {

RoadSurface road_of(const RowView& r)
{
    return {r.text("name"), r.number("down g"), r.number("up g"), r.number("lateral g"), r.number("fore_aft g"), origin(r)};
}

SecuringFactor securing_of(const RowView& r)
{
    return {r.text("name"), r.number("forward g"), r.number("rearward g"), r.number("sideways g"), r.text("against"), origin(r)};
}

BasePulse pulse_of(const RowView& r) { return {r.text("name"), r.text("shape"), r.number("A g"), r.number("D ms") / 1000, origin(r)}; }

AngleSize angle_of(const RowView& r)
{
    return {r.text("name"), r.number("h mm"), r.number("b mm"), r.number("t mm"), r.number("r1 mm"), origin(r)};
}

SheetGauge gauge_of(const RowView& r) { return {static_cast<int>(r.number("gauge")), r.number("t mm"), origin(r)}; }

} // namespace

const std::vector<RoadSurface>& road_surfaces()
{
    static const std::vector<RoadSurface> all = load_rows("road_surfaces", road_of);
    return all;
}

const std::vector<SecuringFactor>& securing_factors()
{
    static const std::vector<SecuringFactor> all = load_rows("securing_factors", securing_of);
    return all;
}

const std::vector<BasePulse>& base_pulses()
{
    static const std::vector<BasePulse> all = load_rows("base_pulses", pulse_of);
    return all;
}

const std::vector<AngleSize>& angle_sizes()
{
    static const std::vector<AngleSize> all = load_rows("angle_sizes", angle_of);
    return all;
}

const std::vector<SheetGauge>& sheet_gauges()
{
    static const std::vector<SheetGauge> all = load_rows("sheet_gauges", gauge_of);
    return all;
}

const RoadSurface* road_surface(std::string_view name)
{
    return find_row(road_surfaces(), [name](const RoadSurface& s) { return s.name == name; });
}

const BasePulse* base_pulse(std::string_view name)
{
    return find_row(base_pulses(), [name](const BasePulse& p) { return p.name == name; });
}

} // namespace thinskin::catalogue
