// Rows for the panels: what they say is what the core says, and a change made through them is read back from the file.
#include "handles/handles.h"
#include "presentation/compare.h"
#include "presentation/diagnostics.h"
#include "presentation/inputs.h"
#include "presentation/margins.h"
#include "report/figures.h"
#include "support/gui.h"

#include <algorithm>
#include <cmath>
#include <set>

using namespace thinskin;
using namespace thinskin::gui;
using tests::take;

namespace {

const Field* field_at(const std::vector<InputGroup>& groups, const std::string& path)
{
    for (const InputGroup& g : groups)
        for (const Section& s : g.sections)
            for (const Field& f : s.fields)
                if (f.path == path) return &f;
    return nullptr;
}

Field field(const Document& d, const std::string& path, UnitSystem u = UnitSystem::metric)
{
    const auto groups = input_groups(d, u);
    const Field* f = field_at(groups, path);
    INFO(path);
    REQUIRE(f != nullptr);
    return *f;
}

/// The demo worked out once, linear and in full.
const results::Outcome& demo_outcome(bool linear)
{
    static const results::Outcome full = tests::check_case("condenser_door");
    static const results::Outcome only_linear = tests::check_case("condenser_door", {{"skin: automatic", "skin: linear"}});
    return linear ? only_linear : full;
}

} // namespace

TEST_SUITE_BEGIN("consistency");

TEST_CASE("margin rows: the governing one first, then by margin, figures as report prints them")
{
    const results::Outcome& o = demo_outcome(false);
    const auto rows = margin_rows(o);
    REQUIRE(rows.size() > 20);
    CHECK(rows[0].governing);
    CHECK(rows[0].check_id == o.governing->id);
    CHECK(rows[0].margin == report::margin_text(o.governing->margin()));
    CHECK(rows[0].status == "fail");
    for (std::size_t i = 2; i < rows.size(); ++i)
        if (rows[i].value && rows[i].counted) CHECK(*rows[i - 1].value <= *rows[i].value);
    for (std::size_t i = 1; i < rows.size(); ++i) CHECK((rows[i - 1].counted || !rows[i].counted)); // what does not count comes last
    for (const MarginRow& r : rows) CHECK((r.value.has_value() || r.margin == "-"));
    const auto all = margin_rows(o, {.every_load_case = true});
    CHECK(all.size() == o.checks.size());
    for (const MarginRow& r : margin_rows(o, {.group = "door"})) CHECK(r.group == "door");
}

TEST_CASE("linear figures that do not stand are marked and never a pass; a case that is not solved has no rows")
{
    const results::Outcome& o = demo_outcome(true);
    int marked = 0;
    for (const results::Check& c : o.checks)
        if (c.by_linear) CHECK(c.status == base::Status::not_covered);
    for (const MarginRow& r : margin_rows(o, {.every_load_case = true})) {
        if (r.mark != Mark::linear) continue;
        ++marked;
        CHECK(r.status.starts_with("rough (linear)"));
        CHECK(r.margin != "-");
    }
    CHECK(marked == std::count_if(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.by_linear.has_value(); }));
    results::Outcome unsolved = o;
    unsolved.verdict = base::Verdict::not_solved;
    CHECK(margin_rows(unsolved).empty());
    CHECK_FALSE(margin_card(unsolved, o.checks.front().id, ""));
}

TEST_CASE("a margin's card holds its formula with the numbers in, source, hand check, load case and what would help")
{
    const results::Outcome& o = demo_outcome(false);
    const results::Check& g = *o.governing;
    const auto card = margin_card(o, g.id, g.load_case);
    REQUIRE(card);
    CHECK(card->row.governing);
    CHECK(card->formula_id == g.formula);
    CHECK_FALSE(card->formula.empty());
    REQUIRE_FALSE(card->symbols.empty());
    for (const MarginCard::Symbol& s : card->symbols) {
        CAPTURE(s.name);
        CHECK(s.value != "-");
    }
    CHECK(card->sum.ends_with("= " + card->row.margin));
    CHECK(card->load_case.starts_with(g.load_case + ": ("));
    CHECK_FALSE(card->source.empty());
    CHECK_FALSE(card->hand_check.empty());
    REQUIRE_FALSE(card->help.empty());
    CHECK(card->help.front() == o.advice); // what helps the governing row is the advice of the case
    CHECK_FALSE(margin_card(o, "no such row", ""));
}

