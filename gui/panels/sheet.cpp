#include "panels/sheet.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <utility>

namespace thinskin::gui {
namespace {

using drawing::Box;

constexpr float margin_px = 14, between_views_px = 26;
constexpr double lbf = 4.4482216152605; // N, exact by definition
constexpr double least_scale = 0.02, largest_scale = 20; // pixels a mm

float room_of(const Box& b, float s) { return static_cast<float>(b.x1 - b.x0) * s; }

/// Of both views, pixels.
ImVec2 used_room(const drawing::Drawing& d, float s, bool below)
{
    const Box e = d.elevation.extent(), side = d.side.extent(), both = drawing::joined(e, side);
    const float gap = between_views_px * look().scale;
    const auto tall = [s](const Box& b) { return static_cast<float>(b.y1 - b.y0) * s; };
    return below ? ImVec2{std::max(room_of(e, s), room_of(side, s)), tall(e) + gap + tall(side)} : ImVec2{room_of(e, s) + gap + room_of(side, s), tall(both)};
}

/// The letters' height in mm at which they have their size in pixels.
double text_height(float scale) { return static_cast<double>(lettering_height_px * look().scale / scale); }

drawing::Options plain_options(float scale)
{
    drawing::Options o;
    o.text_height = text_height(scale);
    o.every_dimension = false;
    return o;
}

/// Both ends of the movement, without one that is nothing beside the other.
std::vector<drawing::Peak> peaks_of(const drawing::Contours& k)
{
    std::vector<drawing::Peak> all;
    const double worth = 0.05 * std::max(k.outward.w_mm, -k.inward.w_mm);
    for (const drawing::Peak& p : {k.outward, k.inward})
        if (std::abs(p.w_mm) > worth) all.push_back(p);
    return all;
}

drawing::Options options_of(const SheetContents& c, const drawing::Contours& k, float scale, Sheet::Notes notes)
{
    drawing::Options o = plain_options(scale);
    if (!c.dimensions && notes != Sheet::Notes::none) o.notes = c.notes; // there is no room for both beside a panel; the list at the right keeps the margins
    for (auto& [part, note] : o.notes) {
        // A margin below zero and the cross before it say so already.
        if (const auto word = note.find(" fail"); !note.empty() && note.front() == '-' && word != std::string::npos) note.erase(word, 5);
        if (const auto open = note.find("n.c."); open != std::string::npos) note.replace(open, 4, open == 0 ? "not covered" : "partly not covered");
        const bool brief = notes == Sheet::Notes::short_ones; // the mark before it says it, too
        if (const auto word = note.find(" partly not covered"); brief && word != std::string::npos) note.erase(word);
        if (brief && note == "not covered") note = "-";
    }
    for (const drawing::Peak& p : peaks_of(k)) o.at_points.push_back({p.at, c.units == UnitSystem::us ? fmt::format("{:+.3f} in", p.w_mm / inch) : fmt::format("{:+.2f} mm", p.w_mm)});
    o.figures = {[u = c.units](double mm) { return drawn_length(mm, u); }, [u = c.units](double n) { return u == UnitSystem::us ? shown_value(std::round(n / lbf) * lbf, base::Dimension::force, u) : drawing::newtons(n); }};
    o.load_case = c.load_case;
    o.every_dimension = c.dimensions;
    o.labels = drawing::Labels::callouts;
    return o;
}

} // namespace

void Sheet::zoom(float factor)
{
    const ImVec2 m{(lo_.x + hi_.x) / 2, (lo_.y + hi_.y) / 2};
    const float before = view_scale_;
    view_scale_ = std::clamp(view_scale_ * factor, static_cast<float>(least_scale), static_cast<float>(largest_scale));
    const float f = view_scale_ / before;
    shift_ = {(shift_.x + lo_.x - m.x) * f + m.x - lo_.x, (shift_.y + lo_.y - m.y) * f + m.y - lo_.y};
    fitted_ = false;
}

void Sheet::draw_anew(const SheetContents& c)
{
    const Key key{c.version, view_scale_, c.load_case, c.contours && c.trouble.empty(), c.dimensions, c.units};
    if (!c.layout) { // another document, and nothing of it yet
        drawing_ = ghost_ = {};
        contours_ = {};
        key_ = {};
        return;
    }
    if (key == key_ || view_scale_ <= 0) return;
    key_ = key;
    contours_anew(c);
    drawing_ = drawing::draw(*c.layout, c.outcome, options_of(c, contours_, view_scale_, notes_));
    ghost_ = c.ghost ? drawing::draw(*c.ghost, nullptr, plain_options(view_scale_)) : drawing::Drawing{};
}

void Sheet::contours_anew(const SheetContents& c)
{
    contours_ = {};
    if (!c.outcome || !c.contours || !c.trouble.empty()) return;
    const std::string wanted = c.load_case.empty() ? c.outcome->load_path_case : c.load_case;
    for (const results::SkinField& f : c.outcome->skin_fields)
        if (f.load_case == wanted || wanted.empty()) {
            contours_ = drawing::contours(f, 10, c.units == UnitSystem::us ? inch : 1);
            break;
        }
}

Sheet::Fit Sheet::fit_of(const SheetContents& c) const
{
    return {hi_.x - lo_.x, hi_.y - lo_.y, look().scale, c.opened, c.layout->width, c.layout->height, c.dimensions, c.units, c.settled};
}

/// Only the user's own doing moves the picture: another file, another room, a press of Home. A part that was added or taken away
/// may make the drawing larger than its room; figures that come, go or are refined may not.
bool Sheet::to_fit(const SheetContents& c)
{
    if (view_scale_ <= 0) return true;
    const Fit now = fit_of(c);
    if (now.opened != fit_.opened) return true;
    if (!fitted_ || drag_ || pressed_) return false;
    if (!(now == fit_)) return true;
    if (c.version == key_.version) return false;
    const drawing::Drawing d = drawing::draw(*c.layout, c.outcome, options_of(c, contours_, view_scale_, notes_));
    if (std::exchange(parts_, d.legend.size()) == d.legend.size()) return false;
    const ImVec2 used = used_room(d, view_scale_, below_);
    return used.x > now.wide || used.y > now.tall;
}

/// The largest scale at which both views fit; letters keep their size, so the extent depends on the scale: a few passes settle it.
void Sheet::fit_into(const SheetContents& c)
{
    const ImVec2 room{hi_.x - lo_.x, hi_.y - lo_.y};
    constexpr float least_room = 40; // less than that for a frame only, while letters or columns change
    if (!c.layout || room.x < least_room || room.y < least_room || !to_fit(c)) return;
    fit_ = fit_of(c);
    contours_anew(c); // their figures are texts, too
    // Letters keep their size, and places for texts come and go, so what is used of the room is no function one could solve: step down until it fits.
    const float start = std::max(static_cast<float>(least_scale), std::min(room.x / static_cast<float>(c.layout->width), room.y / static_cast<float>(c.layout->height)));
    const auto largest = [&](bool below, Notes notes) {
        float s = start;
        for (; s > static_cast<float>(least_scale); s *= 0.97f) {
            const drawing::Drawing d = drawing::draw(*c.layout, c.outcome, options_of(c, contours_, s, notes));
            parts_ = d.legend.size();
            const ImVec2 used = used_room(d, s, below);
            if (used.x <= room.x && used.y <= room.y) break;
        }
        return s;
    };
    // The side view belongs beside the elevation, on one height axis; below it only where a wide panel gains much by that.
    constexpr float worth = 1.3f, least_share = 0.35f;
    const auto best = [&](Notes notes) {
        const float beside = largest(false, notes), below = c.layout->width > 1.5 * c.layout->height ? largest(true, notes) : 0;
        below_ = below > worth * beside;
        return below_ ? below : beside;
    };
    // Words that a mark says as well give way to a larger panel; with large letters in a narrow room all notes do, before the panel shrinks to a stamp.
    constexpr float worth_words = 0.9f;
    const float whole = best(Notes::whole), shorter = best(Notes::short_ones), bare = best(Notes::none);
    notes_ = std::max(whole, shorter) < least_share * bare ? Notes::none : whole < worth_words * shorter ? Notes::short_ones : Notes::whole;
    const float scale = best(notes_); // and whether the side view lies below
    view_scale_ = scale;
    shift_ = {0, 0};
    fitted_ = true;
    placed_ = false;
    key_ = {}; // letters may have another size at the same scale
}

/// Fitted views are put in the middle of the room once, and stay there: texts come and go with the figures, and what somebody is
/// about to click must not move under the pointer.
void Sheet::place_views()
{
    const float gap = between_views_px * look().scale;
    const Box e = drawing_.elevation.extent(), s = drawing_.side.extent(), both = drawing::joined(e, s);
    if (!placed_ || apart_scale_ != view_scale_) {
        apart_ = {static_cast<float>(below_ ? e.x0 - s.x0 : e.x1 - s.x0), below_ ? static_cast<float>(s.y1 - e.y0) : 0};
        apart_scale_ = view_scale_;
    }
    if (!placed_) {
        const ImVec2 used = used_room(drawing_, view_scale_, below_), spare{std::max(0.0f, (hi_.x - lo_.x - used.x) / 2), std::max(0.0f, (hi_.y - lo_.y - used.y) / 2)};
        shift_ = {spare.x - static_cast<float>(e.x0) * view_scale_, spare.y + static_cast<float>(below_ ? e.y1 : both.y1) * view_scale_};
        placed_ = true;
    }
    elevation_ = {{lo_.x + shift_.x, lo_.y + shift_.y}, view_scale_};
    side_ = {{elevation_.origin.x + apart_.x * view_scale_ + (below_ ? 0 : gap), elevation_.origin.y + (below_ ? apart_.y * view_scale_ + gap : 0)}, view_scale_};
}

void Sheet::move_and_zoom(bool hovered)
{
    const ImGuiIO& io = ImGui::GetIO();
    if (!hovered) return;
    if (io.MouseWheel != 0) {
        const float before = view_scale_;
        view_scale_ = std::clamp(view_scale_ * std::pow(1.15f, io.MouseWheel), static_cast<float>(least_scale), static_cast<float>(largest_scale));
        const float f = view_scale_ / before;
        const ImVec2 p{io.MousePos.x - lo_.x, io.MousePos.y - lo_.y};
        shift_ = {p.x - (p.x - shift_.x) * f, p.y - (p.y - shift_.y) * f};
        fitted_ = false;
    }
    const bool hand = ImGui::IsMouseDragging(ImGuiMouseButton_Middle) || ImGui::IsMouseDragging(ImGuiMouseButton_Right)
                      || (!pressed_ && !drag_ && ImGui::IsMouseDragging(ImGuiMouseButton_Left));
    if (!hand) return;
    shift_ = {shift_.x + io.MouseDelta.x, shift_.y + io.MouseDelta.y};
    fitted_ = false;
}

void Sheet::drag(SheetEvents& e, bool hovered)
{
    const ImVec2 p = ImGui::GetIO().MousePos;
    const float reach = 7 * look().scale;
    const std::optional<drawing::Part> in_elevation = part_at(drawing_.elevation, elevation_, p, reach), in_side = in_elevation ? std::nullopt : part_at(drawing_.side, side_, p, reach);
    const GripMark* grip = hovered && !drag_ ? grip_at(p) : nullptr;
    if (grip) e.pointed_grip = grip->label;
    else if (hovered && !drag_) e.pointed = in_elevation ? in_elevation : in_side;
    if (hovered && ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
        pressed_ = grip ? part_of_grips_ : e.pointed;
        pressed_grip_ = grip ? grip->id : "";
        pressed_side_ = grip ? grip->side : !in_elevation && in_side;
        pressed_at_ = p;
        e.chosen = e.pointed;
        e.chosen_nothing = !e.pointed && !grip;
    }
    const Place& place = pressed_side_ ? side_ : elevation_;
    if (pressed_ && !drag_ && ImGui::IsMouseDragging(ImGuiMouseButton_Left, 3)) drag_ = SheetDrag{*pressed_, pressed_side_, place.back(pressed_at_), place.back(p), true, false, pressed_grip_};
    else if (drag_) {
        drag_->began = false;
        drag_->to = place.back(p);
    }
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        if (drag_) drag_->ended = true;
        pressed_.reset();
        pressed_grip_.clear();
    }
    e.drag = drag_;
    if (drag_ && drag_->ended) drag_.reset();
}

