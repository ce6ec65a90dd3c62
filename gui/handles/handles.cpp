#include "handles/handles.h"

#include "handles/grips.h"

#include <algorithm>

namespace thinskin::gui {

Grip& add(Grips& out, HandleKind kind, std::string id, std::string name, std::string label, const Vec3& at, std::vector<Binding> bindings)
{
    Grip g;
    g.handle.kind = kind;
    g.handle.id = std::move(id);
    g.handle.name = std::move(name);
    g.handle.label = std::move(label);
    g.handle.at = at;
    for (const Binding& b : bindings) g.handle.moves[static_cast<std::size_t>(b.axis)] = true;
    g.bindings = std::move(bindings);
    out.push_back(std::move(g));
    return out.back();
}

Binding bind(int axis, std::string path, const model::Quantity& q, double sign) { return {axis, std::move(path), q.value, sign, system_of(q.text)}; }

std::vector<Binding> of_point(const std::string& path, const model::Point2& p)
{
    return {bind(0, path + "[0]", p.x), bind(1, path + "[1]", p.y)};
}

std::vector<Binding> of_point(const std::string& path, const model::Point3& p)
{
    return {bind(0, path + "[0]", p.x), bind(1, path + "[1]", p.y), bind(2, path + "[2]", p.z)};
}

void join(std::vector<Binding>& to, const std::vector<Binding>& more) { to.insert(to.end(), more.begin(), more.end()); }

namespace {

/// What lies under the pointer first: small things over large ones.
int size_of(HandleKind k)
{
    switch (k) {
    case HandleKind::item: return 0;
    case HandleKind::plate:
    case HandleKind::board: return 1;
    case HandleKind::angle: return 2;
    case HandleKind::bracket: return 3;
    case HandleKind::fastener:
    case HandleKind::foot:
    case HandleKind::end_fastener: return 6;
    case HandleKind::gauge:
    case HandleKind::item_centre: return 5;
    default: return 4;
    }
}

} // namespace

std::vector<Handle> handles(const model::Case& c)
{
    Grips all;
    other_grips(c, all);
    member_grips(c, all);
    angle_grips(c, all);
    bracket_grips(c, all);
    std::stable_sort(all.begin(), all.end(), [](const Grip& a, const Grip& b) { return size_of(a.handle.kind) < size_of(b.handle.kind); });
    std::vector<Handle> out;
    for (Grip& g : all) out.push_back(std::move(g.handle));
    return out;
}

const Handle* find(const std::vector<Handle>& all, const std::string& id)
{
    const auto found = std::find_if(all.begin(), all.end(), [&id](const Handle& h) { return h.id == id; });
    return found == all.end() ? nullptr : &*found;
}

} // namespace thinskin::gui