TEST_CASE("demand and capacity in US units keep their ratio")
{
    const results::Outcome& o = demo_outcome(false);
    const auto metric = margin_rows(o), us = margin_rows(o, {.units = UnitSystem::us});
    REQUIRE(metric.size() == us.size());
    std::set<std::string> units;
    for (std::size_t i = 0; i < us.size(); ++i) {
        units.insert(us[i].unit);
        CHECK(us[i].margin == metric[i].margin);
        if (us[i].demand == "-" || std::stod(metric[i].demand) < 1) continue;
        CAPTURE(us[i].title);
        const double ratio = std::stod(us[i].demand) / std::stod(us[i].capacity), same = std::stod(metric[i].demand) / std::stod(metric[i].capacity);
        CHECK(std::abs(ratio / same - 1) < 0.02); // three digits are shown
    }
    for (const char* unit : {"N", "N mm", "MPa", "kg"}) CHECK(units.count(unit) == 0);
    CHECK(shown_figure(1000, "N", UnitSystem::us).text == report::figure(1000 / 4.4482216152605)); // 1 lbf = 4.4482216152605 N, exact by definition
}

TEST_CASE("words and marks: every verdict has a word, a sign and a meaning of its own")
{
    std::set<std::string_view> words, signs;
    for (int k = 0; k <= static_cast<int>(Mark::aside); ++k) {
        const auto m = static_cast<Mark>(k);
        words.insert(word(m));
        signs.insert(sign(m));
        CHECK(sign(m).size() == 2);
        CHECK_FALSE(meaning(m).empty());
    }
    CHECK(words.size() == 8);
    CHECK(signs.size() == 8);
    CHECK(verdict_lines(demo_outcome(false)).word == "fail");
    CHECK(verdict_lines(demo_outcome(false)).headline == demo_outcome(false).headline);
}

TEST_CASE("a step is named by what is changed, and to what")
{
    const Document d = tests::demo_document();
    CHECK(edit_field(field(d, "door.slam.stop"), "30", UnitSystem::metric).edit.name == "Slam stop: 30");
    CHECK(edit_field(field(d, "item.mass"), "20", UnitSystem::metric).edit.name == "Item mass: 20");
    CHECK(edit_field(field(d, "brackets[0].fasteners[0].at"), "150", UnitSystem::metric, 0).edit.name == "At: 150");
}

TEST_CASE("compare: deltas are those of the shown margins")
{
    const results::Outcome& o = demo_outcome(false);
    for (const MarginRow& r : margin_rows(o, {.compare_with = &o})) CHECK(r.delta.empty());
    results::Outcome worse = o;
    for (results::Check& c : worse.checks) c.capacity *= 0.9;
    int better = 0;
    for (const MarginRow& r : margin_rows(o, {.compare_with = &worse})) {
        CHECK(r.better >= 0);
        better += r.better;
    }
    CHECK(better > 10);
    CHECK(delta_text(-0.191, 0.05) == "+0.25"); // -0.20 to +0.05
    CHECK(delta_text(0.051, 0.058).empty());
    CHECK(delta_text(9, 0.5).empty());
    CHECK(delta_text(std::nan(""), 0.5).empty());
}

TEST_CASE("inputs: every value of every shipped case is a field once, with its row's help, in four groups")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Document d(tests::edited_text(name), name);
        const auto groups = input_groups(d, UnitSystem::metric);
        REQUIRE(groups.size() == 4);
        std::set<std::string> paths;
        for (const InputGroup& g : groups)
            for (const Section& s : g.sections) {
                CHECK_FALSE(s.title.empty());
                for (const Field& f : s.fields) {
                    CAPTURE(f.path);
                    CHECK(paths.insert(f.path).second);
                    CHECK_FALSE(f.label.empty());
                    if (f.kind == FieldKind::choice && !f.value.empty()) CHECK(std::find(f.choices.begin(), f.choices.end(), f.value) != f.choices.end());
                    if (f.kind == FieldKind::fastener_kind) CHECK(std::find(f.choices.begin(), f.choices.end(), f.value) != f.choices.end());
                    if (f.kind == FieldKind::quantity) CHECK_FALSE(f.unit.empty());
                }
                for (const std::string& path : s.can_add) CHECK(casefile::row_at(path) != nullptr);
            }
        CHECK(paths.count("panel.skin.thickness") == 1);
    }
}

