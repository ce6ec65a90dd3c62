#include "casefile/row_maker.h"

namespace thinskin::casefile {

using base::Dimension;

std::vector<Row> propose_rows()
{
    return {
        block("propose", "What `thinskin propose` may use and where; `check` does not look at it."),
        quantity("propose.margin", Dimension::ratio, "Least margin a scheme must have.").from(0).below(10).fallback("0 %"),
        quantity("propose.added_mass", Dimension::mass, "Most that brackets, angles, plates and straps may weigh together.").above(0),
        of(Type::integer, "propose.holes", "Most holes through the skin.").from(1).to(200),
        of(Type::texts, "propose.stock", "What is on hand: angle 40x40x4, M8, plate 3. It comes first: it is taken as a fifth of the cost."),
        word("propose.stock_only", {"no", "yes"}, "Yes: nothing but what is on hand.").fallback("no"),
        of(Type::texts, "propose.not_use", "What must not be used, in the same words, or as a kind: nothing, plates, angles, one angle, floating, two in a row, straps, screws, rivets, inserts."),
        length("propose.leg_down", "How far the lower end of the brackets may go down, with its fasteners.").from(0).fallback("150 mm"),
        length("propose.leg_up", "How far the upper end of the brackets may go up, with its fasteners.").from(0).fallback("120 mm"),
        length("propose.sideways", "How far the brackets may move apart, each.").from(0).fallback("60 mm"),
        word("propose.on_ribs", {"no", "yes"}, "Yes: every fastener of a bracket must go through a rib; the brackets move to the nearest upright rib within `sideways`.").fallback("no"),
        blocks("propose.keep_out", "Rectangles where nothing may be drilled or laid: window, plate, lamp, seam."),
        block("propose.keep_out[].box", "Outline.").required().shared("<box2>"),
        text("propose.keep_out[].why", "What is there."),
    };
}

} // namespace thinskin::casefile
