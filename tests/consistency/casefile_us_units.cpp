// The same case in US units: every quantity of the file is converted and written with all its digits; what the reader
// makes of it must not depend on the unit it was written in.
#include "base/units.h"
#include "casefile/reader.h"
#include "casefile/write_visitor.h"
#include "consistency/casefile_full.h"
#include "support/near.h"
#include "yaml/emit.h"

#include <array>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <optional>

namespace {

using namespace thinskin;

std::string unit_of(const std::string& text)
{
    const std::size_t at = text.find_first_not_of("0123456789.+-/ ");
    return at == std::string::npos ? std::string{} : base::tidy_unit(text.substr(at));
}

/// Value and dimension of a text that is a quantity; empty for words, names and sections.
std::optional<std::pair<double, base::Dimension>> quantity_in(const std::string& text)
{
    const std::string unit = unit_of(text);
    const auto d = unit == "ga" ? base::Dimension::length : base::dimension_of(unit);
    if (!d) return std::nullopt;
    const auto q = base::read_quantity(text, *d);
    if (!q.ok) return std::nullopt;
    return std::pair{q.quantity.value, *d};
}

/// Factors written out here once more, as products of the exact definitions.
struct UsUnit {
    base::Dimension d;
    const char* name;
    double inner;
};
constexpr std::array us_units = {
    UsUnit{base::Dimension::length, "in", 25.4},
    UsUnit{base::Dimension::mass, "lb", 0.45359237},
    UsUnit{base::Dimension::force, "lbf", 0.45359237 * 9.80665},
    UsUnit{base::Dimension::stress, "psi", 0.45359237 * 9.80665 / (25.4 * 25.4)},
    UsUnit{base::Dimension::rotational_stiffness, "lbf*in/rad per in", 0.45359237 * 9.80665},
    UsUnit{base::Dimension::rotational_spring, "lbf·ft/rad", 0.45359237 * 9.80665 * 304.8},
    UsUnit{base::Dimension::stiffness, "lbf/in", 0.45359237 * 9.80665 / 25.4},
    UsUnit{base::Dimension::frequency, "rpm", 1.0 / 60.0},
    UsUnit{base::Dimension::speed, "mph", 447.04},
    UsUnit{base::Dimension::time, "s", 1.0},
    UsUnit{base::Dimension::angle, "rad", 1.0},
};

std::string in_us_units(const std::string& text)
{
    const auto q = quantity_in(text);
    if (!q) return text;
    for (const UsUnit& u : us_units)
        if (u.d == q->second) return fmt::format("{} {}", q->first / u.inner, u.name);
    return text;
}

int convert(yaml::Node& n)
{
    int changed = 0;
    const std::string before = n.text;
    if (n.kind == yaml::Node::Kind::scalar) n.text = in_us_units(n.text);
    changed += n.text != before ? 1 : 0;
    for (yaml::Node& i : n.items) changed += convert(i);
    for (yaml::Entry& e : n.entries) changed += convert(e.value);
    return changed;
}

void check_same_values(const model::Case& a, const model::Case& b)
{
    const auto va = casefile::list_values(a), vb = casefile::list_values(b);
    REQUIRE(va.size() == vb.size());
    for (std::size_t i = 0; i < va.size(); ++i) {
        const std::size_t cut = va[i].find(": ") + 2;
        CAPTURE(va[i]);
        CAPTURE(vb[i]);
        const auto qa = quantity_in(va[i].substr(cut)), qb = quantity_in(vb[i].substr(cut));
        REQUIRE(qa.has_value() == qb.has_value());
        if (qa) tests::check_near_abs(qb->first, qa->first, 1e-12 * std::abs(qa->first));
        else CHECK(va[i] == vb[i]);
    }
}

TEST_SUITE_BEGIN("case file: units");

TEST_CASE("a case in US units gives the same values within 1e-12")
{
    std::vector<casefile::ReadResult> cases = {casefile::read_text(tests::full_case, "full.yaml")};
    cases.push_back(casefile::read_file(THINSKIN_SOURCE_DIR "/cases/condenser_door.yaml"));
    for (const casefile::ReadResult& metric : cases) {
        REQUIRE(metric.value.has_value());
        yaml::Node tree = casefile::WriteVisitor(*metric.value, casefile::Show::needed).tree();
        CHECK(convert(tree) > 50);
        const casefile::ReadResult us = casefile::read_text(yaml::emit(tree), "us.yaml");
        for (const base::Diagnostic& d : us.diagnostics) MESSAGE(base::format(d));
        REQUIRE(us.value.has_value());
        check_same_values(*metric.value, *us.value);
        tests::check_near_rel(us.value->panel.width.value, 740, 1e-12);
        tests::check_near_rel(us.value->item->centre_of_mass.z.value, 205, 1e-12);
        tests::check_near_rel(us.value->door->mass.value, 27, 1e-12);
    }
}

TEST_SUITE_END();

} // namespace
