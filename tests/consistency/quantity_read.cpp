#include "base/nearest.h"
#include "base/quantity.h"
#include "base/units.h"
#include "support/near.h"

#include <array>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <numbers>

namespace {

using namespace thinskin;
using base::Dimension;

constexpr std::array dimensions = {
    Dimension::length, Dimension::mass, Dimension::force, Dimension::stress, Dimension::moment,
    Dimension::rotational_stiffness, Dimension::angle, Dimension::frequency, Dimension::acceleration, Dimension::speed,
    Dimension::time, Dimension::ratio, Dimension::stiffness, Dimension::rotational_spring, Dimension::acceleration_density};

double value(const char* text, Dimension d)
{
    const auto q = base::read_quantity(text, d);
    INFO(text, ": ", q.expected);
    REQUIRE(q.ok);
    CHECK(q.quantity.text == text);
    return q.quantity.value;
}

TEST_SUITE_BEGIN("quantity");

TEST_CASE("units have the values of their definitions (inch 25.4 mm, pound 0.45359237 kg, g 9.80665 m/s2)")
{
    struct Row { const char* text; Dimension d; double inner; };
    const double lbf = 0.45359237 * 9.80665;
    const Row rows[] = {
        {"1 mm", Dimension::length, 1}, {"1 cm", Dimension::length, 10}, {"1 m", Dimension::length, 1000}, {"1 km", Dimension::length, 1e6},
        {"1 in", Dimension::length, 25.4}, {"1 ft", Dimension::length, 304.8}, {"1 kg", Dimension::mass, 1}, {"1 lb", Dimension::mass, 0.45359237},
        {"1 N", Dimension::force, 1}, {"1 kN", Dimension::force, 1000}, {"1 lbf", Dimension::force, lbf}, {"1 Pa", Dimension::stress, 1e-6},
        {"1 kPa", Dimension::stress, 1e-3}, {"1 MPa", Dimension::stress, 1}, {"1 psi", Dimension::stress, lbf / 645.16},
        {"1 ksi", Dimension::stress, 1000 * lbf / 645.16}, {"1 N·m", Dimension::moment, 1000}, {"1 N*m", Dimension::moment, 1000},
        {"1 Nm", Dimension::moment, 1000}, {"1 lbf·in", Dimension::moment, lbf * 25.4}, {"1 lbf*ft", Dimension::moment, lbf * 304.8},
        {"1 N·m/rad per m", Dimension::rotational_stiffness, 1}, {"1 Nm/rad per m", Dimension::rotational_stiffness, 1},
        {"1 deg", Dimension::angle, std::numbers::pi / 180}, {"1 rad", Dimension::angle, 1}, {"1 Hz", Dimension::frequency, 1},
        {"60 rpm", Dimension::frequency, 1}, {"1 g", Dimension::acceleration, 1}, {"9.80665 m/s2", Dimension::acceleration, 1},
        {"1 m/s", Dimension::speed, 1000}, {"3.6 km/h", Dimension::speed, 1000}, {"1 mph", Dimension::speed, 447.04}, {"1 s", Dimension::time, 1},
        {"1 ms", Dimension::time, 1e-3}, {"5 %", Dimension::ratio, 0.05}, {"1 kN/m", Dimension::stiffness, 1}, {"1 N·m/rad", Dimension::rotational_spring, 1000},
        {"1 g2/Hz", Dimension::acceleration_density, 1}, {"1 m2/s3", Dimension::acceleration_density, 1 / (9.80665 * 9.80665)},
        {"1 (m/s2)2/Hz", Dimension::acceleration_density, 1 / (9.80665 * 9.80665)}};
    for (const Row& r : rows) {
        CAPTURE(r.text);
        tests::check_near_rel(value(r.text, r.d), r.inner, 1e-14); // rounding of a product and a quotient
    }
}

TEST_CASE("each unit that the messages and the page offer is read, and so is each example")
{
    for (const Dimension d : dimensions) {
        CAPTURE(std::string(base::name(d)));
        CHECK(base::read_quantity(base::example(d), d).ok);
        std::string list(base::unit_list(d));
        list = list.substr(0, list.find(" ("));
        for (std::size_t from = 0; from < list.size();) {
            const std::size_t to = std::min(list.find(", ", from), list.size());
            CAPTURE(list.substr(from, to - from));
            CHECK(base::read_quantity("1 " + list.substr(from, to - from), d).ok);
            from = to + 2;
        }
    }
}

TEST_CASE("a unit belongs to one dimension only")
{
    for (const Dimension d : dimensions)
        for (const Dimension other : dimensions)
            if (d != other) {
                CAPTURE(std::string(base::example(d)));
                CAPTURE(std::string(base::name(other)));
                CHECK_FALSE(base::read_quantity(base::example(d), other).ok);
            }
}

TEST_CASE("numbers: fractions, signs, exponents, missing blanks")
{
    CHECK(value("3/8 in", Dimension::length) == 25.4 * 0.375);
    CHECK(value("1-1/4 in", Dimension::length) == 31.75);
    CHECK(value("1 1/4 in", Dimension::length) == 31.75);
    tests::check_near_rel(value("-1-1/2 in", Dimension::length), -38.1, 1e-15);
    CHECK(value("0.8mm", Dimension::length) == 0.8);
    CHECK(value(".5 mm", Dimension::length) == 0.5);
    CHECK(value("+2 mm", Dimension::length) == 2);
    CHECK(value("-30 mm", Dimension::length) == -30);
    CHECK(value("1.5e4 km", Dimension::length) == 1.5e10);
    CHECK(value("15000 km", Dimension::length) == 1.5e10);
    CHECK(value("0 mm", Dimension::length) == 0);
}

TEST_CASE("what is not a number with its unit is refused, and the message repeats it")
{
    for (const char* text : {"", " ", "mm", "0", "0.8", "0,8 mm", "0.8,mm", "1.000,5 mm", "15,000 km", "nan mm", "inf mm", "-inf mm", "infinity mm", ".nan", "1e999 mm",
                             "1e400 km", "0x10 mm", "1/0 in", "1-5/4 in", "1//2 in", "1-1/4", "--1 mm", "1 2 mm", "2*3 mm", "1 MM", "1 Mm", "1 mm mm", "1 mm;", "0.8 \xC2\xB5m", "about 3 mm",
                             "3 mm or so", "\xE2\x88\x92" "3 mm", "1 \"", "12 lbs", "1 inch"}) {
        const auto q = base::read_quantity(text, Dimension::length);
        CAPTURE(std::string(text));
        CHECK_FALSE(q.ok);
        CHECK(q.expected.find("expected a length such as \"0.8 mm\"") == 0);
    }
}

TEST_CASE("steel gauge follows the sheet weights it is defined by")
{
    // The Manufacturers' Standard gauge is a weight in ounces per square foot; 41.82 lb per square foot make an inch
    // (weights and factor from memory). The printed table is rounded to 0.001 mm after rounding to 0.0001 in.
    constexpr std::array ounces = {90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12};
    for (std::size_t i = 0; i < ounces.size(); ++i) {
        const int gauge = 10 + static_cast<int>(i);
        CAPTURE(gauge);
        const double mm = ounces[i] / 16.0 / 41.82 * 25.4;
        tests::check_near_abs(value(fmt::format("{} ga", gauge).c_str(), Dimension::length), mm, 0.002);
    }
}

TEST_CASE("gauges outside the table, in halves, or of another system are refused with the reason")
{
    struct Row { const char *text, *words; };
    const Row rows[] = {{"9 ga", "10 ga to 26 ga"}, {"27 ga", "10 ga to 26 ga"}, {"22.5 ga", "10 ga to 26 ga"}, {"-22 ga", "10 ga to 26 ga"}, {"1e9 ga", "10 ga to 26 ga"}, {"99999999999999999999 ga", "10 ga to 26 ga"},
                        {"22 galv ga", "zinc"}, {"22 ga galv", "zinc"}, {"22 swg", "British"}, {"22 SWG", "British"}, {"22 awg", "aluminium"},
                        {"22 al ga", "aluminium"}, {"22 gauge", "write 22 ga"}};
    for (const Row& r : rows) {
        const auto q = base::read_quantity(r.text, Dimension::length);
        CAPTURE(r.text);
        CAPTURE(q.expected);
        CHECK_FALSE(q.ok);
        CHECK(q.expected.find(r.words) != std::string::npos);
    }
}

TEST_CASE("the nearest name: one slip is forgiven, another word is not")
{
    const std::vector<std::string> keys = {"thickness", "coating", "crown", "material"};
    CHECK(base::nearest("thicknes", keys) == "thickness");
    CHECK(base::nearest("tihckness", keys) == "thickness");
    CHECK(base::nearest("Coating", keys) == "coating");
    CHECK(base::nearest("colour", keys).empty());
    CHECK(base::nearest("", keys).empty());
    CHECK(base::edit_distance("abc", "acb") == 1);
    CHECK(base::edit_distance("", "abc") == 3);
}

TEST_SUITE_END();

} // namespace