TEST_CASE("inputs: showing them in the other units and leaving them as shown changes nothing")
{
    for (const std::string name : {"condenser_door", "ladder_rack", "bottle_locker_wall"}) {
        Document d(tests::edited_text(name), name);
        for (const InputGroup& g : input_groups(d, UnitSystem::us))
            for (const Section& s : g.sections)
                for (const Field& f : s.fields) {
                    CAPTURE(f.path);
                    CHECK(edit_field(f, f.value, UnitSystem::us).edit.changes.empty());
                    for (std::size_t k = 0; k < f.coordinates.size(); ++k) CHECK(edit_field(f, f.coordinates[k], UnitSystem::us, static_cast<int>(k)).edit.changes.empty());
                }
    }
}

TEST_CASE("inputs: typed values keep their unit, plain numbers take the one beside them, nonsense is refused with what was expected")
{
    Document d = tests::demo_document();
    take(d, edit_field(field(d, "panel.width"), "29-1/8 in", UnitSystem::metric));
    CHECK(d.current()->panel.width.text == "29-1/8 in");
    take(d, edit_field(field(d, "road.distance_per_year"), "12000", UnitSystem::us));
    CHECK(d.current()->road->distance_per_year->text == "12000 km");
    take(d, edit_field(field(d, "item.centre_of_mass", UnitSystem::us), "8", UnitSystem::us, 2));
    CHECK(d.current()->item->centre_of_mass.z.text == "8 in");
    CHECK(d.current()->item->centre_of_mass.x.text == "352 mm");
    take(d, edit_field(field(d, "door.hinges.heights"), "200 mm, 700 mm, 1300 mm", UnitSystem::metric));
    CHECK(d.current()->door->hinges->heights.size() == 3);
    take(d, edit_field(field(d, "road.surface"), "track", UnitSystem::metric));
    take(d, set_measured_from(field(d, "panel.skin.thickness"), "offcut"));
    CHECK(field(d, "panel.skin.thickness").measured_from == "offcut");
    CHECK(field(d, "panel.frame.inner.coating").is_default);
    CHECK(field(d, "panel.frame.inner.coating").assumed);
    CHECK(field(d, "brackets[1].mirror_of").read_only == "a mirror of left");
    for (const char* bad : {"wide", "", "5 kg", "1,5"}) CHECK_FALSE(edit_field(field(d, "panel.width"), bad, UnitSystem::metric).ok());
    CHECK_FALSE(edit_field(field(d, "road.surface"), "gravel", UnitSystem::metric).ok());
    take(d, edit_field(field(d, "brackets[0].brace.section"), "angle 30x30x3", UnitSystem::metric));
    take(d, edit_field(field(d, "job.number"), "", UnitSystem::metric));
    CHECK(d.current()->job.number.empty());
}

TEST_CASE("parts are added and removed; what others are made from stays")
{
    Document d = tests::demo_document();
    take(d, add_angle(*d.current()));
    CHECK(d.current()->reinforcement.angles.size() == 3);
    take(d, add_fastener(*d.current(), "right"));
    CHECK(d.current()->brackets[0].fasteners.size() == 3);
    CHECK(d.current()->brackets[0].fasteners[2].name == "L3");
    CHECK(d.current()->brackets[1].rename.at("L3") == "R3");
    take(d, add_bracket_copy(*d.current(), "left"));
    CHECK(d.current()->brackets.size() == 3);
    take(d, add_strap(*d.current(), "right"));
    CHECK(d.current()->reinforcement.straps.size() == 1);
    take(d, add_gauge(*d.current(), 370, 200, UnitSystem::us));
    for (const char* type : {"bolt", "screw", "rivet", "insert"}) take(d, add_fastener_kind(*d.current(), type));
    CHECK_FALSE(add_fastener_kind(*d.current(), "glue").ok());
    CHECK_FALSE(remove_part(*d.current(), "brackets[0]").ok());
    CHECK_FALSE(remove_part(*d.current(), "reinforcement.angles[0]").ok());
    CHECK_FALSE(remove_part(*d.current(), "fastener_kinds[M6 bolt]").ok());
    take(d, remove_part(*d.current(), "fastener_kinds[4.8 screw]"));
    take(d, remove_part(*d.current(), "brackets[0].fasteners[2]"));
    CHECK(d.current()->brackets[1].rename.count("L3") == 0);
    take(d, remove_part(*d.current(), "brackets[2]"));
    take(d, remove_part(*d.current(), "reinforcement.straps[0]"));
    CHECK(d.undo_name() == "Remove strap 1");
    while (d.undo()) {}
    CHECK(d.text() == tests::edited_text("condenser_door"));
}

