#include "catalogue/thickness.h"

#include <charconv>
#include <cmath>

namespace thinskin::catalogue {
namespace {

std::optional<double> whole_number(std::string_view text)
{
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool read = error == std::errc() && end == text.data() + text.size() && std::isfinite(value) && value > 0;
    return read ? std::optional(value) : std::nullopt;
}

std::optional<ThicknessRange> below(std::string_view limit, bool limit_in)
{
    const auto upper = whole_number(limit);
    if (!upper) return std::nullopt;
    return ThicknessRange{0, *upper, false, limit_in};
}

} // namespace

std::optional<ThicknessRange> read_thickness_range(std::string_view text)
{
    if (text.starts_with("<= ")) return below(text.substr(3), true);
    if (text.starts_with("< ")) return below(text.substr(2), false);
    const bool lower_out = text.starts_with("> ");
    if (lower_out) text.remove_prefix(2);
    constexpr std::string_view to = " .. ";
    const std::size_t gap = text.find(to);
    if (gap == std::string_view::npos) return std::nullopt;
    const auto lower = whole_number(text.substr(0, gap)), upper = whole_number(text.substr(gap + to.size()));
    if (!lower || !upper || !(*lower < *upper)) return std::nullopt;
    return ThicknessRange{*lower, *upper, !lower_out, true};
}

} // namespace thinskin::catalogue