std::optional<drawing::Point> Sheet::centre_of(const drawing::Part& part) const
{
    const auto same_part = [&part](const drawing::Part& p) { return p.kind == part.kind && (p.name == part.name || part.name.empty()); };
    for (const drawing::Circle& c : drawing_.elevation.circles)
        if (same_part(c.part)) return c.centre;
    for (const drawing::Polyline& p : drawing_.elevation.polylines)
        if (same_part(p.part) && !p.points.empty()) {
            const drawing::Point a = p.points[0], b = p.points[p.points.size() / 2];
            return drawing::Point{(a.x + b.x) / 2, (a.y + b.y) / 2};
        }
    for (const drawing::Line& l : drawing_.elevation.lines)
        if (same_part(l.part)) return drawing::Point{(l.a.x + l.b.x) / 2, (l.a.y + l.b.y) / 2};
    return std::nullopt;
}

ImVec2 Sheet::handle_of(const drawing::Part& part) const
{
    const std::optional<drawing::Point> at = centre_of(part);
    return at ? elevation_.of(*at) : ImVec2{-1, -1};
}

/// Where the chosen point is, measured from the left and the lower edge, as one measures with a tape.
std::vector<drawing::Dimension> Sheet::measures(const SheetContents& c) const
{
    using drawing::PartKind;
    if (!c.chosen || !c.layout || c.dimensions) return {}; // all dimensions: those of the chosen are among them
    const PartKind kind = c.chosen->kind;
    if (kind != PartKind::fastener && kind != PartKind::end_fixing && kind != PartKind::gauge && kind != PartKind::mass_centre && kind != PartKind::latch) return {};
    const std::optional<drawing::Point> at = centre_of(*c.chosen);
    if (!at) return {};
    const double h = text_height(view_scale_);
    const auto words = [&c](double mm) { return drawn_length(mm, c.units) + (c.units == UnitSystem::us ? " in" : ""); };
    const drawing::Part part{PartKind::dimension, c.chosen->name};
    // Above and to the right of the point: legs and rails lie below and beside it less often.
    return {{{0, at->y}, *at, true, at->y + 1.6 * h, words(at->x), h, part}, {{at->x, 0}, *at, false, at->x - 1.6 * h, words(at->y), h, part}};
}

