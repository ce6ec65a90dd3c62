#include "base/status.h"
#include "report/figures.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <fmt/format.h>

namespace thinskin::report {
namespace {

using results::Loss;

std::string margin_of(const Loss& l) { return l.least_margin ? margin_text(*l.least_margin) : "-"; }

/// "+0.66 to +0.10"; a check that is there only without the part has no figure before.
std::string change(const Loss& l)
{
    if (!l.hit) return "-";
    return (l.hit->before ? margin_text(*l.hit->before) : "new") + " to " + margin_text(l.hit->after);
}

/// What the loss makes worse, and why there is no figure or no cover.
std::string words_of(const Loss& l)
{
    const std::string hit = l.hit ? fmt::format("{} ({})", l.hit->check, l.hit->load_case) : l.least_margin ? "nothing gets worse by more than 0.01" : "";
    return hit.empty() || l.note.empty() ? hit + l.note : hit + "; " + l.note;
}

std::string what_it_is(const results::SingleLoss& s)
{
    return fmt::format("Each row is the whole case run again with that one thing gone: a fastener, a mount, a strap slack, {:g} mm of the skin to corrosion (engineering judgement). "
                       "Not lost here: welds, hinges, latches, whole members. Two things at once are not run.", s.rust_mm);
}

} // namespace

std::string single_loss_lines(const Outcome& o, const TextOptions& t)
{
    if (!o.single_loss) return "";
    Table table({{"without"}, {"verdict"}, {"least margin", Align::right}, {"what it hits", Align::right}, {"worst of the checks it makes worse"}});
    table.row({"nothing lost", std::string(base::name(o.verdict)), o.governing && o.verdict != base::Verdict::not_solved ? margin_text(o.governing->margin()) : "-", "", ""});
    for (const Loss& l : o.single_loss->losses) table.row({l.what, std::string(base::name(l.verdict)), margin_of(l), change(l), words_of(l)});
    return heading("Single loss") + wrapped("", what_it_is(*o.single_loss), t.width) + table.text();
}

std::string record_single_loss(const Outcome& o)
{
    if (!o.single_loss) return html_paragraph("Not run: what happens when one fastener is lost, a strap goes slack or the skin corrodes is not part of this record. thinskin record --single-loss runs it.");
    HtmlTable t({{"without"}, {"verdict"}, {"least margin", true}, {"what it hits", true}, {"worst of the checks it makes worse"}});
    for (const Loss& l : o.single_loss->losses)
        t.row({l.what, std::string(base::name(l.verdict)), margin_of(l), change(l), words_of(l)}, l.verdict == base::Verdict::fail ? "class=\"fail\"" : l.verdict == base::Verdict::pass ? "" : "class=\"open\"");
    return html_paragraph(o.single_loss->headline) + html_paragraph(what_it_is(*o.single_loss)) + t.html();
}

} // namespace thinskin::report
