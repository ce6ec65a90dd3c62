#pragma once
#include "base/location.h"
#include "base/quantity.h"

#include <string>
#include <vector>

/// Rows a case brings along because the program's catalogue lacks them (block `catalogue`); units as in the case file.
namespace thinskin::model {

/// What every row says: its name, whose figures they are, and how they are known.
struct OwnRow {
    std::string name, source;
    std::string label;              ///< read, computed, memory, practice, judgement
    base::Location where;
    bool shared = false;            ///< stands in the file that `catalogue.file` names, not in the case
};

struct OwnMaterial : OwnRow {
    std::string kind, product;      ///< steel, aluminium; "sheet"
    base::Quantity from, to;        ///< base metal thickness the strengths are for, both ends in
    base::Quantity yield, tensile;  ///< least values
};
struct OwnBoltGrade : OwnRow { base::Quantity yield, tensile; };
struct OwnScrew : OwnRow { base::Quantity diameter, head; };
struct OwnRivet : OwnRow { base::Quantity diameter, head, shear, tension; };
struct OwnRoad : OwnRow { base::Quantity down, up, lateral, fore_aft; };    ///< down contains the weight, up is net
struct OwnPulse : OwnRow { std::string shape; base::Quantity peak, duration; };

struct OwnRows {
    std::string file;               ///< a file of such rows beside the case, shared by several cases; empty: none
    std::string file_text;          ///< what stands in it, byte for byte
    std::vector<OwnMaterial> materials;
    std::vector<OwnBoltGrade> bolt_grades;
    std::vector<OwnScrew> screws;
    std::vector<OwnRivet> rivets;
    std::vector<OwnRoad> roads;
    std::vector<OwnPulse> base_pulses;
};

} // namespace thinskin::model
