#pragma once
#include "layout/layout.h"

namespace thinskin::layout {

/// What the resolving functions share: the case, the layout under construction, the complaints.
struct Resolver {
    const model::Case& source;
    Layout out{};
    std::vector<base::Diagnostic> diagnostics{};

    void error(const base::Location& at, const std::string& path, const std::string& message, const std::string& hint = "");
    void caution(const std::string& sentence) { out.cautions.push_back(sentence); }
    void not_covered(const std::string& group, const std::string& part, const std::string& reason, const std::string& lift_with);

    // Names; a failed look-up leaves an error and returns an empty value.
    [[nodiscard]] catalogue::Material material(const std::string& name, const base::Location& at, const std::string& path);
    /// Remembers that a row of the case's own was used.
    void took(const char* table, const model::OwnRow& row);
    [[nodiscard]] catalogue::Section section(const std::string& text, const base::Location& at, const std::string& path);
    [[nodiscard]] Sheet sheet(const model::Sheet& s, const std::string& path);
    [[nodiscard]] Hardware hardware(const std::string& use, const base::Location& at, const std::string& path);
};

void resolve_panel(Resolver& r);       ///< skin, edges, frames, ribs, openings
void resolve_openings(Resolver& r);    ///< after the ribs: a stiffened edge adds its own
void resolve_angles(Resolver& r);      ///< copies shifted, ends mirrored, end stacks
void resolve_plates(Resolver& r);      ///< after the angles, before the brackets: stacks go through them
void resolve_brackets(Resolver& r);    ///< copies and mirrors expanded, stacks through everything at the point
void resolve_ribs(Resolver& r);        ///< after the frame: their ends may be fixed to it
void resolve_straps(Resolver& r);      ///< after the brackets: their ends hang there
void resolve_item(Resolver& r);
void resolve_feet(Resolver& r);        ///< after the angles: the stacks go through them
void resolve_door(Resolver& r);
void check_own_rows(Resolver& r);      ///< rows of the case's own that cannot be; the road's row
void check_geometry(Resolver& r);      ///< geometry that cannot be
void check_openings(Resolver& r);      ///< nothing stands on, or is screwed into, an opening

/// Fills in the stack's plies, gap and printed line for a hole at `at` through everything that lies there.
[[nodiscard]] Stack bracket_stack(Resolver& r, const Bracket& b, const model::Fastener& f, const std::string& path);
[[nodiscard]] Stack end_stack(Resolver& r, const Angle& a, const MemberEnd& end, const model::EndFastener& f, const std::string& path);
/// End of a rib on the frame; without the rib's own ply when the fastener misses its walls.
[[nodiscard]] Stack rib_end_stack(Resolver& r, const Rib& rib, const MemberEnd& end, const model::EndFastener& f, const std::string& path);
[[nodiscard]] Stack foot_stack(Resolver& r, const model::ItemFixing& f, const Ply& foot, const std::string& path);
/// Own fastener of a plate: through skin and plate, or plate and frame.
[[nodiscard]] PlateFastener plate_stack(Resolver& r, const Plate& p, const model::Fastener& f, const std::string& path);
[[nodiscard]] std::string stack_line(const Stack& s);

/// Copies shifted and mirrors reflected; an empty list with errors when the links are broken.
[[nodiscard]] std::vector<model::Bracket> expanded_brackets(Resolver& r);
[[nodiscard]] std::vector<model::Angle> expanded_angles(Resolver& r);
/// The other end's fasteners reflected about the middle of the member.
void mirror_end(const model::Point2& start, const model::Point2& stop, const model::MemberEnd& from, model::MemberEnd& to);
/// Which side of the panel an end of a member looks to: end 0 = its start, 1 = its end; `along`: from start to end, any length.
[[nodiscard]] std::string side_name(Point along, int end);

/// An angle section on its bolt line; `towards` is the way the lying leg points from the heel.
[[nodiscard]] AngleBar angle_bar(const catalogue::Section& s, const catalogue::Material& m, Point from, Point to, model::Way towards, double gauge);
[[nodiscard]] Point unit(model::Way way);
/// True when the point lies on the lying leg, heel included.
[[nodiscard]] bool on_lying_leg(const AngleBar& bar, Point p);
/// Coordinates of a point along the bar and across it from the heel's outer face.
struct Local { double along, from_heel; };
[[nodiscard]] Local local(const AngleBar& bar, Point p);

} // namespace thinskin::layout
