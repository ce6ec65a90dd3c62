#pragma once
#include "base/card.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Rows compiled into the program from core/catalogue/data/*.yaml. How a row is added and what its label
/// means: docs/catalogue.md. Units: N, mm, MPa, kg/m3. Pointers live as long as the program.
namespace thinskin::catalogue {

/// Where the figures of a row come from. The label is never better than the worst figure of the row.
struct Origin {
    std::string source;
    base::Label label = base::Label::from_memory;
    std::string note;
};

/// Least yield and tensile strength of a product of thickness t.
struct Strength {
    bool covered = false;
    double fy = 0, fu = 0;   ///< MPa, minima for design; never the maximum yield that drawing grades are sold by
    std::string reason;      ///< when not covered: "S235: t = 60 mm is outside the thicknesses of the catalogue (up to 40 mm)"
    Origin origin;
};

/// One range of thickness of a material: lower limit and upper limit, each in or out of the range.
struct StrengthBand {
    std::string t;           ///< as in the data: "< 3", "3 .. 16", "> 16 .. 40"
    double fy = 0, fu = 0;
    Origin origin;
};

struct Material {
    enum class Kind { steel, aluminium };
    std::string name;        ///< "DC04", "S235", "6060-T66"
    Kind kind = Kind::steel;
    std::string product;     ///< "sheet", "hot rolled", "profile": values of another product form differ
    double E = 0;            ///< MPa, for stiffness: 210 000 steel, 70 000 aluminium
    double E_strength = 0;   ///< MPa, as used in the formulas of AISC 360 and the like: 200 000 steel
    double nu = 0, G = 0;    ///< G = E / (2 (1 + nu))
    double density = 0;      ///< kg/m3
    Origin elastic;          ///< of E, nu and density
    std::vector<StrengthBand> strengths; ///< one or more, ranges do not overlap

