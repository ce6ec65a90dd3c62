#include "base/status.h"
#include "report/figures.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::report {
namespace {

using results::NaturalMode;

constexpr std::size_t shown = 3;

std::string share(const NaturalMode& m) { return fmt::format("{:.0f} %", 100 * m.hung_share); }

/// One sentence for each check of the frequencies.
std::vector<std::string> verdicts(const Outcome& o)
{
    std::vector<std::string> out;
    for (const results::Check& c : o.checks)
        if (c.group == "vibration") out.push_back(fmt::format("{}: {}{}{}", c.title, base::name(c.status), c.note.empty() ? "" : "; " + c.note, c.has_numbers() || c.lift_with.empty() ? "" : "; lifted by " + c.lift_with));
    return out;
}

/// What the contacts of legs, feet and rails, and straps, make of the lowest frequency.
std::string contact_words(const results::Vibration& v)
{
    if (!v.all_closed_Hz && !v.all_open_Hz) return "";
    const auto hertz = [](const std::optional<double>& f) { return !f ? std::string("none among those looked at") : *f > 0 ? fixed(*f, 1) + " Hz" : std::string("0 Hz: something then hangs loose"); };
    return fmt::format("Lowest of the hung parts with every contact and strap closed: {}; with all of them open, bolts tight: {}. Shaken hard, contacts open and close, and the job answers between the two.", hertz(v.all_closed_Hz), hertz(v.all_open_Hz));
}

const char* state(const Outcome& o) { return o.vibration.large_deflection ? "flat, unloaded skin" : "rigid edge"; }

} // namespace

std::vector<const NaturalMode*> modes_to_show(const std::vector<NaturalMode>& modes, bool all)
{
    std::vector<const NaturalMode*> hung, any;
    for (const NaturalMode& m : modes) {
        any.push_back(&m);
        if (results::is_hung(m)) hung.push_back(&m);
    }
    std::vector<const NaturalMode*>& out = all || hung.empty() ? any : hung;
    if (!all && out.size() > shown) out.resize(shown);
    return out;
}

std::string frequency_lines(const Outcome& o, const TextOptions& t)
{
    const results::Vibration& v = o.vibration;
    if (v.bound.empty()) return "";
    Table table({{"Hz", Align::right}, {"edge"}, {"what moves"}, {"item and brackets", Align::right}, {"where it gives"}});
    for (const NaturalMode* m : modes_to_show(v.modes, t.detail)) table.row({fixed(m->frequency_Hz, 1), state(o), m->what, share(*m), m->flexes});
    for (const NaturalMode* m : modes_to_show(v.with_frame, t.detail)) table.row({fixed(m->frequency_Hz, 1), "own frame", m->what, share(*m), m->flexes});
    return heading("Natural frequencies") + wrapped("", "Frequencies: " + v.bound + ".", t.width) + (contact_words(v).empty() ? "" : wrapped("", contact_words(v), t.width)) + table.text() + bullet_list(verdicts(o), t.width);
}

std::string record_frequencies(const Outcome& o)
{
    const results::Vibration& v = o.vibration;
    if (v.bound.empty()) return "";
    HtmlTable table({{"Hz", true}, {"edge"}, {"what moves"}, {"item and brackets", true}, {"where it gives"}});
    for (const NaturalMode& m : v.modes) table.row({fixed(m.frequency_Hz, 1), state(o), m.what, share(m), m.flexes});
    for (const NaturalMode& m : v.with_frame) table.row({fixed(m.frequency_Hz, 1), "own frame", m.what, share(m), m.flexes});
    return html_paragraph("Frequencies: " + v.bound + ".") + (contact_words(v).empty() ? "" : html_paragraph(contact_words(v))) + table.html() + html_list(verdicts(o));
}

} // namespace thinskin::report
