#include "casefile/starter_texts.h"

namespace thinskin::casefile {
namespace {

// The same values as the case of the same name under cases/; a test holds that.
constexpr std::string_view condenser_on_door = R"yaml(format: 1
job: {title: Sample-fridge condenser on the right rear door, number: FS-0142, vehicle: "survey van, high roof", prepared_by: "", notes: ""}
rules: allowable_strength
road:
  surface: unsealed
  basis: quasi_static
  distance_per_year: 15000 km
panel:
  kind: door
  faces: rear
  width: 740 mm
  height: 1520 mm
  skin: {material: DC04, thickness: 0.8 mm, coating: 0.04 mm, crown: 0 mm}
  edges: {left: held, right: held, bottom: held, top: held}
  edges_in_plane: fixed
  frame: {width: 70 mm, depth: 32 mm, inner: {material: DC04, thickness: 0.7 mm}, section: box 60x25x0.7, seen: tapped}
  cavity: {depth: 45 mm, inner_panel: none}
  ribs: []
door:
  mass: 27 kg
  centre_of_mass: [370 mm, 760 mm, -20 mm]
  hinges:
    side: right
    heights: [210 mm, 1290 mm]
    pin: {x: 752 mm, z: -30 mm}
    evidence: {kind: maker_limit, mass: 50 kg, at: [370 mm, 900 mm, 220 mm], note: invented for the demo}
  latches: [{at: [0 mm, 580 mm]}]
  rest: none
  opening_angle: 180 deg
  slam: {edge_speed: 1.2 m/s, stop: 20 ms}
item:
  name: condenser unit
  mass: 36 kg
  mass_tolerance: 5 %
  centre_of_mass: [352 mm, 965 mm, 205 mm]
  box: {from: [27 mm, 700 mm, 60 mm], size: [690 mm, 540 mm, 290 mm]}
  running_frequency: [48 Hz]
brackets:
  - name: left
    x: 150 mm
    leg: {from: 400 mm, to: 760 mm, section: angle 40x40x4, material: S235, lying: right, gauge: 25 mm}
    arm: {at: 700 mm, length: 400 mm, section: angle 40x40x4, material: S235}
    brace: {from: 430 mm, to_arm: 270 mm, section: angle 25x25x3, material: S235}
    joints: {arm_leg: {weld: 3 mm}, brace_leg: {weld: 3 mm}, brace_arm: {weld: 3 mm}}
    mounts: [{at: 90 mm, use: M8 bolt, kind: rigid}, {at: 320 mm, use: M8 bolt, kind: rigid}]
    fasteners:
      - {name: L1, at: [150 mm, 420 mm], use: M8 through bolt}
      - {name: L2, at: [150 mm, 740 mm], use: M8 through bolt}
  - {name: right, mirror_of: left, x: 554 mm, rename: {L1: R1, L2: R2}}
fastener_kinds:
  M8 through bolt: {type: bolt, size: M8, grade: "8.8", head: outside, head_washer: 24x2 mm, nut_washer: 24x2 mm, hole: 9 mm, fit: clearance}
  M8 bolt: {type: bolt, size: M8, grade: "8.8"}
  M6 bolt: {type: bolt, size: M6, grade: "8.8", nut_washer: 18x1.6 mm}
reinforcement:
  angles:
    - name: lower rail
      from: [10 mm, 420 mm]
      to: [730 mm, 420 mm]
      gauge: 25 mm
      section: angle 40x40x4
      material: S235
      face: inside
      lying: up
      ends:
        left: {to: frame, fasteners: [{at: [45 mm, 420 mm], use: M6 bolt}, {at: [20 mm, 420 mm], use: M6 bolt}]}
        right: same_as_left
    - {name: upper rail, copy_of: lower rail, from: [10 mm, 740 mm]}
gauges:
  - {name: above left bracket, at: [150 mm, 800 mm], relative_to: frame}
analysis: {skin: automatic}
)yaml";

const std::vector<std::string_view> offers_on_door{
    "door.check_strap: {lever: 90 mm, height: 750 mm, holds: 110 N·m, strength: 6 kN, stop_strength: 10 kN}",
    "door.end_stop: {lever: 120 mm, height: 900 mm, strength: 4 kN}",
    "door.open: {slope: 12 %, wind: 14 m/s, edge_speed: 0.6 m/s, stop: 60 ms}",
    "item.person: {at: [352 mm, 1240 mm, 300 mm]}",
    "item.air_speed: 130 km/h",
    "item.snow: 10 kg",
    "item.water: 4 kg",
    "item.natural_frequency: 14 Hz",
    "door.hinges.sag_test: {mass: 20 kg, at: [20 mm, 760 mm], sag: 0.6 mm}",
    "item.tether: {tied_to: body, slack: 40 mm, length: 600 mm, stretch: 12 %, strength: 20 kN, anchor_strength: 12 kN, source: tag of the strap}",
    "vehicle: {payload_left: 310 kg, rear_axle_plate: 1750 kg, rear_axle_weighed: 1500 kg, front_axle_least: 900 kg, front_axle_weighed: 1300 kg, source: plate and weighbridge}",
};

constexpr std::string_view bare_panel = R"yaml(format: 1
job: {title: Pull on a plain panel of the field-survey van, number: FS-0100, vehicle: "survey van, high roof"}
rules: allowable_strength
panel:
  kind: wall
  faces: left
  width: 700 mm
  height: 900 mm
  skin: {material: DC04, thickness: 0.8 mm, coating: 0 mm}
  edges: {left: held, right: held, bottom: held, top: held}
  edges_in_plane: fixed
forces:
  - {at: [350 mm, 450 mm], force: [0 N, 0 N, 5 N], spread_over: [24 mm, 24 mm]}
gauges:
  - {name: middle, at: [350 mm, 450 mm], relative_to: frame}
analysis: {skin: automatic}
)yaml";

} // namespace

const std::vector<StarterText>& starter_texts()
{
    static const std::vector<StarterText> all = {
        {"condenser-on-door", "an outdoor cooling unit on two brackets on a rear door, angles behind the skin tied to the frame", condenser_on_door, offers_on_door},
        {"bare-panel", "a plain skin with a force on it and a point whose movement is wanted", bare_panel},
    };
    return all;
}

} // namespace thinskin::casefile
