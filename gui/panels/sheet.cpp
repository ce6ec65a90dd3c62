#include "panels/sheet.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

using drawing::Box;

constexpr float margin_px = 14, between_views_px = 26, strip_px = 40;
constexpr double inch = 25.4, lbf = 4.4482216152605; // mm, N: exact by definition
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

drawing::Options options_of(const SheetContents& c, const drawing::Contours& k, float scale)
{
    drawing::Options o = plain_options(scale);
    if (!c.dimensions) o.notes = c.notes; // there is no room for both beside a panel; the list at the right keeps the margins
    for (auto& [part, note] : o.notes) // a margin below zero and the cross before it say so already
        if (const auto word = note.find(" fail"); !note.empty() && note.front() == '-' && word != std::string::npos) note.erase(word, 5);
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
    if (key == key_ || !c.layout) return;
    key_ = key;
    contours_anew(c);
    drawing_ = drawing::draw(*c.layout, c.outcome, options_of(c, contours_, view_scale_));
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

/// The largest scale at which both views fit; letters keep their size, so the extent depends on the scale: a few passes settle it.
void Sheet::fit_into(const SheetContents& c)
{
    if (!c.layout) return;
    const ImVec2 room{hi_.x - lo_.x, hi_.y - lo_.y};
    const bool same_room = room.x == fitted_room_.x && room.y == fitted_room_.y;
    if (view_scale_ > 0 && (!fitted_ || (same_room && fitted_version_ == c.version))) return;
    // A drag must not make the picture breathe: only a changed room, panel or first look fits anew.
    if (view_scale_ > 0 && same_room && (drag_ || pressed_)) return;
    fitted_room_ = room;
    fitted_version_ = c.version;
    // Letters keep their size, and places for texts come and go, so what is used of the room is no function one could solve: step down until it fits.
    const float start = std::min(room.x / static_cast<float>(c.layout->width), room.y / static_cast<float>(c.layout->height));
    const auto largest = [&](bool below) {
        float s = start;
        for (; s > static_cast<float>(least_scale); s *= 0.97f) {
            const drawing::Drawing d = drawing::draw(*c.layout, c.outcome, options_of(c, contours_, s));
            const ImVec2 used = used_room(d, s, below);
            if (used.x <= room.x && used.y <= room.y) break;
        }
        return s;
    };
    // The side view belongs beside the elevation, on one height axis; below it only where a wide panel gains much by that.
    constexpr float worth = 1.3f;
    const float beside = largest(false), below = c.layout->width > 1.5 * c.layout->height ? largest(true) : 0;
    below_ = below > worth * beside;
    view_scale_ = below_ ? below : beside;
    shift_ = {0, 0};
    fitted_ = true;
}

void Sheet::place_views()
{
    // Texts come and go with the figures while something is dragged: the views must not move under the pointer.
    if ((drag_ || pressed_) && elevation_.px_per_mm == view_scale_) return;
    const Box e = drawing_.elevation.extent(), s = drawing_.side.extent(), both = drawing::joined(e, s);
    const float gap = between_views_px * look().scale;
    const ImVec2 used = used_room(drawing_, view_scale_, below_);
    const ImVec2 spare = fitted_ ? ImVec2{std::max(0.0f, (hi_.x - lo_.x - used.x) / 2), std::max(0.0f, (hi_.y - lo_.y - used.y) / 2)} : ImVec2{0, 0};
    if (fitted_) shift_ = {spare.x - static_cast<float>(e.x0) * view_scale_, spare.y + static_cast<float>(below_ ? e.y1 : both.y1) * view_scale_};
    elevation_ = {{lo_.x + shift_.x, lo_.y + shift_.y}, view_scale_};
    side_ = {{elevation_.origin.x + static_cast<float>(e.x1) * view_scale_ + gap - static_cast<float>(s.x0) * view_scale_, elevation_.origin.y}, view_scale_};
    if (below_) side_.origin = {elevation_.origin.x + static_cast<float>(e.x0 - s.x0) * view_scale_, elevation_.origin.y + static_cast<float>(s.y1 - e.y0) * view_scale_ + gap};
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
void Sheet::measure(const SheetContents& c)
{
    using drawing::PartKind;
    if (!c.chosen || !c.layout || c.dimensions) return; // all dimensions: those of the chosen are among them
    const PartKind kind = c.chosen->kind;
    if (kind != PartKind::fastener && kind != PartKind::end_fixing && kind != PartKind::gauge && kind != PartKind::mass_centre && kind != PartKind::latch) return;
    const std::optional<drawing::Point> at = centre_of(*c.chosen);
    if (!at) return;
    const double h = text_height(view_scale_);
    const auto words = [&c](double mm) { return drawn_length(mm, c.units) + (c.units == UnitSystem::us ? " in" : ""); };
    const drawing::Part part{PartKind::dimension, c.chosen->name};
    // Above and to the right of the point: legs and rails lie below and beside it less often.
    const drawing::Dimension all[] = {{{0, at->y}, *at, true, at->y + 1.6 * h, words(at->x), h, part}, {{at->x, 0}, *at, false, at->x - 1.6 * h, words(at->y), h, part}};
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
        probe::on_top(true); // on paper of its own, over the name of the chosen part
        lettering(m.text, elevation_, palette::judgement);
        probe::on_top(false);
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
    hi_ = {b.x - margin_px * k, b.y - (margin_px + strip_px) * k};
}

void Sheet::scale_bar(UnitSystem units)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale;
    const double unit = units == UnitSystem::us ? inch : 1;
    double length = unit;
    for (const double step : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0})
        if (step * unit * static_cast<double>(view_scale_) <= static_cast<double>(110 * k)) length = step * unit;
    const float half = static_cast<float>(length) * view_scale_ / 2, y = hi_.y + 24 * k, x = lo_.x + 4 * k;
    d.AddRectFilled({x, y}, {x + half, y + 5 * k}, palette::ink);
    d.AddRect({x, y}, {x + 2 * half, y + 5 * k}, palette::ink);
    ImFont* font = look().fonts.small;
    widgets::letters({x, y - font->FontSize - 2 * k}, fmt::format("{:g} {}", length / unit, units == UnitSystem::us ? "in" : "mm"), palette::ink, font);
}

