// Rows of the case's own catalogue: used as the program's, named where they were used, refused when they cannot be.
#include "actions/load_cases.h"
#include "casefile/writer.h"
#include "layout/layout.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>

using namespace thinskin;
using tests::check_near_rel;
using tests::Edits;

namespace {

const std::string rules = "rules: allowable_strength\n";
/// DC04, 8.8 and 4.8 mm once more, under names of the case's own.
const std::string copies = rules + R"yaml(catalogue:
  materials: [{name: own sheet, kind: steel, from: 0.1 mm, to: 3 mm, yield: 140 MPa, tensile: 270 MPa, source: certificate 7, label: read}]
  bolt_grades: [{name: own grade, yield: 640 MPa, tensile: 800 MPa, source: head mark, label: memory}]
  screws: [{name: own screw, diameter: 4.8 mm, head: 9.5 mm, source: calliper, label: read}]
  roads: [{name: own road, down: 3 g, up: 1 g, lateral: 0.7 g, fore_aft: 1 g, source: crew, label: judgement}]
)yaml";

bool warns(const results::Outcome& o, const std::string& words)
{
    return std::any_of(o.cautions.begin(), o.cautions.end(), [&](const std::string& c) { return c.find(words) != std::string::npos; });
}

/// The first error of reading and resolving, with its place.
std::string error_of(const std::string& block, const Edits& more = {})
{
    Edits edits{{rules, rules + block}};
    edits.insert(edits.end(), more.begin(), more.end());
    const casefile::ReadResult r = casefile::read_text(tests::edited_text("condenser_door", edits), "job.yaml");
    if (!r.value || base::has_errors(r.diagnostics)) return base::format(r.diagnostics.front());
    const layout::Result resolved = layout::resolve(*r.value);
    return resolved.diagnostics.empty() ? "" : base::format(resolved.diagnostics.front());
}

std::string material(const std::string& changed) { return "catalogue: {materials: [{name: own sheet, kind: steel, from: 0.1 mm, to: 3 mm, " + changed + ", source: s, label: read}]}\n"; }

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("own rows with the program's figures give the program's margins, and each is named where it was used")
{
    const results::Outcome& plain = tests::check_case("condenser_door");
    const results::Outcome& own = tests::check_case("condenser_door", {{rules, copies}, {"{material: DC04, thickness: 0.8 mm", "{material: own sheet, thickness: 0.8 mm"}, {"\"8.8\"", "own grade"}, {"surface: unsealed", "surface: own road"}});
    REQUIRE(own.checks.size() == plain.checks.size());
    for (std::size_t i = 0; i < own.checks.size(); ++i) {
        CAPTURE(plain.checks[i].id);
        CHECK(own.checks[i].id == plain.checks[i].id);
        CHECK(own.checks[i].demand == plain.checks[i].demand);
        CHECK(own.checks[i].capacity == plain.checks[i].capacity);
    }
    for (const char* words : {"material own sheet: certificate 7 (read by whoever wrote the case)", "bolt grade own grade: head mark (from memory)", "road own road: crew (engineering judgement)"}) CHECK(warns(own, words));
    CHECK_FALSE(warns(own, "own screw")); // not used
    CHECK(has(own.dynamic_derivation, "own road"));
}

TEST_CASE("a sheet thicker than its own row is for is not covered")
{
    const results::Outcome& o = tests::check_case("condenser_door", {{rules, rules + "catalogue: {materials: [{name: thin stock, kind: steel, from: 0.3 mm, to: 0.7 mm, yield: 140 MPa, tensile: 270 MPa, source: s, label: read}]}\n"},
                                                                    {"{material: DC04, thickness: 0.8 mm", "{material: thin stock, thickness: 0.8 mm"}});
    CHECK(o.verdict != base::Verdict::pass);
    CHECK(std::any_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.status == base::Status::not_covered && has(c.note, "0.76 mm is outside the thicknesses"); }));
}

