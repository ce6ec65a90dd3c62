#include "casefile/row_maker.h"

namespace thinskin::casefile {

using base::Dimension;

namespace {

const std::vector<std::string> labels{"read", "computed", "memory", "practice", "judgement"};

/// One table: its list, the name of a row, its own columns, and what every row has to say about itself.
void add_table(std::vector<Row>& all, const std::string& table, const std::string& help, std::vector<Row> columns)
{
    const std::string row = "catalogue." + table + "[].";
    all.push_back(blocks("catalogue." + table, help));
    all.push_back(text(row + "name", "Name the case calls it by; no row of the program may have it.").required());
    for (Row& c : columns) {
        c.path = row + c.path;
        all.push_back(std::move(c));
    }
    all.push_back(text(row + "source", "Whose figures these are: a certificate, a maker's sheet, a test.").required());
    all.push_back(word(row + "label", labels, "How they are known: read in that source, computed, from memory, common practice, engineering judgement.").required());
}

Row positive(const std::string& key, Dimension d, const std::string& help) { return quantity(key, d, help).required().above(0); }

} // namespace

std::vector<Row> catalogue_rows()
{
    std::vector<Row> all{block("catalogue", "Rows of the case's own, for what the program's catalogue lacks. They are taken as written; the record names each that was used.")};
    all.push_back(text("catalogue.file", "A file of such rows that several cases share: its name, in the folder of the case. It holds the keys below, without `catalogue` above them. Not given: none."));
    add_table(all, "materials", "Sheet, plate and sections, each for a range of thickness.",
              {word("kind", {"steel", "aluminium"}, "Metal, for stiffness and weight.").required(), text("product", "Form it is sold in.").fallback("sheet"),
               positive("from", Dimension::length, "Least thickness of base metal the strengths are for."), positive("to", Dimension::length, "Greatest thickness of base metal the strengths are for."),
               positive("yield", Dimension::stress, "Least yield strength (0.2 % proof), never the greatest that drawing grades are sold by."), positive("tensile", Dimension::stress, "Least tensile strength.")});
    add_table(all, "bolt_grades", "Grades of bolts.",
              {positive("yield", Dimension::stress, "Least yield strength."), positive("tensile", Dimension::stress, "Least tensile strength.")});
    add_table(all, "screws", "Screws in sheet.",
              {positive("diameter", Dimension::length, "Nominal (outer) diameter of the thread."), positive("head", Dimension::length, "Least diameter that bears under the head.")});
    add_table(all, "rivets", "Blind rivets.",
              {positive("diameter", Dimension::length, "Body."), positive("head", Dimension::length, "Least head diameter."), positive("shear", Dimension::force, "Least shear strength, before any factor."),
               positive("tension", Dimension::force, "Least tension strength, before any factor.")});
    add_table(all, "roads", "Roads: peak quasi-static factors on the mass at the mounting place.",
              {quantity("down", Dimension::acceleration, "Downward, weight included.").required().from(1), quantity("up", Dimension::acceleration, "Upward, net of the weight.").required().from(0),
               quantity("lateral", Dimension::acceleration, "To either side.").required().from(0), quantity("fore_aft", Dimension::acceleration, "Forward and rearward.").required().from(0)});
    add_table(all, "base_pulses", "Base pulses.",
              {word("shape", {"half-sine", "sawtooth", "versed sine"}, "Shape over time.").required(), positive("peak", Dimension::acceleration, "Peak."), positive("duration", Dimension::time, "Duration.")});
    return all;
}

} // namespace thinskin::casefile
