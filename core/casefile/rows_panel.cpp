#include "casefile/row_maker.h"

namespace thinskin::casefile {

using base::Dimension;

std::vector<Row> job_rows()
{
    return {
        of(Type::integer, "format", "Number of the file format.").required().from(1).to(1),
        block("job", "What the record is filed under."),
        text("job.title", "The job in one line.").required(),
        text("job.number", "Job number."),
        text("job.vehicle", "Vehicle, in the words of the shop."),
        text("job.prepared_by", "Who measured and typed."),
        text("job.notes", "Anything else for the file."),
        word("rules", {"allowable_strength", "partial_factors"}, "Rule set of all strength checks; never mixed.")
            .fallback("allowable_strength"),
    };
}

std::vector<Row> road_rows()
{
    return {
        block("road", "What the vehicle drives on. Needed as soon as an item or brackets are given."),
        text("road.surface", "Row of the road catalogue: sealed, unsealed, track, or one under catalogue.roads.").required(),
        word("road.basis", {"quasi_static", "base_pulse", "random_vibration"}, "How the dynamic factor is found: one way, never two, as each holds the whole dynamics already.")
            .fallback("quasi_static"),
        length("road.distance_per_year", "Kilometres a year, for the repeated load and the re-check plan.").above(0),
        length("road.life_distance", "Kilometres the job has to last, for its life under repeated stress (basis random_vibration). Not given: ten years of distance_per_year.").above(0),
        text("road.pulse", "Basis base_pulse: row of the catalogue's base pulses."),
        word("road.roughness", {"A", "B", "C", "D", "E"}, "Basis random_vibration: class of the road after ISO 8608; C is an ordinary or worn road, D a poor one."),
        blocks("road.density", "Basis random_vibration, instead of a class: measured density of the vertical acceleration where the item hangs."),
        quantity("road.density[].at", Dimension::frequency, "Frequency; they grow from point to point, lines are straight in log-log.").required().above(0),
        quantity("road.density[].value", Dimension::acceleration_density, "One-sided density there.").required().above(0),
        quantity("road.speed", Dimension::speed, "Basis random_vibration: mean speed on that road.").above(0),
        word("road.load", {"unladen", "laden"}, "Basis random_vibration: the empty van shakes more.").fallback("unladen"),
        length("road.wheelbase", "For the overhang.").above(0),
        length("road.overhang", "From the rear axle back to the item.").from(0),
        quantity("road.damping", Dimension::ratio, "Damping ratio of the hung item. Not given: 5 %, which nobody measured.").above(0).to(0.3),
        block("vehicle", "Plated and weighed masses. What is not given is not checked, and said so."),
        quantity("vehicle.payload_left", Dimension::mass, "What may still be added: plated total mass less the vehicle as it drives, weighed with crew, tools and load, before this job.").from(0),
        quantity("vehicle.rear_axle_plate", Dimension::mass, "Plated mass of the rear axle; with road.wheelbase and road.overhang.").above(0),
        quantity("vehicle.rear_axle_weighed", Dimension::mass, "Mass on the rear axle as it drives, weighed before this job.").above(0),
        quantity("vehicle.front_axle_least", Dimension::mass, "Least mass the steering axle has to keep, by the vehicle's papers or the local code; what hangs behind the rear axle relieves it.").above(0),
        quantity("vehicle.front_axle_weighed", Dimension::mass, "Mass on the front axle as it drives, weighed before this job.").above(0),
        text("vehicle.source", "Whose figures these are: plate, weighbridge ticket."),
    };
}

std::vector<Row> panel_rows()
{
    const std::string hem = "a hem is neither free nor rigid; nobody measured it";
    return {
        block("panel", "The door or wall that carries.").required(),
        word("panel.kind", {"door", "wall", "sliding_door", "top_hinged_door"},
             "What the panel is. The sliding and the top-hinged door are read and not covered.").required(),
        word("panel.faces", {"rear", "front", "left", "right"}, "Side of the vehicle the panel looks to.").required(),
        length("panel.width", "Skin between its left and right edge.").required().above(0),
        length("panel.height", "Skin between its bottom and top edge.").required().above(0),
        block("panel.skin", "The outer sheet.").required(),
        text("panel.skin.material", "Grade, a row of the material catalogue.").required(),
        of(Type::sheet_thickness, "panel.skin.thickness", "Thickness with its zinc, without paint.").required().above(0).spread("-10 % .. +10 %"),
        length("panel.skin.coating", "Zinc of both sides together, taken off the thickness for strength; 0 mm on aluminium.").from(0)
            .assumed("0.04 mm", "the zinc was not measured; a 275 g/m2 coat is about 0.04 mm; on aluminium there is none: write 0 mm").spread("0 mm .. 0.06 mm"),
        length("panel.skin.crown", "How far the middle of the skin stands out of its edges; snap-through is not covered.").from(0).fallback("0 mm"),
        block("panel.edges", "How each edge of the skin is held against turning."),
        of(Type::word_or_block, "panel.edges.left", "Left edge.").words({"held", "hinged", "free"}).shared("<edge>").assumed("held", hem).spread("hinged .. held"),
        of(Type::word_or_block, "panel.edges.right", "Right edge.").words({"held", "hinged", "free"}).shared("<edge>").assumed("held", hem).spread("hinged .. held"),
        of(Type::word_or_block, "panel.edges.bottom", "Lower edge.").words({"held", "hinged", "free"}).shared("<edge>").assumed("held", hem).spread("hinged .. held"),
        of(Type::word_or_block, "panel.edges.top", "Upper edge.").words({"held", "hinged", "free"}).shared("<edge>").assumed("held", hem).spread("hinged .. held"),
        word("panel.edges_in_plane", {"fixed", "movable"}, "Whether an edge can move in the plane of the skin, across itself.")
            .assumed("fixed", "how far the hem gives in the plane of the skin was not measured").spread("movable .. fixed"),
        of(Type::block_or_edges, "panel.frame", "What stands round the skin: once for all edges, or under left, right, bottom, top.").shared("<frame>"),
        block("panel.cavity", "The space behind the skin."),
        length("panel.cavity.depth", "From the inner face of the skin to the inner panel.").required().from(0),
        text("panel.cavity.inner_panel", "What closes the cavity, in words.").fallback("none"),
        blocks("panel.ribs", "Members that were behind the skin before the job."),
        text("panel.ribs[].name", "Name in all tables.").required(),
        of(Type::point2, "panel.ribs[].from", "One end of its line.").required(),
        of(Type::point2, "panel.ribs[].to", "Other end of its line.").required(),
        of(Type::section, "panel.ribs[].section", "Section, such as hat 40x25x1.0 or channel 40x20x2 (its web on the skin); flat 20x2 stands on its edge unless lying is given.").required(),
        text("panel.ribs[].material", "Grade, a row of the material catalogue.").required(),
        word("panel.ribs[].lying", {"left", "right", "up", "down"}, "Which way the leg on the skin points from its heel."),
        word("panel.ribs[].seen", {"seen", "tapped", "assumed"}, "How it is known to be there.")
            .assumed("assumed", "nobody says that the rib was seen or tapped"),
        block("panel.ribs[].ends", "What holds its ends.").shared("<ends>")
            .assumed("{to: none}", "no end fixing is given: the rib stops where it is drawn"),
        blocks("panel.openings", "Windows and access holes that the skin has: rectangles without sheet."),
        text("panel.openings[].name", "Name in all tables.").required(),
        block("panel.openings[].box", "Outline of the cut-out.").required().shared("<box2>"),
        length("panel.openings[].corner_radius", "Radius of its corners. Not given: the stress there is not covered.").above(0),
        block("panel.openings[].edge", "Section joined to the skin all round the cut-out. Not given: the edge is free."),
        of(Type::section, "panel.openings[].edge.section", "Section, such as flat 20x2, which stands on its edge.").required(),
        text("panel.openings[].edge.material", "Grade, a row of the material catalogue.").required(),
    };
}

std::vector<Row> door_rows()
{
    return {
        block("door", "The leaf, its hinges and latches. Needed for panel.kind: door, not allowed for a wall."),
        quantity("door.mass", Dimension::mass, "Leaf without the item.").required().above(0).spread("-10 % .. +10 %"),
        of(Type::point3, "door.centre_of_mass", "Of the leaf without the item.").required(),
        block("door.hinges", "Not given: the door group is not covered."),
        word("door.hinges.side", {"left", "right"}, "Side of the hinges, seen from outside.").required(),
        of(Type::quantities, "door.hinges.heights", "Heights of the hinges, two or more.").required(),
        block("door.hinges.pin", "The hinge line.").required(),
        length("door.hinges.pin.x", "Where the pin stands across the panel.").required(),
        length("door.hinges.pin.z", "Where the pin stands in depth; behind the skin is negative.").required(),
        block("door.hinges.evidence", "What is known of the strength of the hinges.")
            .assumed("{kind: none}", "nobody gave a strength of the hinges: they are not covered"),
        word("door.hinges.evidence.kind", {"none", "maker_limit", "proof_hang", "regulation", "us_regulation"}, "Where the strength comes from; regulation: this door is shown to be approved to UN Regulation 11; us_regulation: to 49 CFR 571.206, which tries no hinge of a side-hinged back door along its pin.").required(),
        quantity("door.hinges.evidence.mass", Dimension::mass, "Mass of the limit or of the hang.").above(0),
        of(Type::point3, "door.hinges.evidence.at", "Where that mass sits."),
        word("door.hinges.evidence.state", {"closed", "open"}, "State of the door in the proof hang."),
        text("door.hinges.evidence.note", "Document, page, date."),
        block("door.hinges.sag_test", "How far the leaf went down under a known mass: the give of hinges and sheet, which is in no document. Not given: sag is not run."),
        quantity("door.hinges.sag_test.mass", Dimension::mass, "Mass hung on the open leaf, best at its free edge.").required().above(0),
        of(Type::point2, "door.hinges.sag_test.at", "Where it hung and where the drop was read.").required(),
        length("door.hinges.sag_test.sag", "Drop read there.").required().above(0),
        blocks("door.latches", "Where the closed door is caught."),
        of(Type::point2, "door.latches[].at", "Place of the latch.").required(),
        quantity("door.latches[].strength", Dimension::force, "Pull out of the door that the latch with its striker bears, maker's or tested; half of it counts. Not given: its pull is only put beside the regulation's level.").above(0),
        text("door.latches[].source", "Whose figure that is."),
        of(Type::word_or_block, "door.rest", "What the closed door sits on.").words({"none"}).shared("<rest>")
            .assumed("none", "nobody says that the closed door sits on anything: the hinges carry all of it"),
        quantity("door.opening_angle", Dimension::angle, "How far the door opens.").above(0).below(6.2831),
        block("door.slam", "A door thrown shut. Not given: the slam is not covered."),
        quantity("door.slam.edge_speed", Dimension::speed, "Speed of the free edge when it meets the stop.").required().above(0),
        quantity("door.slam.stop", Dimension::time, "Time from touch to standstill: softer buffers take longer.").required().above(0),
        block("door.check_strap", "What holds and stops the open door. Not given: what turns the open door is not covered."),
        length("door.check_strap.lever", "Distance of the strap's line from the hinge line, square to it.").required().above(0),
        length("door.check_strap.height", "Height of the strap on the leaf.").required(),
        quantity("door.check_strap.holds", Dimension::moment, "Torque at which the held door begins to swing, as measured: spring balance at the free edge times its distance from the hinge line.").above(0),
        quantity("door.check_strap.strength", Dimension::force, "What the strap with its fixings bears; half of it counts.").above(0),
        quantity("door.check_strap.stop_strength", Dimension::force, "What its end stop bears when the door runs into it; half of it counts.").above(0),
        block("door.end_stop", "A stop of the open door on the body, apart from the check strap. Not given: the strap stops it."),
        length("door.end_stop.lever", "Distance of the stop from the hinge line, square to its push.").required().above(0),
        length("door.end_stop.height", "Height of the stop on the leaf.").required(),
        quantity("door.end_stop.strength", Dimension::force, "What it bears when the door runs into it; half of it counts.").above(0),
        block("door.open", "What the open door has to stand. Each part that is given is required; each that is not given is not run."),
        of(Type::quantities, "door.open.angles", "Angles to show the forces on the pillar at. Not given: every 90 degrees up to opening_angle, and there.").dimension(Dimension::angle).from(0).below(6.2831),
        quantity("door.open.slope", Dimension::ratio, "Slope of the ground, rise over run; taken in the worst direction.").above(0).to(0.6),
        quantity("door.open.wind", Dimension::speed, "Wind with its gusts, square to the open leaf, from both sides.").above(0).to(80000),
        quantity("door.open.edge_speed", Dimension::speed, "Speed of the free edge when the door, flung open, runs into its stop.").above(0).to(5000),
        quantity("door.open.stop", Dimension::time, "Time from touching the stop to standstill.").from(0.001).to(0.5),
    };
}

} // namespace thinskin::casefile
