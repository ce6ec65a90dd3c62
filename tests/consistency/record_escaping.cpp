#include "consistency/report_sample.h"
#include "report/record.h"
#include "report/svg.h"
#include "support/drawn.h"

#include <doctest/doctest.h>

using namespace thinskin;

namespace {

const std::string evil = "<script>alert(\"1\")</script> & 'x'";

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// Every text of a sample outcome replaced by one that would be markup.
results::Outcome evil_outcome()
{
    results::Outcome o = tests::sample_outcome();
    for (std::string* s : {&o.title, &o.case_file, &o.sha256, &o.rules, &o.headline, &o.advice, &o.dynamic_basis, &o.dynamic_derivation, &o.load_path_case}) *s = evil;
    for (results::Check& c : o.checks)
        for (std::string* s : {&c.id, &c.formula, &c.title, &c.part, &c.load_case, &c.unit, &c.source, &c.edition, &c.label, &c.note, &c.lift_with}) *s = evil;
    for (results::Check& c : o.checks) c.inputs = {{evil, 1.0}};
    for (results::Group& g : o.groups)
        for (std::string* s : {&g.name, &g.part, &g.check}) *s = evil;
    for (results::LoadCase& l : o.load_cases)
        for (std::string* s : {&l.name, &l.source, &l.derivation, &l.theory}) *s = evil;
    for (results::FastenerForce& f : o.fasteners)
        for (std::string* s : {&f.name, &f.load_case, &f.difference}) *s = evil;
    for (results::EndForce& e : o.member_ends)
        for (std::string* s : {&e.name, &e.end, &e.load_case, &e.difference}) *s = evil;
    for (results::PathStep& p : o.load_path)
        for (std::string* s : {&p.from, &p.to}) *s = evil;
    o.stacks = {{evil, evil}};
    o.assumptions = {{evil, evil, evil, evil}};
    for (auto* list : {&o.cautions, &o.not_covered, &o.exclusions, &o.not_solved}) *list = {evil};
    o.gauges.front().name = o.hinges.front().name = o.latches.front().name = o.stops.front().name = evil;
    o.skin.front().stands = false;
    o.skin.front().why_not = o.skin.front().load_case = evil;
    o.balance.bodies.front().body = evil;
    return o;
}

} // namespace

TEST_SUITE_BEGIN("escaping in the record");

TEST_CASE("no text of an outcome or of the inputs becomes markup")
{
    report::RecordInputs in;
    in.job_number = in.vehicle = in.prepared_by = in.notes = in.date = evil;
    in.values = {{evil, evil, evil}};
    const std::string page = report::record_html(evil_outcome(), in);
    CHECK_FALSE(contains(page, "<script"));
    CHECK_FALSE(contains(page, "alert(\"1\")"));
    CHECK_FALSE(contains(page, "& 'x'"));
    CHECK(contains(page, "&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39;"));
}

TEST_CASE("names of a case file stay text on the page and in the drawing")
{
    const tests::Drawn d = tests::drawn_from(tests::analysed("condenser_door", {{"title: Sample-fridge condenser on the right rear door", "title: '<script>\"&\"</script>'"},
                                                                                  {"lower rail", "lo\\\"><script>wer"},
                                                                                  {"name: condenser unit", "name: 'unit <b>&amp;\"'"}}));
    report::RecordInputs in;
    in.layout = d.analysis.layout.get();
    const std::string page = report::record_html(*d.analysis.outcome, in);
    CHECK_FALSE(contains(page, "<script"));
    CHECK_FALSE(contains(page, "<b>&amp;\""));
    CHECK(contains(page, "unit &lt;b&gt;&amp;amp;&quot;"));
    CHECK(contains(page, "data-part=\"unit &lt;b&gt;&amp;amp;&quot;\""));
    CHECK(contains(page, "&lt;script&gt;&quot;&amp;&quot;&lt;/script&gt;"));
}

TEST_CASE("bytes that are no UTF-8 and control characters become the replacement character")
{
    const std::string bad = "\xEF\xBF\xBD";
    CHECK(report::escaped("caf\xe9") == "caf" + bad);
    CHECK(report::escaped("\xC0\xAF") == bad + bad);          // overlong
    CHECK(report::escaped("\xED\xA0\x80") == bad + bad + bad); // surrogate
    CHECK(report::escaped("\xF5\x80\x80\x80") == bad + bad + bad + bad);
    CHECK(report::escaped(std::string("a\0b\x1b", 4)) == "a" + bad + "b" + bad);
    CHECK(report::escaped("tab\tline\n\xC2\xB2 \xE2\x82\xAC \xF0\x9F\x94\xA9") == "tab\tline\n\xC2\xB2 \xE2\x82\xAC \xF0\x9F\x94\xA9");
    CHECK(report::escaped("\xE2\x82") == bad + bad);           // cut off
    CHECK(report::escaped("<&>\"'") == "&lt;&amp;&gt;&quot;&#39;");
}

TEST_SUITE_END();
