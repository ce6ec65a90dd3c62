#include "catalogue/data.h"

// The bytes of data/*.yaml, put into the program by the assembler file that core/CMakeLists.txt generates.
#define THINSKIN_DATA(file) \
    extern "C" const char thinskin_data_##file##_begin[]; \
    extern "C" const char thinskin_data_##file##_end[];
THINSKIN_DATA(materials)
THINSKIN_DATA(elastic)
THINSKIN_DATA(bolt_threads)
THINSKIN_DATA(bolt_heads)
THINSKIN_DATA(clearance_holes)
THINSKIN_DATA(bolt_grades)
THINSKIN_DATA(washers)
THINSKIN_DATA(screws)
THINSKIN_DATA(blind_rivets)
THINSKIN_DATA(wood_screws)
THINSKIN_DATA(woods)
THINSKIN_DATA(road_surfaces)
THINSKIN_DATA(securing_factors)
THINSKIN_DATA(base_pulses)
THINSKIN_DATA(angle_sizes)
THINSKIN_DATA(sheet_gauges)
#undef THINSKIN_DATA

namespace thinskin::catalogue {
namespace {

DataFile data_file(std::string_view name, std::string_view title, const char* begin, const char* end)
{
    return {name, title, std::string_view(begin, static_cast<std::size_t>(end - begin))};
}

} // namespace

const std::vector<DataFile>& data_files()
{
#define THINSKIN_DATA(file, title) data_file(#file, title, thinskin_data_##file##_begin, thinskin_data_##file##_end)
    static const std::vector<DataFile> all{
        THINSKIN_DATA(materials, "sheet, section and plate materials: least strengths for design"),
        THINSKIN_DATA(elastic, "elastic constants and density"),
        THINSKIN_DATA(bolt_threads, "bolts, coarse thread, metric and inch: pitch and stress area"),
        THINSKIN_DATA(bolt_heads, "hexagon heads: across flats and across points"),
        THINSKIN_DATA(clearance_holes, "clearance holes for bolts"),
        THINSKIN_DATA(bolt_grades, "property classes and inch grades of bolts: strengths"),
        THINSKIN_DATA(washers, "flat washers, normal and large series"),
        THINSKIN_DATA(screws, "self-drilling and tapping screws: diameter and head"),
        THINSKIN_DATA(blind_rivets, "blind rivets: least strengths and head"),
        THINSKIN_DATA(wood_screws, "wood screws: nominal, root and head diameter"),
        THINSKIN_DATA(woods, "woods and boards: specific gravity"),
        THINSKIN_DATA(road_surfaces, "road surfaces: quasi-static factors in g"),
        THINSKIN_DATA(securing_factors, "rules for securing cargo: accelerations in g, what they are compared with; beside the road rows"),
        THINSKIN_DATA(base_pulses, "base pulses of test standards: shape, peak, duration"),
        THINSKIN_DATA(angle_sizes, "rolled angles that are sold, with root fillets"),
        THINSKIN_DATA(sheet_gauges, "sheet steel gauges, steel manufacturers' standard"),
    };
#undef THINSKIN_DATA
    return all;
}

} // namespace thinskin::catalogue
