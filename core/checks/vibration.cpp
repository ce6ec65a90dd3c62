#include "checks/checks.h"
#include "checks/rows.h"

#include <algorithm>
#include <cmath>

namespace thinskin::checks {

namespace {

using results::NaturalMode;

/// A range of frequencies to keep out of, with whose word it is.
struct Band { std::string id, title; double low = 0, high = 0; std::string source, label; bool road = false; };

/// How far below an upper bound a door's soft edge may bring the truth, engineering judgement: a ninth of the stiffness is a third of the frequency.
constexpr double door_edge_share = 3;

constexpr double keep_off = 0.20; ///< of a running frequency, both ways

std::vector<Band> bands(const layout::Layout& l)
{
    // From 0: what hangs softer than the van on its own springs has not cleared them.
    std::vector<Band> out{{"vibration/body", "body of the vehicle on its springs, 1 to 2 Hz", 0, 2, "quarter car, 1.2 Hz laden to 1.7 Hz unladen with common parameters", "computed from the formula, parameters common practice", true},
                          {"vibration/wheel hop", "wheel hop, 8 to 13 Hz", 8, 13, "quarter car, 10 Hz with common parameters; range of practice", "common practice, no source", true}};
    for (const model::Quantity& f : l.source->item->running_frequency)
        out.push_back({"vibration/running " + f.text, fmt::format("running frequency of {}, {} and 20 % each way", l.item->name, f.text), (1 - keep_off) * f.value, (1 + keep_off) * f.value, "one fifth away from every steady frequency", "common practice, no source", false});
    return out;
}

/// How much of the way to the band a frequency has: <= 1 outside, more than 1 inside (written so that a NaN is inside).
double used(double f, const Band& b) { return f < b.low ? f / b.low : b.high / f; }

/// The mode that comes nearest to the band or is in it.
const NaturalMode* nearest(const std::vector<NaturalMode>& modes, const Band& b)
{
    const NaturalMode* worst = nullptr;
    for (const NaturalMode& m : modes)
        if (results::is_hung(m) && !(worst && std::isnan(worst->frequency_Hz)) && (!worst || !(used(m.frequency_Hz, b) <= used(worst->frequency_Hz, b)))) worst = &m;
    return worst;
}

const NaturalMode* lowest(const std::vector<NaturalMode>& modes)
{
    const auto it = std::find_if(modes.begin(), modes.end(), results::is_hung);
    return it == modes.end() ? nullptr : &*it;
}

std::string mode_words(const NaturalMode& m) { return fmt::format("{:.1f} Hz: {}", m.frequency_Hz, m.what); }

/// Why the model's frequencies cannot clear the band; empty: they can.
std::string in_doubt(const layout::Layout& l, const results::Vibration& v, const Band& b, const NaturalMode* low)
{
    if (v.large_deflection) return "the skin needs large deflection: under load it is stiffer than the flat, unloaded skin these frequencies belong to";
    if (l.kind == model::PanelKind::wall || !b.road || !low || low->frequency_Hz <= b.high || low->frequency_Hz >= door_edge_share * b.high) return "";
    if (v.with_frame.empty()) return fmt::format("{:.1f} Hz is an upper bound with a rigid door edge: hinges, latch and frame give, and the band may be where the truth lies", low->frequency_Hz);
    const NaturalMode* soft = lowest(v.with_frame);
    if (soft && !(soft->frequency_Hz > b.high))
        return fmt::format("between {:.1f} Hz (frame as given on hinges and latch alone, without inner panel and seal) and {:.1f} Hz (rigid edge)", soft->frequency_Hz, low->frequency_Hz);
    return "";
}

results::Check row(const layout::Layout& l, const results::Vibration& v, const Band& b)
{
    Place p{b.id, "vibration", l.item->name, b.title, true, "", ""};
    const NaturalMode* at = nearest(v.modes, b);
    const double known = v.modes.empty() ? 0 : v.modes.back().frequency_Hz;
    p.lift_with = !v.frame_missing.empty() ? v.frame_missing : "a stiffer frame or reinforcement, or the frequency measured on the vehicle";
    if (!v.run) return not_covered(p, "no natural frequencies: " + v.why_not);
    if (at && !std::isfinite(at->frequency_Hz)) return not_covered(p, "a natural frequency is not a number");
    if (at && !(used(at->frequency_Hz, b) <= 1) && !v.large_deflection) p.note = mode_words(*at);
    else if (const std::string doubt = in_doubt(l, v, b, lowest(v.modes)); !doubt.empty()) return not_covered(p, doubt);
    else if (!(known > b.high)) return not_covered({b.id, "vibration", l.item->name, b.title, true, "a running frequency within reach, or a smaller panel", ""}, fmt::format("the frequencies are worked out up to {:.0f} Hz only", known));
    else p.note = at ? "nearest: " + mode_words(*at) : fmt::format("item and brackets take no part in any frequency up to {:.0f} Hz", known);
    const double f = at ? at->frequency_Hz : known;
    return against_limit(p, {"vibration", f < b.low ? f : b.high, true, ""}, {f < b.low ? b.low : f, "Hz", "", b.source, b.label});
}

} // namespace

std::vector<results::Check> vibration(const Demands& d)
{
    const results::Vibration& v = *d.vibration;
    if (!d.layout->item || d.layout->nothing_hung() || (!v.run && v.why_not.empty())) return {};
    std::vector<results::Check> out;
    for (const Band& b : bands(*d.layout)) {
        out.push_back(row(*d.layout, v, b));
        out.back().required = false;
    }
    return out;
}

} // namespace thinskin::checks
