#include "report/record.h"

#include "base/status.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/standing.h"
#include "report/text_parts.h"
#include "report/version.h"

#include <fmt/format.h>

namespace thinskin::report {
namespace {

std::string or_line(const std::string& text) { return text.empty() ? "<span class=\"fill\"></span>" : escaped(text); }

/// Numbers the sections that have something to say.
class Sections {
public:
    void add(std::string_view title, const std::string& html)
    {
        if (!html.empty()) text += html_heading(++count_, title) + html;
    }
    std::string text;

private:
    int count_ = 0;
};

std::vector<std::string> see_to_items()
{
    std::vector<std::string> all;
    for (const std::string_view s : see_to_on_the_vehicle) all.emplace_back(s);
    return all;
}

std::string sections(const Outcome& o, const RecordInputs& in)
{
    Sections s;
    s.add("Not solved", html_list(o.not_solved));
    s.add("Not covered: no figure here says that these hold", html_list(not_covered_items(o)));
    s.add("Cautions", html_list(o.cautions));
    s.add("Drawing", record_drawing(o, in));
    s.add("Assumed, because nobody measured it", record_assumptions(o));
    s.add("Inputs: the values of the case file", record_values(in));
    s.add("Load cases", record_load_cases(o));
    s.add("Load path", record_load_path(o));
    s.add("Stacks", record_stacks(o));
    s.add("Margins, least first", record_margins(o));
    s.add("Hand check beside the solver", record_hand_check(o));
    s.add("Single loss: the job with one thing gone", record_single_loss(o));
    s.add("Spread over what nobody measured", record_spread(in.spread));
    s.add("Skin and gauges", record_movements(o));
    s.add("Natural frequencies", record_frequencies(o));
    s.add("Wind that may not be exceeded", record_wind(o));
    s.add("Life under repeated stress", record_life(o));
    s.add("Door", record_door(o));
    s.add("Balance", record_balance(o));
    s.add("See to on the vehicle", html_list(see_to_items()));
    s.add("Never part of this result", html_list(o.exclusions));
    s.add("Signatures", record_signatures());
    s.add("Annex: the other margins, one line each", record_other_margins(o));
    s.add("Annex: formulas used", record_clauses(o));
    return s.text;
}

} // namespace

std::string record_cover(const Outcome& o, const RecordInputs& in)
{
    std::string rules = o.rules;
    for (char& c : rules)
        if (c == '_') c = ' ';
    std::string s = "<h1>" + escaped(o.title.empty() ? "Fixing to a thin skin" : o.title) + "</h1>\n<table class=\"block\">\n";
    const auto row = [&s](std::string_view a, const std::string& a_html, std::string_view b, const std::string& b_html) {
        s += fmt::format("<tr><th>{}</th><td>{}</td><th>{}</th><td>{}</td></tr>\n", a, a_html, b, b_html);
    };
    row("Job number", or_line(in.job_number), "Date", or_line(in.date));
    row("Vehicle", or_line(in.vehicle), "Prepared by", or_line(in.prepared_by));
    row("Case file", escaped(o.case_file), "Program", fmt::format("{} {}", tool_name, tool_version));
    row("Rules", escaped(rules) + (in.strict ? ", strict: judgement counts as not covered" : ""), "Title", escaped(o.title));
    s += fmt::format("<tr><th>sha256 of the case file</th><td colspan=\"3\" class=\"hash\">{}</td></tr>\n", escaped(o.sha256));
    if (!in.notes.empty()) s += fmt::format("<tr><th>Notes</th><td colspan=\"3\">{}</td></tr>\n", escaped(in.notes));
    return s + "</table>\n";
}

std::string record_signatures()
{
    HtmlTable t({{"what"}, {"name"}, {"signature"}, {"date"}}, "sign");
    for (const char* what : {"prepared", "checked by another person", "accepted by the owner", "reviewed by an engineer"}) t.row({what, "", "", ""});
    return t.html();
}

std::string record_html(const results::Outcome& o, const RecordInputs& in)
{
    const std::string title = escaped(o.title.empty() ? "Fixing to a thin skin" : o.title);
    const std::string caution = escaped(base::caution_text);
    std::string s = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>Job record: " + title + "</title>\n";
    s += record_style();
    s += "</head>\n<body>\n<table class=\"sheet\">\n<thead><tr><td><div class=\"running\"><span>" + title + "</span><span>" + (in.job_number.empty() ? "" : "job " + escaped(in.job_number)) + "</span></div></td></tr></thead>\n";
    s += "<tfoot><tr><td><div class=\"foot\">" + caution + "</div></td></tr></tfoot>\n<tbody><tr><td>\n";
    s += record_cover(o, in) + record_verdict(o, in) + "<p class=\"caution\">" + caution + "</p>\n";
    s += sections(o, in);
    return s + "</td></tr></tbody>\n</table>\n</body>\n</html>\n";
}

} // namespace thinskin::report
