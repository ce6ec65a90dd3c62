#include "consistency/report_sample.h"
#include "report/figures.h"
#include "report/json.h"
#include "report/record.h"
#include "report/standing.h"
#include "support/drawn.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>
#include <set>

using namespace thinskin;
using nlohmann::json;
using tests::sample_outcome;

namespace {

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::size_t count(const std::string& text, const std::string& part)
{
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

report::RecordInputs inputs_of(const tests::Drawn& d)
{
    report::RecordInputs in;
    in.layout = d.analysis.layout.get();
    in.values = {{"panel.width", "740 mm", "drawing"}};
    return in;
}

/// The row of a check: from its mark to the end of its body.
std::string row_of(const std::string& page, const std::string& id)
{
    const std::size_t at = page.find("data-check=\"" + report::escaped(id) + "\"");
    return at == std::string::npos ? "" : page.substr(at, page.find("</tbody>", at) - at);
}

/// First tag that is closed out of turn, or empty: every element but the two kinds without content has its end.
std::string unbalanced(const std::string& page)
{
    std::vector<std::string> open;
    for (std::size_t at = page.find('<'); at != std::string::npos; at = page.find('<', at + 1)) {
        const std::size_t end = page.find('>', at);
        if (end == std::string::npos) return "no end of a tag";
        const std::string tag = page.substr(at + 1, end - at - 1);
        const std::string name = tag.substr(tag[0] == '/' ? 1 : 0, tag.find_first_of(" /", 1) - (tag[0] == '/' ? 1 : 0));
        if (tag[0] == '!' || name == "meta" || tag.back() == '/') continue;
        if (tag[0] != '/') open.push_back(name);
        else if (open.empty() || open.back() != name) return tag;
        else open.pop_back();
    }
    return open.empty() ? "" : open.back();
}

/// The piece of text of a check that has no row of its own; empty: there is none.
std::string text_of(const std::string& page, const std::string& id)
{
    const std::size_t at = page.find("<span data-check=\"" + report::escaped(id) + "\">");
    return at == std::string::npos ? "" : page.substr(at, page.find("</span>", at) - at);
}

} // namespace

TEST_SUITE_BEGIN("record");

TEST_CASE("every check of a shipped case is on its record once, with the figures of the result file")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const tests::Drawn& d = tests::drawn(name);
        const std::string page = report::record_html(*d.analysis.outcome, inputs_of(d));
        const json result = json::parse(report::check_json(*d.analysis.outcome));
        CHECK(count(page, "data-check=") == result["checks"].size());
        for (const json& c : result["checks"]) {
            const std::string id = c["id"];
            CAPTURE(id);
            if (const std::string text = text_of(page, id); !text.empty()) { // far from its limit: a piece of text, with title and figures
                CHECK((c["status"] == "pass" || c["status"] == "judgement"));
                CHECK(c["capacity"].get<double>() > (c["load_case"] == "geometry" ? 1 - 1e-9 : 6) * c["demand"].get<double>());
                CHECK(contains(text, report::escaped(c["title"].get<std::string>()) + ": " + report::figure(c["demand"]) + " of " + report::figure(c["capacity"])));
                CHECK(contains(text, "(j)") == (c["status"] == "judgement"));
                continue;
            }
            const std::string row = row_of(page, id);
            REQUIRE_FALSE(row.empty());
            CHECK(contains(row, report::escaped(c["title"].get<std::string>())));
            CHECK(contains(row, "<td>" + std::string(c["status"])));
            if (!c["margin"].is_number()) continue;
            CHECK(contains(row, "<td class=\"n\">" + report::escaped(report::margin_text(c["margin"])) + "</td>"));
            CHECK(contains(row, "<td class=\"n\">" + report::figure(c["demand"]) + "</td>"));
            CHECK(contains(row, "<td class=\"n\">" + report::figure(c["capacity"]) + "</td>"));
            const bool in_full = contains(row, "<tr class=\"below\"");
            if (in_full) CHECK(contains(row, report::escaped(c["source"].get<std::string>())));
            if (c["formula"] != "") CHECK(contains(row, (in_full ? "<b>" : "<td>") + std::string(c["formula"]) + (in_full ? "</b>" : "</td>")));
            if (c["status"] == "fail" || c["status"] == "not covered") CHECK(in_full); // what stops the job is never small print
        }
    }
}

TEST_CASE("each input of a clause stands in its row with its figure")
{
    const results::Outcome o = sample_outcome();
    const std::string row = row_of(report::record_html(o, {}), o.checks.front().id);
    CHECK(contains(row, "d = 8 mm"));
    CHECK(contains(row, "t = 0.76 mm"));
    CHECK(contains(row, "[from memory]"));
    CHECK(contains(row, "a standard, 2016"));
}