    /// fy and fu at the base metal thickness t in mm. Not covered: NaN, t <= 0, or a thickness no row covers.
    [[nodiscard]] Strength strength(double t) const;
};

/// Bolt, coarse thread, hexagon head, metric or inch. Thread, head and holes have origins of their own.
struct BoltSize {
    std::string name;             ///< "M8", "1/4 in"
    double d = 0, pitch = 0;
    double stress_area = 0;       ///< A_s as tabled, mm2; (pi/4) (d - k pitch)^2 with k = 0.9382 metric, 0.9743 inch
    double across_flats = 0;
    double across_points = 0;     ///< least width across points e_min, not s / cos 30
    double mean_diameter = 0;     ///< d_m = (across_flats + across_points) / 2
    double hole_fine = 0, hole_medium = 0, hole_coarse = 0; ///< clearance hole diameters
    Origin thread, head, hole;
    /// Gross area (pi/4) d^2.
    [[nodiscard]] double gross_area() const;
    [[nodiscard]] bool inch() const { return name.ends_with(" in"); }
};

/// Property class: nominal strengths, not the slightly higher least values of the product standard. Inch grade: least strengths.
struct BoltGrade {
    std::string name;             ///< "8.8", "A2-70", "SAE 5", "A307"
    bool stainless = false;
    double fub = 0, fyb = 0;      ///< MPa
    Origin origin;
};

struct WasherRow {
    std::string size;             ///< "M8", "1/4 in"
    std::string series;           ///< "normal", "large"; inch: narrow, wide
    double hole = 0, diameter = 0, thickness = 0;
    Origin origin;
};

/// Self-drilling or tapping screw. The strength of the screw itself is its maker's: there is no column for it.
struct ScrewSize {
    std::string name;             ///< "4.8 mm", "No. 10", "1/4 in"
    double d = 0;                 ///< nominal (outer) diameter
    double head = 0;              ///< least diameter under a hexagon washer head
    Origin origin;
};

/// Blind rivet, open end, protruding head: least strengths of the product standard.
struct BlindRivet {
    std::string size, material;   ///< "4.8 mm"; "aluminium L", "aluminium H" (lower and higher class), "steel", "stainless"
    std::string name;             ///< both: "4.8 mm steel"
    double d = 0, shear = 0;      ///< mm, N
    double tension = 0;           ///< N, in thick test plates: says nothing about a skin
    double head = 0;              ///< least head diameter
    Origin origin;
};

struct WoodScrewSize {
    std::string name;             ///< "No. 10"
    double d = 0, root = 0, head = 0;
    Origin origin;
};

/// Wood or board by its oven-dry specific gravity.
struct Wood {
    std::string name;             ///< "spruce-pine-fir", "plywood"
    double G = 0;
    Origin origin;
};

/// Peak quasi-static factors in g on the mass. Vertical factors contain the weight; up is net.
struct RoadSurface {
    std::string name;             ///< "sealed", "unsealed", "track"
    double down = 0, up = 0, lateral = 0, fore_aft = 0;
    Origin origin;
};

/// What a rule for securing cargo asks for, g on the mass: driving alone, no roughness, no resonance. Stands beside the road rows; no
/// road is made of it.
struct SecuringFactor {
    std::string name;             ///< "cargo standard"
    double forward = 0, rearward = 0, sideways = 0;
    std::string against;          ///< what it is compared with there: "forces", "breaking", "working load", "standing up" (tipping)
    Origin origin;
};

/// Pulse of a test standard on the base of a mount. They are for devices on stiff fixtures, not for roads.
struct BasePulse {
    std::string name;             ///< "truck equipment 20 g"
    std::string shape;            ///< "half-sine", "sawtooth", "versed sine"
    double A_g = 0, D_s = 0;
    Origin origin;
};

/// A rolled angle that is sold, with its root fillet (toe fillet = half of it). h is the longer leg.
struct AngleSize {
    std::string designation;      ///< "angle 60x40x5"
    double h = 0, b = 0, t = 0, root_radius = 0;
    Origin origin;
};

/// Thickness of sheet by the steel manufacturers' standard gauge; no other gauge is meant.
struct SheetGauge {
    int number = 0;
    double t = 0;
    Origin origin;
};

/// Stiffness and weight alone of a kind, "steel" or "aluminium"; no strengths.
[[nodiscard]] Material of_kind(std::string_view kind);

/// Null when there is no such row; say so with no_such_row(). Names are matched to the letter.
[[nodiscard]] const Material* material(std::string_view name);
[[nodiscard]] const BoltSize* bolt_size(std::string_view name);
[[nodiscard]] const BoltGrade* bolt_grade(std::string_view name);
[[nodiscard]] const WasherRow* washer(std::string_view size, std::string_view series);
[[nodiscard]] const ScrewSize* screw_size(std::string_view name);
[[nodiscard]] const BlindRivet* blind_rivet(std::string_view size, std::string_view material);
[[nodiscard]] const WoodScrewSize* wood_screw_size(std::string_view name);
[[nodiscard]] const Wood* wood(std::string_view name);
[[nodiscard]] const RoadSurface* road_surface(std::string_view name);
[[nodiscard]] const BasePulse* base_pulse(std::string_view name);

[[nodiscard]] const std::vector<Material>& materials();
[[nodiscard]] const std::vector<BoltSize>& bolt_sizes();
[[nodiscard]] const std::vector<BoltGrade>& bolt_grades();
[[nodiscard]] const std::vector<WasherRow>& washers();
[[nodiscard]] const std::vector<ScrewSize>& screw_sizes();
[[nodiscard]] const std::vector<BlindRivet>& blind_rivets();
[[nodiscard]] const std::vector<WoodScrewSize>& wood_screw_sizes();
[[nodiscard]] const std::vector<Wood>& woods();
[[nodiscard]] const std::vector<RoadSurface>& road_surfaces();
[[nodiscard]] const std::vector<SecuringFactor>& securing_factors();
[[nodiscard]] const std::vector<BasePulse>& base_pulses();
[[nodiscard]] const std::vector<AngleSize>& angle_sizes();
[[nodiscard]] const std::vector<SheetGauge>& sheet_gauges();

/// What a message calls the rows that a name is looked up in.
enum class Lookup { material, bolt_size, bolt_grade, road_surface, base_pulse, screw_size, blind_rivet, wood_screw_size, wood };
/// "no material called DC4; did you mean DC04?"; without a near name: "no material called tin; there are DC01, DC03, ...".
/// `more`: names of the case's own rows.
[[nodiscard]] std::string no_such_row(Lookup what, std::string_view name, const std::vector<std::string>& more = {});
/// Do two names mean one row to whoever reads them: the same but for capitals, spaces and zeros at the end of a decimal?
/// "DC04" and "dc04", "4.8 mm" and "4.80mm"; not "5 mm" and "50 mm".
[[nodiscard]] bool alike(std::string_view a, std::string_view b);
/// The program's row that such a name would be taken for, or none.
[[nodiscard]] std::optional<std::string> row_alike(Lookup what, std::string_view name);
/// The nearest name (another case, or at most a third of the letters wrong), or none.
[[nodiscard]] std::optional<std::string> nearest(Lookup what, std::string_view name);

/// The tables as text, for `thinskin catalogue [TABLE]`. Every table ends with the columns source, label, note.
struct TableInfo { std::string name, title; };
struct Table {
    TableInfo info;
    std::vector<std::string> columns;           ///< with unit: "E MPa"
    std::vector<std::vector<std::string>> rows; ///< as long as columns
};
[[nodiscard]] const std::vector<TableInfo>& tables();
[[nodiscard]] std::optional<Table> table(std::string_view name); ///< none: no table of that name
[[nodiscard]] std::string no_such_table(std::string_view name);

} // namespace thinskin::catalogue
