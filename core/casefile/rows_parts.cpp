#include "casefile/row_maker.h"

namespace thinskin::casefile {

using base::Dimension;

std::vector<Row> item_rows()
{
    return {
        block("item", "The thing that is hung."),
        text("item.name", "Name in all tables.").required(),
        quantity("item.mass", Dimension::mass, "With its fluids, everything bolted to it, and the snow or water that can lie on it.").required().above(0),
        quantity("item.mass_tolerance", Dimension::ratio, "How far the mass can be off, either way.").from(0).below(1)
            .assumed("5 %", "the mass is from a plate or a scale of unknown class"),
        quantity("item.snow", Dimension::mass, "Snow and ice that can lie on it, beside item.mass; counted at its centre of mass. Wet snow 100 mm deep on a square metre is 30 to 50 kg.").from(0),
        quantity("item.water", Dimension::mass, "Water that can stand on or in it, beside item.mass; counted at its centre of mass. 1 kg a litre.").from(0),
        of(Type::point3, "item.centre_of_mass", "Place of its centre of mass.").required(),
        block("item.box", "Its outline, for interference and wind.").shared("<box3>"),
        of(Type::quantities, "item.running_frequency", "Frequencies it shakes at by itself.").dimension(Dimension::frequency).above(0),
        quantity("item.running_acceleration", Dimension::acceleration, "Amplitude of that shaking, measured on the item where it hangs; the second source of repeated stress.").above(0),
        quantity("item.running_time_per_year", Dimension::time, "How long it runs in a year, 800 h for instance.").above(0),
        quantity("item.natural_frequency", Dimension::frequency, "Lowest frequency at which it swings where it hangs, measured on the vehicle by a knock.").above(0),
        blocks("item.fixings", "Feet straight on the panel, for an item without brackets."),
        text("item.fixings[].name", "Name in all tables. Not given: foot 1, foot 2, ..."),
        of(Type::point2, "item.fixings[].at", "Place of the fastener.").required(),
        of(Type::kind_name, "item.fixings[].use", "Fastener.").required(),
        of(Type::foot, "item.fixings[].foot", "Foot on the skin: width x height x thickness.").required(),
        blocks("item.loads", "Forces on the item that are load cases of their own, with 1 g of weight: wind on what is unfolded, a step."),
        text("item.loads[].name", "Name of the load case.").required(),
        of(Type::point3, "item.loads[].force", "[Fx, Fy, Fz]; z is outward. A person on a ladder or step: 1080 N down (110 kg) on the outermost point.").dimension(Dimension::force).required(),
        of(Type::point3, "item.loads[].at", "Where it acts.").required(),
        word("item.loads[].both_ways", {"no", "yes"}, "Yes: also with its sign turned, as wind has.").fallback("no"),
        quantity("item.loads[].wind", Dimension::speed, "Speed of the wind that the force was worked out for: the wind that may not be exceeded is printed.").above(0),
        block("item.person", "Somebody who steps on it, on a ladder or a rack: a load case of its own, on one foot. Not given: not run."),
        of(Type::point3, "item.person.at", "The outermost place where a foot can stand.").required(),
        quantity("item.person.mass", Dimension::mass, "Person with what is carried up.").above(0).fallback("110 kg"),
        word("item.person.allowed", {"parked", "never"}, "State it is allowed in: parked, the vehicle standing and its door shut and latched; or never, then no load case is run and the output says that nobody may stand on it.").fallback("parked"),
        quantity("item.air_speed", Dimension::speed, "Speed of the air against it on the fastest drive: the vehicle's with the headwind added. The air on its box is a load case then. Not given: not run.").above(0).to(80000),
        block("item.tether", "A strap, chain or rope that catches the item if a fixing lets go. Not given: a caution. What it needs and lacks: not covered."),
        word("item.tether.tied_to", {"frame", "body", "skin", "bracket"}, "What holds its other end: the door's or wall's frame, the body, the skin, or the bracket it is to stand in for; the last two are no second path."),
        length("item.tether.slack", "How far the item falls before it pulls.").from(0).to(2000),
        length("item.tether.length", "Free length between its ends.").above(0),
        quantity("item.tether.stretch", Dimension::ratio, "Part of its length by which it is longer when it breaks.").above(0).to(1),
        quantity("item.tether.stiffness", Dimension::stiffness, "Instead of length and stretch: measured, its ends with it.").above(0),
        quantity("item.tether.strength", Dimension::force, "Breaking strength of the tether with its ends, before any factor.").above(0),
        quantity("item.tether.anchor_strength", Dimension::force, "Of what it is tied to, tested or the maker's, before any factor.").above(0),
        text("item.tether.source", "Whose figures these are."),
    };
}

std::vector<Row> bracket_rows()
{
    const std::string lying = "Which way the leg on the skin points from its heel.";
    return {
        blocks("brackets", "Cantilever brackets. A copy (copy_of, mirror_of) takes all but name, x and rename from the other bracket."),
        text("brackets[].name", "Name in all tables.").required(),
        text("brackets[].copy_of", "Bracket this one repeats, shifted by the difference of the bolt lines."),
        text("brackets[].mirror_of", "Bracket this one repeats, reflected about its bolt line."),
        length("brackets[].x", "Bolt line of the wall leg.").required(),
        of(Type::renames, "brackets[].rename", "In a copy: names of its fasteners, {old: new}."),
        block("brackets[].leg", "The leg on the skin.").required(),
        length("brackets[].leg.from", "Height of its lower end.").required(),
        length("brackets[].leg.to", "Height of its upper end.").required(),
        of(Type::section, "brackets[].leg.section", "Section, such as angle 40x40x4.").required(),
        text("brackets[].leg.material", "Grade, a row of the material catalogue.").required(),
        word("brackets[].leg.lying", {"left", "right"}, lying).required(),
        length("brackets[].leg.gauge", "From the heel to the bolt line.").required().above(0),
        block("brackets[].arm", "The arm the item stands on.").required(),
        length("brackets[].arm.at", "Height of its top face.").required(),
        length("brackets[].arm.length", "From the leg outward.").required().above(0),
        of(Type::section, "brackets[].arm.section", "Section, such as angle 40x40x4.").required(),
        text("brackets[].arm.material", "Grade, a row of the material catalogue.").required(),
        block("brackets[].brace", "The strut below the arm."),
        length("brackets[].brace.from", "Height where it meets the leg.").required(),
        length("brackets[].brace.to_arm", "From the leg outward to where it meets the arm.").required().above(0),
        of(Type::section, "brackets[].brace.section", "Section, such as angle 25x25x3.").required(),
        text("brackets[].brace.material", "Grade, a row of the material catalogue.").required(),
        block("brackets[].joints", "How leg, arm and brace are joined. A joint that is not given is not covered."),
        block("brackets[].joints.arm_leg", "Arm on leg.").shared("<joint>"),
        block("brackets[].joints.brace_leg", "Brace on leg.").shared("<joint>"),
        block("brackets[].joints.brace_arm", "Brace on arm.").shared("<joint>"),
        blocks("brackets[].mounts", "What holds the item on the arm. None: the mounts are not covered."),
        length("brackets[].mounts[].at", "From the leg outward.").required().from(0),
        of(Type::kind_name, "brackets[].mounts[].use", "Fastener.").required(),
        word("brackets[].mounts[].kind", {"rigid", "rubber"}, "Metal on metal, or a rubber mount.").required(),
        quantity("brackets[].mounts[].stiffness", Dimension::stiffness, "Of a rubber mount.").above(0),
        blocks("brackets[].fasteners", "Fasteners of the leg.").required().shared("<fastener>"),
    };
}

std::vector<Row> fastener_rows()
{
    return {
        of(Type::named_blocks, "fastener_kinds", "Each kind of fastener once, under the name the other blocks use."),
        word("fastener_kinds{}.type", {"bolt", "screw", "rivet", "insert", "wood_screw"}, "What it is. Wood screws are not covered yet.").required(),
        text("fastener_kinds{}.size", "Size: M8, 1/4 in (bolts, inserts); 4.8 mm or No. 10 (screws); 4.8 mm (rivets).").required(),
        text("fastener_kinds{}.grade", "Property class, such as 8.8; a bolt needs it. Of a rivet: its material."),
        word("fastener_kinds{}.head", {"outside", "inside"}, "Side of the head.").fallback("outside"),
        of(Type::washer, "fastener_kinds{}.head_washer", "Washer under the head, diameter x thickness."),
        of(Type::washer, "fastener_kinds{}.nut_washer", "Washer under the nut, diameter x thickness."),
        length("fastener_kinds{}.hole", "Diameter of the hole. Not given: the catalogue's clearance hole.").above(0),
        length("fastener_kinds{}.countersink", "Depth of the countersink of a countersunk head. Not given: the head lies on the part.").above(0),
        word("fastener_kinds{}.fit", {"clearance", "fitted"}, "Fitted: the hole leaves no play, so shear is shared.").fallback("clearance"),
        word("fastener_kinds{}.sleeve", {"no", "yes"}, "A spacer sleeve fills each gap in the stack.").fallback("no"),
        length("fastener_kinds{}.head_diameter", "Head of a screw or rivet. Not given: the catalogue's.").above(0),
        length("fastener_kinds{}.flange", "Insert: diameter of what bears on the skin.").above(0),
        quantity("fastener_kinds{}.shear_strength", Dimension::force, "Of the fastener itself, maker's or tested, before any factor.").above(0),
        quantity("fastener_kinds{}.tension_strength", Dimension::force, "Of the fastener itself, maker's or tested, before any factor.").above(0),
        quantity("fastener_kinds{}.sheet_strength", Dimension::force, "Insert: maker's or tested pull in this very sheet, before any factor.").above(0),
        text("fastener_kinds{}.strength_source", "Whose figures these are."),
    };
}

std::vector<Row> reinforcement_rows()
{
    const std::string lying = "Which way the leg on the skin points from its heel.";
    const std::string loose = "no end fixing is given: the member stops where it is drawn";
    return {
        block("reinforcement", "What the job adds on or behind the skin."),
        blocks("reinforcement.angles", "Angles. A copy takes all but name and from from the other angle."),
        text("reinforcement.angles[].name", "Name in all tables.").required(),
        text("reinforcement.angles[].copy_of", "Angle this one repeats, shifted."),
        of(Type::point2, "reinforcement.angles[].from", "One end of the bolt line.").required(),
        of(Type::point2, "reinforcement.angles[].to", "Other end of the bolt line.").required(),
        length("reinforcement.angles[].gauge", "From the heel to the bolt line.").required().above(0),
        of(Type::section, "reinforcement.angles[].section", "Section, such as angle 40x40x4.").required(),
        text("reinforcement.angles[].material", "Grade, a row of the material catalogue.").required(),
        word("reinforcement.angles[].face", {"outside", "inside"}, "Face of the skin it lies on.").fallback("inside"),
        word("reinforcement.angles[].lying", {"left", "right", "up", "down"}, lying).required(),
        word("reinforcement.angles[].seen", {"seen", "tapped", "assumed"}, "How it is known to be there; fitted by the job: seen.").fallback("seen"),
        block("reinforcement.angles[].ends", "What holds its ends.").shared("<ends>").assumed("{to: none}", loose),
        blocks("reinforcement.backing_plates", "Plates behind fasteners."),
        text("reinforcement.backing_plates[].name", "Name in all tables.").required(),
        block("reinforcement.backing_plates[].box", "Outline on the skin.").required().shared("<box2>"),
        of(Type::sheet_thickness, "reinforcement.backing_plates[].thickness", "Thickness.").required().above(0),
        text("reinforcement.backing_plates[].material", "Grade, a row of the material catalogue.").required(),
        word("reinforcement.backing_plates[].face", {"outside", "inside"}, "Face of the skin it lies on.").fallback("inside"),
        blocks("reinforcement.backing_plates[].fasteners", "Fasteners of its own: on the band of a frame member they hold it to the frame, elsewhere they go through skin and plate.").shared("<fastener>"),
        blocks("reinforcement.straps", "Straps; they pull only."),
        text("reinforcement.straps[].name", "Name in all tables.").required(),
        of(Type::point3, "reinforcement.straps[].from", "One end.").required(),
        of(Type::point3, "reinforcement.straps[].to", "Other end.").required(),
        of(Type::section, "reinforcement.straps[].section", "Section, such as flat 30x3.").required(),
        text("reinforcement.straps[].material", "Grade, a row of the material catalogue.").required(),
        length("reinforcement.straps[].slack", "How far it moves before it pulls.").from(0)
            .assumed("0 mm", "nobody measured the slack: the strap is taken as tight"),
        block("reinforcement.straps[].ends", "What holds its ends.").shared("<ends>").assumed("{to: none}", loose),
        blocks("reinforcement.boards", "Boards behind the skin."),
        text("reinforcement.boards[].name", "Name in all tables.").required(),
        block("reinforcement.boards[].box", "Outline on the skin.").required().shared("<box2>"),
        length("reinforcement.boards[].thickness", "Thickness.").required().above(0),
        text("reinforcement.boards[].wood", "Kind of wood, a row of the catalogue.").required(),
        word("reinforcement.boards[].face", {"outside", "inside"}, "Face of the skin it lies on.").fallback("inside"),
        blocks("reinforcement.boards[].fasteners", "Fasteners of its own.").shared("<fastener>"),
    };
}

std::vector<Row> load_rows()
{
    const std::string when = "The one load case it acts in; needed as soon as there is a road. On a panel alone all act together.";
    // The names core/actions gives its load cases: a name that none of them has would leave the load out in silence.
    const std::vector<std::string> cases = {"applied", "parked", "pothole", "rebound", "braking", "accelerating",
                                            "cornering left", "cornering right", "slam inward", "slam outward"};
    return {
        blocks("no_drill", "Where no hole may be. Hinges and latches (150 mm) and belts (300 mm) have a zone without an entry."),
        block("no_drill[].circle", "The zone.").required(),
        of(Type::point2, "no_drill[].circle.at", "Middle.").required(),
        length("no_drill[].circle.radius", "Radius.").required().above(0),
        text("no_drill[].why", "What sits there.").required(),
        blocks("forces", "Forces on the skin besides the item."),
        of(Type::point2, "forces[].at", "Middle of the force.").required(),
        of(Type::point3, "forces[].force", "[Fx, Fy, Fz]; z is outward.").dimension(Dimension::force).required(),
        of(Type::point2, "forces[].spread_over", "Width and height it is spread over. Not given: a point.").above(0),
        word("forces[].when", cases, when),
        blocks("pressures", "Pressures on the skin."),
        word("pressures[].over", {"panel"}, "What it acts on.").required(),
        quantity("pressures[].value", Dimension::stress, "Outward is positive.").required(),
        word("pressures[].when", cases, when),
        blocks("masses", "Small things fixed to the skin."),
        of(Type::point2, "masses[].at", "Place.").required(),
        quantity("masses[].mass", Dimension::mass, "Mass.").required().above(0),
        blocks("gauges", "Points whose movement is reported."),
        text("gauges[].name", "Name in all tables.").required(),
        of(Type::point2, "gauges[].at", "Place.").required(),
        word("gauges[].relative_to", {"frame", "body"}, "What the movement is measured from.").fallback("frame"),
        block("analysis", "How the skin is solved."),
        word("analysis.skin", {"automatic", "linear", "large_deflection"}, "Automatic: large deflection where linear theory does not stand.").fallback("automatic"),
        word("analysis.grid", {"normal", "quick", "fine"}, "Grid of the skin: spacing 30, 45 or 20 mm.").fallback("normal"),
    };
}

std::vector<Row> shared_rows()
{
    return {
        quantity("<edge>.rotational_stiffness", Dimension::rotational_stiffness, "Moment per turn and length of edge.").required().from(0),
        block("<frames>.left", "Along the left edge.").shared("<frame>"),
        block("<frames>.right", "Along the right edge.").shared("<frame>"),
        block("<frames>.bottom", "Along the lower edge.").shared("<frame>"),
        block("<frames>.top", "Along the upper edge.").shared("<frame>"),
        length("<frame>.width", "Width of the frame member in the plane of the skin.").required().above(0),
        length("<frame>.depth", "From the skin to its inner sheet.").required().above(0),
        block("<frame>.inner", "The sheet the end fixings go through. Not given: end fixings are not covered."),
        text("<frame>.inner.material", "Grade, a row of the material catalogue.").required(),
        of(Type::sheet_thickness, "<frame>.inner.thickness", "Thickness with its zinc, without paint, as measured; with a doubler on it, both together.").required().above(0).spread("-10 % .. +10 %"),
        length("<frame>.inner.coating", "Zinc of both sides together, taken off the thickness for strength; 0 mm on aluminium.").from(0)
            .assumed("0.04 mm", "the zinc was not measured; a 275 g/m2 coat is about 0.04 mm; on aluminium there is none: write 0 mm").spread("0 mm .. 0.06 mm"),
        of(Type::section, "<frame>.section", "Section of the vehicle's own frame member, such as box 60x25x0.7: measured, not chosen; thicker only by what is added to it, such as a doubler. Not given: its strength is not covered."),
        word("<frame>.seen", {"seen", "tapped", "assumed"}, "How it is known to be there.")
            .assumed("assumed", "nobody says that the frame was seen or tapped"),
        of(Type::word_or_block, "<ends>.left", "End of a member that lies flatter than 45 deg.").required().words({"same_as_right"}).shared("<end>"),
        of(Type::word_or_block, "<ends>.right", "End of a member that lies flatter than 45 deg.").required().words({"same_as_left"}).shared("<end>"),
        of(Type::word_or_block, "<ends>.bottom", "End of a member that is steeper than 45 deg.").required().words({"same_as_top"}).shared("<end>"),
        of(Type::word_or_block, "<ends>.top", "End of a member that is steeper than 45 deg.").required().words({"same_as_bottom"}).shared("<end>"),
        word("<end>.to", {"none", "frame", "bracket", "item"}, "none: the member stops where it is drawn. frame: its own fasteners hold it there. bracket, item: the end of a strap is fixed to that part.").required(),
        blocks("<end>.fasteners", "Fasteners of this end.").shared("<end_fastener>"),
        quantity("<end>.rotational_stiffness", Dimension::rotational_spring, "Against turning about the panel edge. Not given: free to turn.").from(0),
        word("<end>.turning", {"free", "fixed"}, "Fixed: the end does not turn about the panel edge at all, as against a stiff frame with two fasteners one behind the other.").fallback("free"),
        length("<end>.gap", "Clear distance between the member and what it is fixed to. Not given: they lie on each other, packed or joggled.").above(0),
        text("<end_fastener>.name", "Name in all tables."),
        of(Type::point2, "<end_fastener>.at", "Place of the fastener.").required(),
        of(Type::kind_name, "<end_fastener>.use", "Fastener.").required(),
        text("<fastener>.name", "Name in all tables.").required(),
        of(Type::point2, "<fastener>.at", "Place of the fastener.").required(),
        of(Type::kind_name, "<fastener>.use", "Fastener.").required(),
        length("<joint>.weld", "Leg size of a fillet weld; either this or bolt.").above(0),
        of(Type::kind_name, "<joint>.bolt", "Fastener; either this or weld."),
        of(Type::point2, "<box2>.from", "Lower left corner.").required(),
        of(Type::point2, "<box2>.size", "Width and height.").required().above(0),
        of(Type::point3, "<box3>.from", "Corner with the least x, y and z.").required(),
        of(Type::point3, "<box3>.size", "Width, height, depth.").required().above(0),
        of(Type::point2, "<rest>.at", "Place of the rest.").required(),
        length("<rest>.gap", "Gap under the bare door as it hangs before the job, measured; 0 mm where it just touches. With stiffness and door.hinges.sag_test: what the rest gets is estimated.").from(0),
        quantity("<rest>.stiffness", Dimension::stiffness, "Of the rest, measured: a known mass on it and how far it goes down.").above(0),
    };
}

} // namespace thinskin::casefile
