#pragma once
#include <string>

namespace thinskin::tests {

/// A case in which every key of the schema stands, in any of its shapes. It makes no sense as a job; it has to read.
inline const std::string full_case = R"yaml(
format: 1
job: {title: "Every key: once", number: "7", vehicle: van, prepared_by: A. Fitter, notes: "two\nlines # and no comment"}
rules: partial_factors
catalogue:
  materials: [{name: mill sheet, kind: steel, product: plate, from: 0.7 mm, to: 1.5 mm, yield: 210 MPa, tensile: 330 MPa, source: mill certificate, label: read}]
  bolt_grades: [{name: B 500, yield: 400 MPa, tensile: 500 MPa, source: stamped, label: memory}]
  screws: [{name: wide head, diameter: 5 mm, head: 12 mm, source: calliper, label: read}]
  rivets: [{name: big rivet, diameter: 7 mm, head: 14 mm, shear: 5 kN, tension: 6 kN, source: sheet of the maker, label: read}]
  roads: [{name: well loop, down: 3.4 g, up: 1.3 g, lateral: 0.8 g, fore_aft: 1 g, source: crew, label: judgement}]
  base_pulses: [{name: kerb, shape: half-sine, peak: 8 g, duration: 30 ms, source: crew, label: practice}]
road: {surface: track, basis: random_vibration, distance_per_year: 9000 km, life_distance: 120000 km, speed: 60 km/h, load: laden, wheelbase: 3.3 m, overhang: 1 m, damping: 4 %,
 density: [{at: 5 Hz, value: 0.2 m2/s3}, {at: 30 Hz, value: 0.1 m2/s3}, {at: 90 Hz, value: 0.001 g2/Hz}]}
vehicle: {payload_left: 310 kg, rear_axle_plate: 1750 kg, rear_axle_weighed: 1500 kg, front_axle_least: 900 kg, front_axle_weighed: 1300 kg, source: weighbridge}
panel:
  kind: door
  faces: front
  width: 740 mm
  width_from: drawing
  height: 59-27/32 in
  skin: {material: DC04, thickness: 22 ga, thickness_from: offcut, coating: 0.02 mm, coating_from: assumed, crown: 1 mm}
  edges: {left: held, right: {rotational_stiffness: 120 N·m/rad per m}, bottom: free, top: hinged}
  edges_in_plane: movable
  frame:
    left: {width: 70 mm, depth: 32 mm, depth_from: hole_lip, inner: {material: DC04, thickness: 0.7 mm, coating: 0.03 mm}, section: box 60x25x0.7, seen: tapped}
    bottom: {width: 60 mm, depth: 30 mm}
  cavity: {depth: 45 mm, inner_panel: plywood}
  ribs:
    - {name: upright, from: [100 mm, 0 mm], to: [100 mm, 1520 mm], section: hat 40x25x1.0, material: DC04, lying: left, seen: seen,
       ends: {bottom: {to: none}, top: {to: frame, rotational_stiffness: 500 N*m/rad, fasteners: [{name: T1, at: [100 mm, 1500 mm], use: M6}]}}}
    - {name: bare, from: [10 mm, 10 mm], from_from: drawing, to: [90 mm, 20 mm], section: flat 20x2, material: DC04, ends: {left: {to: frame, turning: fixed}, right: {to: none}}}
  openings:
    - {name: window, box: {from: [200 mm, 1100 mm], size: [300 mm, 250 mm]}, edge: {section: flat 20x2, material: DC04}}
    - {name: hatch, box: {from: [250 mm, 200 mm], size: [120 mm, 120 mm]}, corner_radius: 20 mm}
door:
  mass: 27 kg
  centre_of_mass: [370 mm, 760 mm, -20 mm]
  centre_of_mass_from: scales
  hinges:
    side: left
    heights: [210 mm, 700 mm, 1290 mm]
    pin: {x: -12 mm, z: -30 mm}
    evidence: {kind: proof_hang, mass: 50 kg, at: [370 mm, 900 mm, 220 mm], state: open, note: "yard, May"}
    sag_test: {mass: 20 kg, at: [700 mm, 760 mm], sag: 0.4 mm}
  latches: [{at: [740 mm, 580 mm], strength: 8 kN, source: sheet of the maker}]
  rest: {at: [700 mm, 0 mm], gap: 1 mm, stiffness: 300 N/mm}
  opening_angle: 180 deg
  slam: {edge_speed: 1.2 m/s, stop: 20 ms}
  check_strap: {lever: 90 mm, lever_from: drawing, height: 750 mm, holds: 110 N*m, strength: 6 kN, stop_strength: 10 kN}
  end_stop: {lever: 120 mm, height: 900 mm, strength: 4 kN}
  open: {angles: [0 deg, 90 deg], slope: 12 %, wind: 14 m/s, edge_speed: 0.6 m/s, stop: 60 ms}
item:
  name: unit
  mass: 80 lb
  mass_tolerance: 3 %
  snow: 6 kg
  water: 2 kg
  centre_of_mass: [352 mm, 965 mm, 205 mm]
  box: {from: [27 mm, 700 mm, 60 mm], size: [690 mm, 540 mm, 290 mm]}
  running_frequency: [48 Hz, 2880 rpm]
  running_acceleration: 0.3 g
  running_time_per_year: 800 h
  natural_frequency: 17.5 Hz
  fixings: [{name: front foot, at: [350 mm, 300 mm], use: M6, foot: 60x60x4 mm}]
  loads: [{name: gust, force: [0 N, 0 N, 200 N], at: [350 mm, 900 mm, 350 mm], both_ways: yes, wind: 15 m/s}]
  person: {at: [350 mm, 1000 mm, 400 mm], mass: 120 kg, allowed: never}
  air_speed: 130 km/h
  tether: {tied_to: body, slack: 40 mm, length: 600 mm, stretch: 12 %, strength: 20 kN, anchor_strength: 12 kN, source: tag of the strap}
brackets:
  - name: left
    x: 150 mm
    leg: {from: 400 mm, to: 760 mm, section: angle 40x40x4, material: S235, lying: left, gauge: 25 mm}
    arm: {at: 700 mm, length: 400 mm, section: angle 40x40x4, material: S235}
    brace: {from: 430 mm, to_arm: 270 mm, section: angle 25x25x3, material: S235}
    joints: {arm_leg: {weld: 3 mm}, brace_leg: {bolt: M8}, brace_arm: {weld: 1/8 in}}
    mounts: [{at: 90 mm, use: M8, kind: rubber, stiffness: 80 N/mm}]
    fasteners: [{name: L1, at: [150 mm, 420 mm], use: M8}]
  - {name: right, mirror_of: left, x: 554 mm, rename: {L1: R1}}
  - {name: third, copy_of: left, x: 300 mm, x_from: drawing, rename: {L1: C1}}
fastener_kinds:
  M8: {type: bolt, size: M8, grade: "8.8", head: inside, head_washer: 24x2 mm, nut_washer: 15/16x5/64 in, hole: 9 mm, countersink: 4 mm, fit: fitted, sleeve: yes}
  M6: {type: insert, size: M6, head_diameter: 11 mm, flange: 13 mm, shear_strength: 3 kN, tension_strength: 10 kN, sheet_strength: 2 kN, strength_source: maker}
reinforcement:
  angles:
    - {name: rail, from: [10 mm, 420 mm], to: [730 mm, 420 mm], gauge: 25 mm, section: angle 40x40x4, material: S235, face: outside, lying: down, seen: tapped,
       ends: {left: same_as_right, right: {to: frame, gap: 3 mm, fasteners: [{at: [700 mm, 420 mm], use: M6}]}}}
    - {name: upper rail, copy_of: rail, from: [10 mm, 740 mm]}
  backing_plates:
    - {name: plate, box: {from: [10 mm, 10 mm], size: [80 mm, 80 mm]}, thickness: 14 ga, material: S235, face: outside, fasteners: [{name: P1, at: [50 mm, 50 mm], use: M6}]}
  straps:
    - {name: strap, from: [10 mm, 10 mm, 0 mm], to: [10 mm, 90 mm, 300 mm], section: flat 30x3, material: S235, slack: 1 mm, ends: {bottom: {to: frame}, top: {to: none}}}
    - {name: loose strap, from: [10 mm, 10 mm, 0 mm], to: [90 mm, 10 mm, 300 mm], section: flat 30x3, material: S235}
  boards:
    - {name: board, box: {from: [10 mm, 10 mm], size: [80 mm, 80 mm]}, thickness: 9 mm, wood: birch plywood, face: outside, fasteners: [{name: B1, at: [60 mm, 60 mm], use: M6}]}
no_drill: [{circle: {at: [0 mm, 580 mm], radius: 100 mm}, why: latch}]
forces: [{at: [350 mm, 450 mm], force: [1 N, -2 lbf, 0.005 kN], spread_over: [24 mm, 24 mm], when: parked}]
pressures: [{over: panel, value: -120 Pa, when: parked}]
masses: [{at: [1 mm, 1 mm], mass: 0.5 kg}]
gauges: [{name: middle, at: [350 mm, 450 mm], relative_to: body}]
analysis: {skin: linear, grid: quick}
propose: {margin: 10 %, added_mass: 6 kg, holes: 8, stock: [angle 40x40x4, M8], stock_only: yes, not_use: [floating], leg_down: 100 mm, leg_up: 80 mm, sideways: 40 mm,
 keep_out: [{box: {from: [10 mm, 10 mm], size: [80 mm, 80 mm]}, why: lamp}]}
)yaml";

/// The full case on another road: what the three ways to the dynamic factor rule out in each other.
inline std::string full_case_on(const std::string& road)
{
    const std::size_t from = full_case.find("road: {"), to = full_case.find("panel:");
    return full_case.substr(0, from) + "road: {surface: track, " + road + "}\n" + full_case.substr(to);
}

} // namespace thinskin::tests