TEST_CASE("a road that asks less than the program's sealed row is said to do so")
{
    const std::string easy = rules + "catalogue: {roads: [{name: car park, down: 1.2 g, up: 0 g, lateral: 0.1 g, fore_aft: 0.2 g, source: s, label: judgement}]}\n";
    const results::Outcome& o = tests::check_case("condenser_door", {{rules, easy}, {"surface: unsealed", "surface: car park"}});
    CHECK(warns(o, "car park asks less"));
    check_near_rel(o.dynamic_factor, 1.2, 1e-12);
}

TEST_CASE("own rows that cannot be: each with line, key and what would be right")
{
    for (const auto& bad : {std::pair<std::string, std::string>{material("yield: -140 MPa, tensile: 270 MPa"), "catalogue.materials[0].yield"},
                                       {material("yield: .nan, tensile: 270 MPa"), "catalogue.materials[0].yield"},
                                       {material("yield: 270 MPa, tensile: 140 MPa"), "are they exchanged?"},
                                       {material("yield: 140 MPa"), "the key \"tensile\" is missing"},
                                       {material("yield: 140 MPa, tensile: 270 MPa, colour: red"), "unknown key \"colour\""},
                                       {"catalogue: {nails: []}\n", "unknown key \"nails\""},
                                       {"catalogue: {screws: [{name: 4.8 mm, diameter: 4.8 mm, head: 9 mm, source: s, label: read}]}\n", "has a row 4.8 mm already"},
                                       {"catalogue: {screws: [{name: 4.80mm, diameter: 4.8 mm, head: 9 mm, source: s, label: read}]}\n", "has a row 4.8 mm already (4.80mm here)"},
                                       {"catalogue: {materials: [{name: dc04, kind: steel, from: 0.1 mm, to: 3 mm, yield: 140 MPa, tensile: 270 MPa, source: s, label: read}]}\n", "has a row DC04 already (dc04 here)"},
                                       {"catalogue: {screws: [{name: Own 5.0, diameter: 5 mm, head: 9 mm, source: s, label: read}, {name: own 5, diameter: 5 mm, head: 9 mm, source: s, label: read}]}\n", "the name Own 5.0 stands twice (own 5 here)"},
                                       {"catalogue: {screws: [{name: a, diameter: 5 mm, head: 9 mm, source: s, label: read}, {name: a, diameter: 6 mm, head: 9 mm, source: s, label: read}]}\n", "the name a stands twice"},
                                       {"catalogue: {screws: [{name: a, diameter: 5 mm, head: 3 mm, source: s, label: read}]}\n", "is not wider than the shank"},
                                       {"catalogue: {screws: [{name: a, diameter: 5 mm, head: 9 mm, label: read}]}\n", "the key \"source\" is missing"},
                                       {"catalogue: {screws: [{name: a, diameter: 5 mm, head: 9 mm, source: s, label: certain}]}\n", "read, computed, memory, practice, judgement"},
                                       {"catalogue: {roads: [{name: a, down: 0.5 g, up: 0 g, lateral: 0 g, fore_aft: 0 g, source: s, label: read}]}\n", "catalogue.roads[0].down"}}) {
        const std::string error = error_of(bad.first);
        CAPTURE(bad.first);
        CAPTURE(error);
        CHECK(has(error, "job.yaml:14:"));
        CHECK(has(error, bad.second));
    }
}

TEST_CASE("a name that neither has is refused with the names of both")
{
    const std::string error = error_of("catalogue: {roads: [{name: well loop, down: 3 g, up: 1 g, lateral: 1 g, fore_aft: 1 g, source: s, label: read}]}\n", {{"surface: unsealed", "surface: gravel"}});
    CHECK(has(error, "there are sealed, unsealed, track, well loop"));
    CHECK(has(error_of("", {{"surface: unsealed", "surface: well lop"}}), "no road surface called well lop"));
}

