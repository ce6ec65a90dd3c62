#include "base/nearest.h"
#include "base/quantity.h"
#include "catalogue/sections.h"

#include <fmt/format.h>

namespace thinskin::catalogue {
namespace {

constexpr double greatest_mm = 1000;

std::string_view trim(std::string_view s)
{
    while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
    while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
    return s;
}

std::string_view example(std::string_view kind)
{
    if (kind == "flat") return "flat 30x3";
    if (kind == "box") return "box 60x25x0.7";
    if (kind == "channel") return "channel 40x20x2";
    if (kind == "hat") return "hat 40x25x1.0 or with feet hat 40x25x12x1.0";
    return "angle 40x40x4";
}

ReadSection refuse(std::string_view kind, std::string_view text, std::string_view reason)
{
    ReadSection r;
    r.expected = fmt::format("expected a section such as \"{}\", found \"{}\"", example(kind), text);
    if (!reason.empty()) r.expected += fmt::format("; {}", reason);
    return r;
}

std::string_view take_word(std::string_view& rest)
{
    rest = trim(rest);
    const std::size_t blank = rest.find(' ');
    const std::string_view word = rest.substr(0, blank);
    rest.remove_prefix(word.size());
    return word;
}

/// Blanks folded, the multiplication sign as the letter x, no blanks beside an x.
std::string tidy_sizes(std::string_view text)
{
    constexpr std::string_view sign = "\xC3\x97";
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool is_sign = text.substr(i, sign.size()) == sign;
        if (is_sign) ++i;
        const char c = is_sign ? 'x' : text[i];
        if (c == ' ' && (out.empty() || out.back() == ' ' || out.back() == 'x')) continue;
        if (c == 'x' && !out.empty() && out.back() == ' ') out.pop_back();
        out += c;
    }
    return std::string(trim(out));
}

/// Takes `word` with a blank before it off the end.
bool take_end(std::string_view& rest, std::string_view word)
{
    if (!rest.ends_with(word) || rest.size() <= word.size()) return false;
    const std::string_view before = rest.substr(0, rest.size() - word.size());
    if (before.back() != ' ') return false;
    rest = trim(before);
    return true;
}

struct Parts {
    std::string kind, sizes, unit = "mm";
    bool lying = false;
};

Parts split(std::string_view text)
{
    Parts p;
    p.kind = take_word(text);
    const std::string tidy = tidy_sizes(text);
    std::string_view sizes = tidy;
    p.lying = take_end(sizes, "lying");
    if (take_end(sizes, "in")) p.unit = "in";
    else take_end(sizes, "mm");
    p.sizes = sizes;
    return p;
}

std::string designation(const Parts& p)
{
    return fmt::format("{} {}{}{}", p.kind, p.sizes, p.unit == "in" ? " in" : "", p.lying ? " lying" : "");
}

/// Sizes in mm, or a reason.
struct Sizes {
    std::vector<double> mm;
    std::string reason;
};

Sizes read_sizes(std::string_view text, std::string_view unit)
{
    Sizes s;
    while (s.reason.empty()) {
        const std::size_t x = text.find('x');
        const std::string_view one = text.substr(0, x);
        const auto q = base::read_quantity(fmt::format("{} {}", one, unit), base::Dimension::length);
        if (!q.ok) s.reason = fmt::format("\"{}\" is not a size", one);
        else if (!(q.quantity.value > 0 && q.quantity.value <= greatest_mm)) s.reason = fmt::format("\"{}\" is not between 0 and {} mm", one, greatest_mm);
        else s.mm.push_back(q.quantity.value);
        if (x == std::string_view::npos) break;
        text.remove_prefix(x + 1);
    }
    return s;
}

std::string wrong_count(std::string_view kind, std::size_t n)
{
    if (kind == "flat") return n == 2 ? "" : "a flat has two sizes: width x thickness";
    if (kind == "channel") return n == 3 ? "" : "a channel has three sizes: web x flange x wall";
    if (kind == "hat") return n == 3 || n == 4 ? "" : "a hat has three sizes, crown x height x wall, or four, crown x height x foot x wall";
    return n == 3 ? "" : fmt::format("{} {} has three sizes: side x side x wall", kind == "angle" ? "an" : "a", kind);
}

std::string wrong_wall(std::string_view kind, const std::vector<double>& mm)
{
    const double t = mm.back();
    if (kind == "flat") return t < mm[0] ? "" : "the thickness of a flat comes last and is the smaller size";
    const double walls = kind == "angle" ? 1 : 2;
    if (walls * t < mm[0] && walls * t < mm[1]) return "";
    return kind == "angle" ? "the wall must be thinner than each leg" : "two walls must be thinner than each side";
}

Section make(const Parts& p, const std::vector<double>& mm)
{
    if (p.kind == "flat") return p.lying ? make_flat({.b = mm[0], .h = mm[1], .t = mm[1]}) : make_flat({.b = mm[1], .h = mm[0], .t = mm[1]});
    const Legs legs{.b = mm[0], .h = mm[1], .t = mm.back()};
    if (p.kind == "box") return make_box(legs);
    if (p.kind == "channel") return make_channel(legs);
    if (p.kind == "hat") return make_hat(legs, mm.size() == 4 ? mm[2] : 0);
    return make_angle(legs);
}

} // namespace

ReadSection read_section(std::string_view text)
{
    const Parts p = split(text);
    if (p.kind != "angle" && p.kind != "flat" && p.kind != "box" && p.kind != "hat" && p.kind != "channel")
        return refuse("angle", text, base::did_you_mean(p.kind, {"angle", "flat", "box", "hat", "channel"}));
    if (p.lying && p.kind != "flat") return refuse(p.kind, text, "only a flat can be called lying here");
    const Sizes sizes = read_sizes(p.sizes, p.unit);
    if (!sizes.reason.empty()) return refuse(p.kind, text, sizes.reason);
    if (const auto reason = wrong_count(p.kind, sizes.mm.size()); !reason.empty()) return refuse(p.kind, text, reason);
    if (const auto reason = wrong_wall(p.kind, sizes.mm); !reason.empty()) return refuse(p.kind, text, reason);
    ReadSection r{true, make(p, sizes.mm), {}};
    r.section.designation = designation(p);
    return r;
}

} // namespace thinskin::catalogue