void Sheet::draw_measures(const std::vector<drawing::Dimension>& all) const
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale;
    for (const drawing::Dimension& dimension : all) {
        const drawing::DimensionMarks m = drawing::marks(dimension);
        for (const drawing::Line& l : m.lines) d.AddLine(elevation_.of(l.a), elevation_.of(l.b), palette::judgement, 1.3f * k);
        for (const drawing::Polyline& p : m.heads) {
            std::vector<ImVec2> px;
            for (const drawing::Point& q : p.points) px.push_back(elevation_.of(q));
            d.AddConvexPolyFilled(px.data(), static_cast<int>(px.size()), palette::judgement);
        }
        lettering(m.text, elevation_, palette::judgement);
    }
}

/// Edge of the sheet and its centring marks, as drawing sheets have them (ISO 5457).
void Sheet::paper()
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 a = ImGui::GetCursorScreenPos(), room = ImGui::GetContentRegionAvail(), b{a.x + room.x, a.y + room.y};
    const float k = look().scale, in = 5 * k;
    d.AddRectFilled(a, b, palette::paper);
    d.AddRect(a, b, palette::rule);
    d.AddRect({a.x + in, a.y + in}, {b.x - in, b.y - in}, palette::ink, 0, 0, 1.4f * k);
    const ImVec2 m{(a.x + b.x) / 2, (a.y + b.y) / 2};
    for (const auto& [from, to] : {std::pair{ImVec2{m.x, a.y}, ImVec2{m.x, a.y + 2 * in}}, std::pair{ImVec2{m.x, b.y}, ImVec2{m.x, b.y - 2 * in}}, std::pair{ImVec2{a.x, m.y}, ImVec2{a.x + 2 * in, m.y}},
                                   std::pair{ImVec2{b.x, m.y}, ImVec2{b.x - 2 * in, m.y}}})
        d.AddLine(from, to, palette::ink, 1.4f * k);
    lo_ = {a.x + margin_px * k, a.y + margin_px * k};
    hi_ = {b.x - margin_px * k, b.y - (margin_px + sheet_strip_px) * k};
}

