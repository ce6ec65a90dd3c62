// Notation: d fastener diameter, d_hole diameter of the insert's hole, mm. The values are requirements (mm), so the factor is 1.
#include "strength/spacing.h"
#include "strength/screw_symbols.h"

namespace thinskin::strength {

namespace {

base::Resistance screw_edge_distance_formula(const ScrewEdgeDistance& in) { return base::covered(1.5 * in.d_mm, 1); }
base::Resistance screw_spacing_formula(const ScrewSpacing& in) { return base::covered(3 * in.d_mm, 1); }
base::Resistance rivet_edge_distance_formula(const RivetEdgeDistance& in) { return base::covered(2 * in.d_mm, 1); }
base::Resistance rivet_spacing_formula(const RivetSpacing& in) { return base::covered(3 * in.d_mm, 1); }
base::Resistance insert_edge_distance_formula(const InsertEdgeDistance& in) { return base::covered(2 * in.d_hole_mm, 1); }
base::Resistance insert_spacing_formula(const InsertSpacing& in) { return base::covered(3 * in.d_hole_mm, 1); }

base::Symbol rivet_diameter() { return {.name = "d", .unit = "mm", .meaning = "rivet diameter", .lower = 2.6, .upper = 6.4}; }
base::Symbol insert_hole() { return {.name = "d_hole", .unit = "mm", .meaning = "diameter of the insert's hole in the sheet", .lower = 4, .upper = 25}; }

base::Card requirement(const char* id, const char* title, const char* formula)
{
    base::Card card;
    card.id = id;
    card.title = title;
    card.formula = formula;
    card.unit = "mm";
    card.rule = "allowable_strength";
    return card;
}

base::Card screw(base::Card card, const char* clause, const char* not_for)
{
    card.source = clause;
    card.edition = "2016";
    card.label = base::Label::published_read;
    card.range = "screws in sheet; the figure was read in makers' notes to the clause and in a copy of the clause made by others";
    card.not_for = not_for;
    return card;
}

base::Card rivet(base::Card card, const char* not_for)
{
    card.source = "US Army TM 10-5410-229-13&P, 5-6, rivet replacement";
    card.edition = "-";
    card.label = base::Label::judgement;
    card.range = "blind rivets of 2.6 to 6.4 mm in sheet; the figure was read there and in a course of the sheet metal trade for rivets with an upset shank: for blind ones it is taken over";
    card.not_for = not_for;
    return card;
}

base::Card insert(base::Card card, const char* not_for)
{
    card.source = "engineering judgement, no source";
    card.edition = "-";
    card.label = base::Label::judgement;
    card.range = "threaded inserts in sheet where the maker says nothing; his figure goes first";
    card.not_for = not_for;
    return card;
}

} // namespace

template <> const Clause<ScrewEdgeDistance>& clause<ScrewEdgeDistance>()
{
    static const Clause<ScrewEdgeDistance> c{screw(requirement("ED-2", "Least edge distance of a screw", "e_min = 1.5 d, from the screw's centre"),
                                                   "AISI S100-16 J4.2", "strength: tear-out is a check of its own (TO-2)"),
                                             {{&ScrewEdgeDistance::d_mm, symbols::screw_diameter()}},
                                             &screw_edge_distance_formula};
    return c;
}

template <> const Clause<ScrewSpacing>& clause<ScrewSpacing>()
{
    static const Clause<ScrewSpacing> c{screw(requirement("SP-2", "Least spacing of screws", "s_min = 3 d, between centres"), "AISI S100-16 J4.1",
                                              "strength: each screw is a check of its own (SC-1)"),
                                        {{&ScrewSpacing::d_mm, symbols::screw_diameter()}},
                                        &screw_spacing_formula};
    return c;
}

template <> const Clause<RivetEdgeDistance>& clause<RivetEdgeDistance>()
{
    static const Clause<RivetEdgeDistance> c{rivet(requirement("ED-3", "Least edge distance of a blind rivet", "e_min = 2 d, from the rivet's centre"),
                                                   "strength: the end distance is also in RV-4"),
                                             {{&RivetEdgeDistance::d_mm, rivet_diameter()}},
                                             &rivet_edge_distance_formula};
    return c;
}

template <> const Clause<RivetSpacing>& clause<RivetSpacing>()
{
    static const Clause<RivetSpacing> c{rivet(requirement("SP-3", "Least spacing of blind rivets", "s_min = 3 d, between centres"),
                                              "strength: each rivet is a check of its own (RV-1 to RV-4)"),
                                        {{&RivetSpacing::d_mm, rivet_diameter()}},
                                        &rivet_spacing_formula};
    return c;
}

template <> const Clause<InsertEdgeDistance>& clause<InsertEdgeDistance>()
{
    static const Clause<InsertEdgeDistance> c{
        insert(requirement("ED-4", "Least edge distance of a threaded insert", "e_min = 2 d_hole, from the hole's centre"), "strength (IN-1, IN-2)"),
        {{&InsertEdgeDistance::d_hole_mm, insert_hole()}},
        &insert_edge_distance_formula};
    return c;
}

template <> const Clause<InsertSpacing>& clause<InsertSpacing>()
{
    static const Clause<InsertSpacing> c{
        insert(requirement("SP-4", "Least spacing of threaded inserts", "s_min = 3 d_hole, between centres"), "strength (IN-1, IN-2)"),
        {{&InsertSpacing::d_hole_mm, insert_hole()}},
        &insert_spacing_formula};
    return c;
}

base::Resistance screw_edge_distance(const ScrewEdgeDistance& in) { return resistance(in); }
base::Resistance screw_spacing(const ScrewSpacing& in) { return resistance(in); }
base::Resistance rivet_edge_distance(const RivetEdgeDistance& in) { return resistance(in); }
base::Resistance rivet_spacing(const RivetSpacing& in) { return resistance(in); }
base::Resistance insert_edge_distance(const InsertEdgeDistance& in) { return resistance(in); }
base::Resistance insert_spacing(const InsertSpacing& in) { return resistance(in); }

const base::Card& screw_edge_distance_card() { return clause<ScrewEdgeDistance>().card(); }
const base::Card& screw_spacing_card() { return clause<ScrewSpacing>().card(); }
const base::Card& rivet_edge_distance_card() { return clause<RivetEdgeDistance>().card(); }
const base::Card& rivet_spacing_card() { return clause<RivetSpacing>().card(); }
const base::Card& insert_edge_distance_card() { return clause<InsertEdgeDistance>().card(); }
const base::Card& insert_spacing_card() { return clause<InsertSpacing>().card(); }

} // namespace thinskin::strength