TEST_CASE("screws become bolts, and angles come behind them where the bracket pulls")
{
    Document d(tests::edited_text("condenser_door_screws"), "screws.yaml");
    take(d, add_fastener_kind(*d.current(), "bolt"));
    take(d, swap_kind(*d.current(), "4.8 screw", "M8 through bolt"));
    for (const model::Fastener& f : d.current()->brackets[0].fasteners) CHECK(f.use == "M8 through bolt");
    CHECK_FALSE(swap_kind(*d.current(), "4.8 screw", "M8 through bolt").ok());
    take(d, add_angle(*d.current()));
    take(d, add_angle(*d.current()));
    REQUIRE(d.current()->reinforcement.angles.size() == 2);
    CHECK(d.current()->reinforcement.angles[0].from.y.value == 740);
    CHECK(d.current()->reinforcement.angles[1].from.y.value == 420);
    const layout::Result r = layout::resolve(*d.current());
    std::string first = r.diagnostics.empty() ? "" : base::format(r.diagnostics.front());
    INFO(first);
    CHECK(r.layout);
}

TEST_CASE("a kind that the case does not have is made when it is chosen")
{
    Document d(tests::edited_text("condenser_door_screws"), "screws.yaml");
    CHECK(kinds_through_skin(*d.current()) == std::vector<std::string>{"4.8 screw"});
    take(d, swap_kind(*d.current(), "4.8 screw", "new: M10 through bolt"));
    CHECK(kinds_through_skin(*d.current()) == std::vector<std::string>{"M10 through bolt"});
    const auto choices = kinds_to_choose(*d.current());
    CHECK(std::find(choices.begin(), choices.end(), "M10 through bolt") != choices.end());
    CHECK(std::find(choices.begin(), choices.end(), "new: M10 through bolt") == choices.end());
    take(d, swap_kind(*d.current(), "", "4.8 screw"));
    CHECK(kinds_through_skin(*d.current()) == std::vector<std::string>{"4.8 screw"});
}

TEST_CASE("a new name reaches all that speak of the part")
{
    Document d = tests::demo_document();
    take(d, rename_part(*d.current(), "brackets[0].name", "hinge far"));
    take(d, rename_part(*d.current(), "brackets[0].fasteners[1].name", "top"));
    take(d, rename_part(*d.current(), "reinforcement.angles[0].name", "foot rail"));
    CHECK(d.current()->brackets[1].mirror_of == "hinge far");
    CHECK(d.current()->brackets[1].rename.at("top") == "R2");
    CHECK(d.current()->reinforcement.angles[1].copy_of == "foot rail");
    CHECK(layout::resolve(*d.current()).layout);
    CHECK_FALSE(rename_part(*d.current(), "brackets[0].name", "right").ok());
    CHECK_FALSE(rename_part(*d.current(), "brackets[0].name", "").ok());
}

TEST_CASE("a further angle takes a height where nothing is in the way (2026-11-25: it lay on the upper rail)")
{
    Document d = tests::demo_document();
    for (int k = 0; k < 3; ++k) take(d, add_angle(*d.current()));
    const auto& all = d.current()->reinforcement.angles;
    REQUIRE(all.size() == 5);
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t m = 0; m < i; ++m) CHECK(std::abs(all[i].from.y.value - all[m].from.y.value) >= 60);
    const layout::Result r = layout::resolve(*d.current());
    std::string first = r.diagnostics.empty() ? "" : base::format(r.diagnostics.front());
    INFO(first);
    CHECK(r.layout);
}

TEST_CASE("diagnostics: errors first, each with its line of the file")
{
    const Document d(tests::bytes_of(std::string(THINSKIN_SOURCE_DIR) + "/tests/bad/all_in_one_run.yaml"), "bad.yaml");
    const auto rows = diagnostic_rows(d.diagnostics(), d.text());
    REQUIRE(rows.size() > 1);
    for (const DiagnosticRow& r : rows) {
        CHECK(r.line > 0);
        CHECK(d.text().find(r.source_line) != std::string::npos);
        CHECK_FALSE(r.message.empty());
    }
    CHECK(rows.front().error);
    CHECK(diagnostic_summary(d.diagnostics()).find("errors") != std::string::npos);
    CHECK(diagnostic_summary({}).empty());
}

TEST_SUITE_END();
