#pragma once
#include "support/demo_layout.h"

namespace thinskin::tests {

/// Worked example of a loaded rear door: unit 38 kg at y 0.40, e 0.30, z 0.70 m; door 28 kg at y 0.36, e 0, z 0.55 m; hinges 1.10 m apart;
/// leaf 0.75 x 1.70 m hinged at its edge. y from the hinge line, z over the lower hinge. Computed from the formulas, outside the program.
inline Demo worked_door()
{
    Demo d;
    layout::Layout& l = d.layout;
    l.source = d.source.get();
    l.width = 750;
    l.height = 1700;
    layout::Item item;
    item.name = "unit";
    item.mass = 38;
    item.centre = {750 - 400, 200 + 700, 300};
    l.item = item;
    layout::Door door;
    door.mass = 28;
    door.centre = {750 - 360, 200 + 550, 0};
    door.has_hinges = true;
    door.hinge_heights = {200, 1300};
    door.pin_x = 750;
    l.door = door;
    return d;
}

} // namespace thinskin::tests
