#pragma once
#include <array>
#include <string_view>

namespace thinskin::report {

/// What no calculation here looks at and somebody must see to on the vehicle. Printed with every result.
/// Source: design rule of this project; label: engineering judgement.
inline constexpr std::array<std::string_view, 12> see_to_on_the_vehicle = {
    "lamps, reflectors and number plate stay visible",
    "camera, sensors, wiper, heated glass and tow bar stay free",
    "overhang and width stay within what the law allows",
    "people can still get out through the door, from inside too",
    "the door stays shut and is held when open (latch, check strap, stay)",
    "wiring and hoses over the hinge have slack and do not chafe",
    "refrigerant, gas and fuel lines: only by people who may, and free to move with the door",
    "no hole in reinforcements against a crash, near airbags or into wiring; the body-builder instructions go first",
    "drilled holes are protected against corrosion",
    "a second, independent retention holds the item if a fixing lets go",
    "tighten again after the first 50 to 100 km and after 500 to 1000 km, mark the nuts, then look at them and the hinges regularly",
    "insurer, and the authority where it wants to know, are told",
};

} // namespace thinskin::report