/// Where the skin moves most, outward + and inward -; the figure beside it is one of the drawing's texts.
void Sheet::peaks()
{
    for (const drawing::Peak& p : peaks_of(contours_)) {
        ImDrawList& d = *ImGui::GetWindowDrawList();
        const ImVec2 at = elevation_.of(p.at);
        const float r = 3.5f * look().scale;
        d.AddLine({at.x - r, at.y}, {at.x + r, at.y}, palette::ink, look().scale * 1.4f);
        if (p.w_mm > 0) d.AddLine({at.x, at.y - r}, {at.x, at.y + r}, palette::ink, look().scale * 1.4f);
    }
}

SheetEvents Sheet::show(const SheetContents& c)
{
    SheetEvents e;
    paper();
    ImGui::InvisibleButton("sheet", ImGui::GetContentRegionAvail(), ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonMiddle | ImGuiButtonFlags_MouseButtonRight);
    const bool hovered = ImGui::IsItemHovered() || ImGui::IsItemActive();
    fit_into(c);
    move_and_zoom(hovered);
    draw_anew(c);
    if (c.layout && view_scale_ > 0) place_views();
    place_grips(c);
    part_of_grips_ = c.chosen;
    drag(e, hovered);
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale;
    d.PushClipRect({lo_.x - 6 * k, lo_.y - 6 * k}, {hi_.x + 6 * k, hi_.y + 6 * k}, true);
    probe::on_moved_drawing(!fitted_);
    if (c.contours && c.trouble.empty()) paint(contours_, elevation_);
    if (c.ghost) {
        PaintOptions ghost;
        ghost.manner = Manner::ghost;
        paint(ghost_.elevation, elevation_, ghost);
        paint(ghost_.side, side_, ghost);
    }
    Marks marks;
    for (const drawing::LegendRow& row : drawing_.legend)
        if (const auto it = c.statuses.find(row.checked_as); it != c.statuses.end()) marks[{row.part.kind, row.part.name}] = it->second;
    const PaintOptions o{c.stale ? Manner::greyed : Manner::full, c.chosen, drag_ ? std::optional(drag_->part) : e.pointed, c.labels, c.forces, &marks, {}};
    const std::vector<drawing::Dimension> measured = measures(c);
    PaintOptions beside_measures = o;
    for (const drawing::Dimension& dimension : measured) {
        const drawing::DimensionMarks m = drawing::marks(dimension);
        beside_measures.no_letters_in.push_back(drawing::box_of(m.text));
        const double room = 0.1 * dimension.text_height;
        for (const drawing::Line& l : m.lines) beside_measures.no_letters_in.push_back({std::min(l.a.x, l.b.x) - room, std::min(l.a.y, l.b.y) - room, std::max(l.a.x, l.b.x) + room, std::max(l.a.y, l.b.y) + room});
    }
    paint(drawing_.elevation, elevation_, beside_measures);
    paint(drawing_.side, side_, o);
    if (c.contours && c.trouble.empty()) peaks();
    draw_measures(measured);
    rings(c);
    draw_grips(e.pointed_grip);
    d.PopClipRect();
    probe::on_moved_drawing(false);
    trouble(c);
    scale_bar(c.units);
    if (c.trouble.empty()) legend(c);
    return e;
}

} // namespace thinskin::gui
