// Laboratory tests of single screws against the clauses, and the tables of docs/verification/screws.md, printed by
//   test_published --test-case="Tests against*" --success=false
// The figures and their sources stand in tests/data/*.csv. Ratio = tested / predicted, nominal strength, no factor, measured thickness and
// strength of the sheets. A ratio below 1 means that the formula promises more than the laboratory found.
#include "strength/screws.h"
#include "strength/wood.h"
#include "support/csv.h"
#include "support/near.h"

#include <algorithm>
#include <cstdio>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <numeric>

using namespace thinskin;
using namespace thinskin::strength;
using tests::CsvRow;
using tests::count_value;
using tests::From;
using tests::holds;
using tests::read_csv;

namespace {

constexpr double in_mm = 25.4, psi = 0.006894757293;

struct Scatter { std::size_t n; double mean, deviation, least, greatest; };

Scatter scatter(const std::vector<double>& x)
{
    REQUIRE(x.size() > 1);
    const double n = static_cast<double>(x.size()), mean = std::accumulate(x.begin(), x.end(), 0.0) / n;
    double squares = 0;
    for (const double v : x) squares += (v - mean) * (v - mean);
    const auto [least, greatest] = std::minmax_element(x.begin(), x.end());
    return {x.size(), mean, std::sqrt(squares / (n - 1)), *least, *greatest};
}

/// Prints a line and holds the page to it.
void print_line(const std::string& line)
{
    static const std::string page = [] {
        std::ifstream in(std::string(THINSKIN_SOURCE_DIR) + "/docs/verification/screws.md");
        return std::string(std::istreambuf_iterator<char>(in), {});
    }();
    std::printf("%s\n", line.c_str());
    CAPTURE(line);
    CHECK(page.find(line + "\n") != std::string::npos);
}

Scatter print(const char* what, const std::vector<double>& x)
{
    const Scatter s = scatter(x);
    print_line(fmt::format("| {} | {} | {:.2f} | {:.0f} % | {:.2f} .. {:.2f} |", what, s.n, s.mean, 100 * s.deviation / s.mean, s.least, s.greatest));
    return s;
}

void header() { std::printf("| tests | n | mean | scatter | least .. greatest |\n|---|---|---|---|---|\n"); }

ScrewShear sheets(const CsvRow& r)
{
    return {.d_mm = r.number("d_mm"), .t1_mm = r.number("t_head_mm"), .t2_mm = r.number("t_tip_mm"), .Fu1_MPa = r.number("fu_head_MPa"),
            .Fu2_MPa = r.number("fu_tip_MPa")};
}

/// Peaks of the specimens of one configuration. Two of A-9733-08 broke at 386 and 1190 N against 3696 N: not counted, and named on the page.
std::vector<double> specimens(const CsvRow& r)
{
    std::vector<double> all;
    for (const char* column : {"P1_N", "P2_N", "P3_N"})
        if (!r.text(column).empty() && !(r.text("ref") == "A-9733-08" && r.number(column) < 3000)) all.push_back(r.number(column));
    return all;
}

/// Fu over fy of the sheet that is harder drawn.
double ductility(const CsvRow& r)
{
    return std::min(r.number("fu_head_MPa") / r.number("fy_head_MPa"), r.number("fu_tip_MPa") / r.number("fy_tip_MPa"));
}

struct Maker { std::string source, kind; double d, t_head, t_tip, P; };

std::vector<Maker> makers(const std::string& kind)
{
    std::vector<Maker> all;
    for (const CsvRow& r : read_csv("screw_ultimate_loads_published_by_makers"))
        if (r.text("kind") == kind)
            all.push_back({r.text("source"), kind, r.number("d_mm"), kind == "lap shear" ? r.number("t_head_mm") : 0, r.number("t_tip_mm"), r.number("P_N")});
    return all;
}

constexpr double least_Fu = 310; // 45 ksi, the basis of guide A; the others do not print theirs

double root_of(double d_mm) { return (d_mm < 4.5 ? 0.131 : d_mm < 5 ? 0.152 : d_mm < 5.6 ? 0.171 : 0.196) * in_mm; }

/// Yield equations of NDS with side and main member as given, / KD; strengths in MPa.
double yield_load(double d, double lm, double Fem, double ls, double Fes)
{
    const double Dr = root_of(d);
    return least(yield_modes({.D = Dr, .lm = lm, .ls = ls, .Fem = Fem, .Fes = Fes, .Fyb = bending_yield_MPa(d)})) / reduction_term(Dr);
}

} // namespace

TEST_SUITE_BEGIN("published: laboratory tests of screws");

