// Units on the screen: the text of the file is shown where it is at home, converted elsewhere, and what is typed keeps its unit.
#include "document/units.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace thinskin;
using namespace thinskin::gui;
using base::Dimension;

TEST_SUITE_BEGIN("consistency");

TEST_CASE("a quantity is shown as written where its unit belongs to the system, else converted")
{
    const auto both = [](const char* text, Dimension d) {
        const base::ReadQuantity q = base::read_quantity(text, d);
        REQUIRE(q.ok);
        return shown(q.quantity, d, UnitSystem::metric) + " | " + shown(q.quantity, d, UnitSystem::us);
    };
    CHECK(both("250 mm", Dimension::length) == "250 mm | 9.8425 in");
    CHECK(both("1-1/4 in", Dimension::length) == "31.75 mm | 1-1/4 in");
    CHECK(both("22 ga", Dimension::length).ends_with("| 22 ga"));
    CHECK(both("15000 km", Dimension::length) == "15000 km | 15000 km");
    CHECK(both("36 kg", Dimension::mass) == "36 kg | 79.366 lb");
    CHECK(both("20 ms", Dimension::time) == "20 ms | 20 ms");
    CHECK(both("5 %", Dimension::ratio) == "5 % | 5 %");
    CHECK(both("180 deg", Dimension::angle) == "180 deg | 180 deg");
    CHECK(both("120 N·m/rad per m", Dimension::rotational_stiffness).starts_with("120 N·m/rad per m | "));
    CHECK(shown_value(std::numeric_limits<double>::quiet_NaN(), Dimension::length, UnitSystem::metric) == "no figure");
    CHECK(shown_value(-1e-12, Dimension::length, UnitSystem::metric) == "0 mm");
}

TEST_CASE("a typed number takes the unit on the screen; a unit that was typed stays")
{
    CHECK(typed(" 420 ", Dimension::length, UnitSystem::metric).text == "420 mm");
    CHECK(typed("16-1/2", Dimension::length, UnitSystem::us).text == "16-1/2 in");
    CHECK(typed("16.5 in", Dimension::length, UnitSystem::metric).text == "16.5 in");
    CHECK(typed("5", Dimension::ratio, UnitSystem::us).text == "5 %");
    for (const char* bad : {"", "high", "4,5", "5 kg", "nan", "inf mm", "1 2 3"}) {
        CAPTURE(bad);
        const Typed t = typed(bad, Dimension::length, UnitSystem::metric);
        CHECK_FALSE(t.ok);
        CHECK_FALSE(t.expected.empty());
    }
}

TEST_CASE("every dimension has a unit on the screen in both systems, and what is shown reads back to five digits")
{
    for (int k = 0; k <= static_cast<int>(Dimension::acceleration_density); ++k)
        for (const UnitSystem u : {UnitSystem::metric, UnitSystem::us}) {
            const auto d = static_cast<Dimension>(k);
            const std::string text = shown_value(123.456, d, u);
            CAPTURE(text);
            const base::ReadQuantity q = base::read_quantity(text, d);
            REQUIRE(q.ok);
            CHECK(std::abs(q.quantity.value / 123.456 - 1) < 1e-4);
            CHECK(system_of(text) == (system_of(shown_unit(d, UnitSystem::us)) == UnitSystem::us ? u : UnitSystem::metric));
        }
}

TEST_CASE("coordinates are written without digits that say nothing")
{
    CHECK(written_length(425, UnitSystem::metric) == "425 mm");
    CHECK(written_length(425.45, UnitSystem::us) == "16.75 in");
    CHECK(written_length(-0.0001, UnitSystem::metric) == "0 mm");
}

TEST_SUITE_END();