TEST_CASE("hand sums and their difference stand beside the solver's figures")
{
    const std::string page = report::record_html(sample_outcome(), {});
    CHECK(contains(page, "<td class=\"n\">341</td><td class=\"n\">200</td>"));
    CHECK(contains(page, "prying 100 N, pivot shift 41 N"));
}

TEST_CASE("caution, what to see to, exclusions, assumptions, stacks and lines to sign are on it")
{
    const results::Outcome o = sample_outcome();
    const std::string page = report::record_html(o, {});
    CHECK(count(page, report::escaped(base::caution_text)) == 2); // under the verdict; in the foot that is repeated on every sheet
    CHECK(contains(page, "<tfoot><tr><td><div class=\"foot\">CAUTION"));
    for (const auto item : report::see_to_on_the_vehicle) CHECK(contains(page, report::escaped(item)));
    for (const std::string& item : o.exclusions) CHECK(contains(page, item));
    for (const char* line : {"prepared", "checked by another person", "accepted by the owner", "reviewed by an engineer"}) CHECK(contains(page, std::string("<td>") + line + "</td>"));
    CHECK(contains(page, "panel.skin.coating"));
    CHECK(contains(page, "head | leg 4.0 | skin 0.76 | angle 4.0 | nut"));
    CHECK(contains(page, o.sha256));
    CHECK(contains(page, "hole L1 is close to a rib"));
    CHECK(contains(page, "nobody knows what the hinges carry"));
    CHECK(contains(page, "balance to 1.0e-14"));
}

TEST_CASE("date, job and vehicle are printed as given and left as lines when they are not")
{
    report::RecordInputs in;
    CHECK(count(report::record_html(sample_outcome(), in), "class=\"fill\"") == 4);
    in.date = "2026-03-31";
    in.job_number = "FS-0142";
    in.vehicle = "survey van";
    in.prepared_by = "a fitter";
    const std::string page = report::record_html(sample_outcome(), in);
    CHECK(count(page, "class=\"fill\"") == 0);
    for (const char* text : {"2026-03-31", "FS-0142", "survey van", "a fitter"}) CHECK(contains(page, text));
}

TEST_CASE("a case that is not solved prints no margin, on the page or on its drawing")
{
    results::Outcome o = sample_outcome();
    o.verdict = base::Verdict::not_solved;
    o.not_solved = {"bracket left turns freely"};
    const std::string page = report::record_html(o, {});
    CHECK(contains(page, "NOT SOLVED"));
    CHECK(contains(page, "bracket left turns freely"));
    CHECK_FALSE(contains(page, "+1.17"));
    CHECK_FALSE(contains(page, ">+"));
    CHECK(report::part_notes(o).empty());
}

TEST_CASE("a part whose checks are partly not covered does not look as if it passed")
{
    results::Outcome o = sample_outcome();
    o.checks[2].part = "L1";
    CHECK(report::part_notes(o).at("L1") == "+1.17 n.c.");
    o.checks[0].status = base::Status::fail;
    o.checks[0].capacity = 300;
    CHECK(report::part_notes(o).at("L1") == "-0.50 fail n.c.");
    o.checks[0].demand = std::numeric_limits<double>::quiet_NaN();
    CHECK(report::part_notes(o).at("L1") == "no figure fail n.c.");
}

TEST_CASE("the page stands alone: no scripts, nothing loaded, every element closed")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const tests::Drawn& d = tests::drawn(name);
        const std::string page = report::record_html(*d.analysis.outcome, inputs_of(d));
        CHECK(unbalanced(page) == "");
        CHECK(count(page, "<svg") == 1);
        CHECK(count(page, "http") == count(page, "xmlns=\"http://www.w3.org/2000/svg\""));
        for (const char* never : {"<script", "src=", "href=", "url(", "@import", "onload", ">nan", " nan", ">inf", " inf<"}) CHECK_FALSE(contains(page, never));
    }
}

TEST_CASE("two runs from the same case give the same bytes")
{
    for (const char* name : {"condenser_door", "plain_panel"}) {
        const tests::Drawn& first = tests::drawn(name);
        const tests::Analysed again = tests::analyse_anew(tests::edited_text(name));
        const tests::Drawn second = tests::drawn_from(again);
        CHECK(report::record_html(*first.analysis.outcome, inputs_of(first)) == report::record_html(*second.analysis.outcome, inputs_of(second)));
    }
}

TEST_SUITE_END();