TEST_CASE("Tests against SC-1: 45 configurations of one screw in two steel sheets, 42 of them inside the range")
{
    std::vector<double> all, ductile, hard, hard_pair, thin_or_equal, stiff_head, within, very_thin, design;
    std::printf("| test | t1 mm | t2 mm | d mm | tested N | SC-1 nominal N | ratio | over the allowable force |\n|---|---|---|---|---|---|---|---|\n");
    for (const CsvRow& r : read_csv("screw_shear_steel_to_steel")) {
        const ScrewShear in = sheets(r);
        const double nominal = screw_shear_parts(in).nominal_N, ratio = r.number("P_mean_N") / nominal;
        print_line(fmt::format("| {} | {:.2f} | {:.2f} | {:.2f} | {:.0f} | {:.0f} | {:.2f} | {:.2f} |", r.text("ref"), in.t1_mm, in.t2_mm, in.d_mm,
                               r.number("P_mean_N"), nominal, ratio, 3.00 * ratio));
        if (in.t1_mm < 0.45) {
            CHECK_FALSE(screw_shear(in).covered); // 0.31 mm: a trend, no more
            very_thin.push_back(ratio);
            continue;
        }
        REQUIRE(screw_shear(in).covered);
        all.push_back(ratio);
        design.push_back(r.number("P_mean_N") / screw_shear(in).capacity);
        if (!r.text("P_mean_within_6p35mm_N").empty()) within.push_back(r.number("P_mean_within_6p35mm_N") / nominal);
        if (ductility(r) < 1.08) {
            hard.push_back(ratio);
            if (in.t2_mm >= in.t1_mm && in.t2_mm < 1.5) hard_pair.push_back(ratio);
        } else {
            ductile.push_back(ratio);
            (in.t1_mm > in.t2_mm ? stiff_head : thin_or_equal).push_back(ratio);
        }
    }
    CHECK(all.size() + very_thin.size() == 45);
    std::printf("\n");
    header();
    const Scatter whole = print("all inside the range", all);
    const Scatter allowed = print("the same, over the allowable force", design);
    print("the same, largest force within 6.35 mm of movement", within);
    const Scatter soft = print("Fu/fy of 1.08 and more", ductile);
    print("of these: thinner sheet under the head, or equal", thin_or_equal);
    print("of these: thicker sheet under the head", stiff_head);
    print("a sheet with Fu/fy below 1.08", hard);
    const Scatter stiff = print("of these: 1.11 mm under the head, 1.11 or 1.43 mm at the tip", hard_pair);
    print("0.31 mm under the head: outside the range", very_thin);
    CHECK(whole.mean > 1.0);   // the formula is right in the mean
    CHECK(soft.mean > 1.05);
    CHECK(allowed.least > 2.0);   // 3.00 leaves two against the worst configuration
    CHECK(stiff.n == 6);
    CHECK(stiff.greatest < 0.895); // why hard sheet is named among what the clause is not for: 0.79 to 0.89
    CHECK(stiff.least > 0.785);
}

TEST_CASE("Tests against SC-2: pull-out values of two makers' guides")
{
    std::vector<double> printed[3], applied[3], design;
    for (const Maker& m : makers("pull-out")) {
        const auto at = [&m](double thin) { return screw_pull_out({.d_mm = m.d, .tc_mm = m.t_tip, .Fu2_MPa = least_Fu, .thin_sheet = thin}).nominal; };
        REQUIRE(at(thin_sheet_as_printed) > 0);
        const int band = m.t_tip < 1.25 ? 0 : m.t_tip < 2.0 ? 1 : 2;
        printed[band].push_back(m.P / at(thin_sheet_as_printed));
        applied[band].push_back(m.P / at(thin_sheet_applied));
        design.push_back(3.00 * m.P / at(thin_sheet_applied));
    }
    header();
    const Scatter thin = print("1.2 mm, clause as printed", printed[0]);
    print("1.5 to 1.9 mm, clause as printed", printed[1]);
    print("2.7 to 4.8 mm, clause as printed", printed[2]);
    const Scatter corrected = print("1.2 mm, thin-sheet factor applied", applied[0]);
    const Scatter middle = print("1.5 to 1.9 mm, thin-sheet factor applied", applied[1]);
    const Scatter thick = print("2.7 to 4.8 mm, thin-sheet factor applied", applied[2]);
    const Scatter allowed = print("all, over the allowable force with the factor applied", design);
    CHECK(thin.least < 0.7);       // why there is a factor at all
    CHECK(corrected.least > 1.0);  // with it no value at 1.2 mm lies below the formula
    CHECK(middle.least > 0.65);    // at 1.9 mm the factor is nearly 1 and some values stay a third below it
    CHECK(allowed.least > 2.0);
    CHECK(thick.mean > 1.0);
}

TEST_CASE("Tests against SC-1: lap shear of two makers' guides, a trend only, the sheets' strength is not printed")
{
    std::vector<double> a, b;
    for (const Maker& m : makers("lap shear")) {
        const base::Resistance r = screw_shear({m.d, m.t_head, m.t_tip, least_Fu, least_Fu});
        REQUIRE(r.covered);
        (m.source == "M1" ? a : b).push_back(m.P / r.nominal);
        CHECK(r.capacity <= m.P);
    }
    header();
    print("guide A, 1.2 to 1.9 mm, No. 10", a);
    print("guide B, 0.45 to 1.9 mm, equal sheets", b);
}