namespace {

/// A case and its shared rows in a folder of their own; the case's path.
std::string job_with_rows(const std::string& name, const std::string& rows_file, const std::string& block)
{
    const auto folder = std::filesystem::temp_directory_path() / ("thinskin_own_rows_" + name);
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "shop_rows.yaml") << rows_file;
    std::ofstream(folder / "job.yaml") << tests::edited_text("condenser_door", {{rules, rules + block}, {"{material: DC04, thickness: 0.8 mm", "{material: shop sheet, thickness: 0.8 mm"}});
    return (folder / "job.yaml").string();
}

const std::string shop = "# shop rows\nmaterials:\n  - {name: shop sheet, kind: steel, from: 0.1 mm, to: 3 mm, yield: 150 MPa, tensile: 280 MPa, source: mill, label: read}\n";

} // namespace

TEST_CASE("a shared file of rows stands beside the case: used, named with its file, and left out when the case is written")
{
    const casefile::ReadResult r = casefile::read_file(job_with_rows("good", shop, "catalogue: {file: shop_rows.yaml}\n"));
    REQUIRE(r.value);
    REQUIRE(r.value->own.materials.size() == 1);
    CHECK(r.value->own.materials.front().shared);
    CHECK(r.value->own.materials.front().where.line == 3);
    CHECK(r.value->own.file_text == shop);
    const layout::Result resolved = layout::resolve(*r.value);
    REQUIRE(resolved.layout);
    CHECK(resolved.layout->skin.material.strength(0.76).fy == 150);
    CHECK(has(resolved.layout->own_rows.front(), "in shop_rows.yaml"));
    const std::string written = casefile::write(*r.value);
    CHECK(has(written, "shop_rows.yaml"));
    CHECK_FALSE(has(written, "mill"));
}

TEST_CASE("mistakes in a shared file are told in its own lines; a path, a missing file and a file of a file are refused")
{
    const auto first = [](const std::string& name, const std::string& text, const std::string& block) {
        const casefile::ReadResult r = casefile::read_file(job_with_rows(name, text, block));
        CHECK_FALSE(r.value);
        REQUIRE_FALSE(r.diagnostics.empty());
        return base::format(r.diagnostics.front());
    };
    const std::string use = "catalogue: {file: shop_rows.yaml}\n";
    const std::string no_unit = first("unit", "materials:\n  - {name: shop sheet, kind: steel, from: 0.1 mm, to: 3 mm, yield: 150, tensile: 280 MPa, source: mill, label: read}\n", use);
    CHECK(has(no_unit, "shop_rows.yaml:2:"));
    CHECK(has(no_unit, "catalogue.materials[0].yield"));
    CHECK(has(first("key", shop + "nails: []\n", use), "shop_rows.yaml:4:"));
    CHECK(has(first("block", "catalogue:\n  materials: []\n", use), "without catalogue above them"));
    CHECK(has(first("syntax", "materials: [\n", use), "shop_rows.yaml:"));
    CHECK(has(first("more", shop + "file: more.yaml\n", use), "names no further file"));
    CHECK(has(first("gone", shop, "catalogue: {file: other.yaml}\n"), "cannot be opened"));
    CHECK(has(first("path", shop, "catalogue: {file: ../shop_rows.yaml}\n"), "without a path"));
    const casefile::ReadResult twice = casefile::read_file(job_with_rows("twice", shop, "catalogue: {file: shop_rows.yaml, materials: [{name: shop sheet, kind: steel, from: 0.1 mm, to: 3 mm, yield: 140 MPa, tensile: 270 MPa, source: s, label: read}]}\n"));
    REQUIRE(twice.value);
    const layout::Result resolved = layout::resolve(*twice.value);
    REQUIRE_FALSE(resolved.diagnostics.empty());
    CHECK(has(base::format(resolved.diagnostics.front()), "stands twice"));
}