/// Small boxes from inward to outward with the limits between them.
void Sheet::legend(const SheetContents& c)
{
    if (!c.contours || contours_.step_mm <= 0 || contours_.patches.empty()) return;
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale, y = hi_.y + 24 * k, h = 8 * k;
    ImFont* font = look().fonts.small;
    const int bands = contours_.last - contours_.first + 1;
    const float room = hi_.x - lo_.x - 170 * k, w = std::min(36 * k, room / static_cast<float>(bands));
    const float x0 = hi_.x - w * static_cast<float>(bands) - 12 * k;
    const std::string load_case = c.load_case.empty() && c.outcome ? c.outcome->load_path_case : c.load_case;
    const double unit = c.units == UnitSystem::us ? inch : 1, step = contours_.step_mm / unit;
    const auto figure = [step](int limit) { return limit == 0 ? std::string("0") : fmt::format("{:+.{}f}", limit * step, step < 0.0099 ? 3 : step < 0.099 ? 2 : step < 0.99 ? 1 : 0); };
    float written_to = -1e9f;
    for (int i = 0; i <= bands; ++i) {
        const float x = x0 + w * static_cast<float>(i);
        if (i < bands) {
            d.AddRectFilled({x, y}, {x + w, y + h}, band_colour(contours_, contours_.first + i));
            d.AddRect({x, y}, {x + w, y + h}, palette::rule);
        }
        const std::string words = figure(contours_.first + i);
        const float wide = widgets::size_of(words, font).x, left = x - wide / 2;
        const bool zero_follows = contours_.first + i < 0 && left + wide + 4 * k > x0 + w * static_cast<float>(-contours_.first) - 4 * k;
        if (left < written_to + 5 * k || zero_follows) continue;
        widgets::letters({left, y + h + 1 * k}, words, palette::ink, font);
        written_to = left + wide;
    }
    widgets::letters_right(x0 + w * static_cast<float>(bands), y - font->FontSize - 2 * k, fmt::format("movement of the skin, {}: - inward, + outward", c.units == UnitSystem::us ? "in" : "mm"), palette::ink, font);
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

/// Why there are no figures, across the sheet.
void Sheet::trouble(const SheetContents& c)
{
    if (c.trouble.empty()) return;
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale, wide = std::min(520 * k, hi_.x - lo_.x - 40 * k), pad = 12 * k;
    ImFont *bold = look().fonts.bold, *plain = look().fonts.plain;
    std::vector<std::pair<std::string, ImFont*>> lines{{c.outcome ? "Not solved: the figures shown are those of the last state that was solved" : "No result for this case", bold}};
    for (const std::string& words : c.trouble)
        for (std::string& line : widgets::lines_of(words, wide - 2 * pad, plain))
            if (lines.size() < 12) lines.emplace_back(std::move(line), plain);
    const float line = plain->FontSize * 1.25f, tall = line * static_cast<float>(lines.size()) + 2 * pad;
    // While something is dragged it must not lie under the words.
    const ImVec2 a{(lo_.x + hi_.x - wide) / 2, drag_ ? lo_.y : lo_.y + 0.3f * (hi_.y - lo_.y)}, b{a.x + wide, a.y + tall};
    d.AddRectFilled(a, b, palette::with_alpha(palette::paper, 0.96f));
    d.AddRect(a, b, palette::fail, 0, 0, 2 * k);
    probe::on_top(true);
    for (std::size_t i = 0; i < lines.size(); ++i) widgets::letters_within({a.x + pad, a.y + pad + line * static_cast<float>(i)}, wide - 2 * pad, lines[i].first, i == 0 ? palette::fail : palette::ink, lines[i].second);
    probe::on_top(false);
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
    place_views();
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
    const PaintOptions o{c.stale ? Manner::greyed : Manner::full, c.chosen, drag_ ? std::optional(drag_->part) : e.pointed, c.labels, c.forces, &marks};
    paint(drawing_.elevation, elevation_, o);
    paint(drawing_.side, side_, o);
    if (c.contours && c.trouble.empty()) peaks();
    measure(c);
    draw_grips(e.pointed_grip);
    d.PopClipRect();
    probe::on_moved_drawing(false);
    trouble(c);
    scale_bar(c.units);
    legend(c);
    return e;
}

} // namespace thinskin::gui