TEST_CASE("Tests against WS-3: steel plate of 4.8 mm on plywood, ultimate over the clause's value")
{
    // Thread penetration of 12.7 to 19 mm is 2.3 to 4.6 D: below the 6 D of the clause, which refuses all eight. The yield equations with
    // that penetration and its p/(10 D) are compared as a trend. Group 1 plywood: G 0.50; side plate of 58 ksi (judgement).
    std::vector<double> ratios;
    for (const CsvRow& r : read_csv("screw_lateral_plywood_metal")) {
        if (r.text("joint") != "metal to plywood") continue;
        const double d = (r.text("screw").ends_with("No. 8") ? 0.164 : 0.216) * in_mm, p = r.number("thread_penetration_mm"), Fu = 58000 * psi;
        CHECK_FALSE(wood_screw_lateral({.D_mm = d, .Dr_mm = root_of(d), .G = 0.5, .p_mm = p, .ts_mm = 4.76, .Fus_MPa = Fu, .C_D = 1, .C_M = 1, .C_t = 1}).covered);
        const double Z = yield_load(d, p, dowel_bearing_MPa(0.5), 4.76, 2.2 * Fu / 1.6);
        ratios.push_back(r.number("P_ult_N") / Z);
        CHECK(Z <= r.number("P_ult_N"));
    }
    header();
    const Scatter s = print("metal to plywood, yield equations without p/(10 D)", ratios);
    CHECK(s.n == 8);
    CHECK(s.least > 2.0);
}

TEST_CASE("Tests against the yield equations of WS-3 with the board under the head: plywood and OSB on thin steel, a trend, no clause")
{
    // Root diameters by screw number, G 0.50 for OSB and Group 1 plywood, 0.42 for plywood of unknown species; steel as main member.
    std::vector<double> osb, plywood, association;
    for (const CsvRow& r : read_csv("screw_shear_wood_panel_to_steel")) {
        const bool is_osb = r.text("panel") == "OSB";
        const double Z = yield_load(r.number("d_mm"), r.number("t_steel_mm"), 2.2 * r.number("fu_steel_MPa") / 1.6, r.number("t_panel_mm"),
                                    dowel_bearing_MPa(is_osb ? 0.5 : 0.42));
        (is_osb ? osb : plywood).push_back(r.number("P_mean_N") / Z);
        for (const char* column : {"P1_N", "P2_N", "P3_N"}) CHECK(Z <= r.number(column));
    }
    const std::map<std::string, double> numbers{{"No. 8", 0.164}, {"No. 10", 0.190}, {"No. 12", 0.216}, {"No. 14", 0.242}};
    for (const CsvRow& r : read_csv("screw_lateral_plywood_metal"))
        for (const auto& [number, inches] : numbers) {
            if (r.text("joint") != "plywood to metal" || !r.text("metal").starts_with("galvanised") || !r.text("screw").ends_with(number)) continue;
            const double Z = yield_load(inches * in_mm, 0.078 * in_mm, 61850 * psi, r.number("t_plywood_mm"), dowel_bearing_MPa(0.5));
            association.push_back(r.number("P_ult_N") / Z);
            CHECK(Z <= r.number("P_ult_N"));
        }
    CHECK(osb.size() + plywood.size() == 26);
    CHECK(association.size() == 12);
    header();
    print("OSB 12 to 18 mm on 0.9 to 2.6 mm steel", osb);
    print("plywood 11 to 17 mm on 0.9 to 2.5 mm steel", plywood);
    print("plywood 6 to 19 mm on 2.0 mm steel, plywood association", association);
}

TEST_CASE("Tests against design values: no allowable force of SC-1 and SC-2 exceeds any tested specimen")
{
    std::size_t count = 0;
    double closest = 1e9;
    holds("SC-1", From::tested);
    for (const CsvRow& r : read_csv("screw_shear_steel_to_steel"))
        for (const double peak : specimens(r)) {
            CAPTURE(r.text("ref"));
            const double allowed = screw_shear_parts(sheets(r)).nominal_N / 3.00; // the clause's figure; refused at 0.31 mm
            CHECK(allowed <= peak);
            count_value();
            closest = std::min(closest, peak / allowed);
            ++count;
        }
    holds("SC-2", From::tested);
    for (const Maker& m : makers("pull-out"))
        for (const double thin : {thin_sheet_as_printed, thin_sheet_applied}) {
            const base::Resistance r = screw_pull_out({m.d, m.t_tip, least_Fu, thin});
            REQUIRE(r.covered);
            CHECK(r.capacity <= m.P);
            if (thin == thin_sheet_applied) count_value();
        }
    std::printf("%zu specimens in shear, the nearest %.2f times the allowable force\n", count, closest); // also in the page's text
    CHECK(count == 112);
    CHECK(closest > 1.9);
}

TEST_SUITE_END();
