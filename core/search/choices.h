#pragma once
#include "model/case.h"

#include <string>
#include <vector>

/// `thinskin propose`: which reinforcement, which fasteners. A scheme is a set of plain choices; it becomes an edit on the case, and
/// what it is worth comes from pipeline::analyse() like that of every other case. No mechanics of its own.
namespace thinskin::search {

enum class Behind { nothing, plates, one_angle, two_angles };

/// A bolt with a washer of the catalogue under head and nut; or a screw, rivet or insert as a fastener kind of the case has it: `own` is
/// its name, size and grade are as written there, washer is what it needs room for.
struct Bolt { std::string size, grade, series; double d = 0, washer = 0, washer_t = 0; std::string own = {}; };

/// Fasteners of each angle end on the frame; none: the angle floats on the skin.
struct EndFixing { int bolts = 0; std::string size; };

/// What a fitter decides. Lengths in mm. Everything but `bolt` and the size of the end bolts is the structure.
struct Choices {
    Behind behind = Behind::nothing;
    std::string section;        ///< of the angles
    double plate = 0;           ///< thickness of the plates
    EndFixing ends;
    bool straps = false;        ///< from the arm of each bracket up to the frame
    int per_row = 1;            ///< bolts of a bracket side by side
    std::string leg;            ///< section of the brackets' legs; empty: as in the case
    double down = 0, up = 0, apart = 0; ///< lower end down, upper end up, brackets apart, each
    double room = 24;           ///< diameter of the largest washer that the bolt lines leave room for beside the heel
    Bolt bolt;
};

/// Two schemes with the same words are sisters: they differ in bolts alone, those through the skin and those of the angles' ends.
[[nodiscard]] std::string structure_words(const Choices& k);
/// Two schemes with the same words are twins: sisters that differ in the grade of the bolts through the skin alone. Geometry, masses and stiffness do not
/// know the grade, so that every force is the same to the last bit.
[[nodiscard]] std::string twin_words(const Choices& k);
/// Two schemes with the same words are cousins: the same kind of parts at the same places, of other sections, end bolts and bolts.
[[nodiscard]] std::string kind_words(const Choices& k);
/// "two angles 40x40x4, ends 2 x M6 on the frame; 1 x M8 8.8 a row, washers 24x2; ..." for a person.
[[nodiscard]] std::string words(const Choices& k);
[[nodiscard]] std::string bolt_words(const Bolt& b);

/// From the heel to the bolt line, so that washers of `room` clear the root fillet; whole mm.                     [SE-1]
///   g = t + r + room/2 (+ half the distance of two bolts side by side)
/// r: root fillet of the catalogue, the wall where the section is not in it.
[[nodiscard]] double gauge_for(const std::string& section, double room, double side_by_side);
/// Of two bolts side by side: what the largest usual bolt of that room asks for, 3 d, or the washer.
[[nodiscard]] double row_spacing(double room);

} // namespace thinskin::search
