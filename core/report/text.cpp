#include "report/text.h"

#include "base/status.h"
#include "report/figures.h"
#include "report/table.h"
#include "report/text_parts.h"
#include "report/words.h"

#include <cctype>
#include <fmt/format.h>

namespace thinskin::report {
namespace {

using base::Verdict;

std::string upper(std::string_view text)
{
    std::string s(text);
    for (char& c : s) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return s;
}

std::string coloured(const std::string& text, Verdict v, bool colour)
{
    if (!colour) return text;
    const char* code = v == Verdict::pass ? "\033[1;32m" : v == Verdict::not_covered ? "\033[1;33m" : "\033[1;31m";
    return code + text + "\033[0m";
}

/// What governs, when the pipeline has not put it into words.
std::string composed_headline(const Outcome& o)
{
    if (o.verdict == Verdict::not_solved) return o.not_solved.empty() ? "no equilibrium was found" : o.not_solved.front();
    if (!o.governing) return "no check gave a figure";
    const results::Check& g = *o.governing;
    if (!g.has_numbers()) return fmt::format("{} ({})", g.title, g.note);
    return fmt::format("{} governs in load case {}: margin {}", g.title, g.load_case, margin_text(g.margin()));
}

struct FirstLine { std::string verdict, rest; };

/// "FAILS: the rail ..." brings its verdict along; any other headline gets the plain verdict in front.
FirstLine first_line(const Outcome& o)
{
    const std::string text = o.headline.empty() ? composed_headline(o) : o.headline;
    const std::string word = upper(base::name(o.verdict));
    const std::string before = text.substr(0, text.find(':'));
    const bool has_verdict = before.size() < text.size() && before == upper(before) && before.rfind(word, 0) == 0;
    return has_verdict ? FirstLine{before, text.substr(before.size())} : FirstLine{word, ": " + text};
}

std::string judgement_count(const Outcome& o)
{
    if (o.headline.find("judgement") != std::string::npos) return "";
    int n = 0;
    for (const results::Group& g : o.groups) n += g.judgements;
    if (n == 0) return "";
    return fmt::format("{} check{} pass{} on judgement (a stated analogy or bound); --strict counts such as not covered.",
                       n, n == 1 ? "" : "s", n == 1 ? "es" : "");
}

/// "allowable_strength" as in the case file becomes "allowable strength".
std::string words(std::string key)
{
    for (char& c : key)
        if (c == '_') c = ' ';
    return key;
}

std::string case_lines(const Outcome& o, const TextOptions& t)
{
    std::string s = fmt::format("\nCase    {}{}\n", o.case_file, o.title.empty() ? "" : "  (" + o.title + ")");
    s += fmt::format("Rules   {}{}\n", words(o.rules), t.strict ? ", strict: judgement counts as not covered" : "");
    const results::Weight& w = o.weight;
    if (w.total_kg > 0)
        s += fmt::format("Weight  item {} kg, brackets {} kg, reinforcement {} kg, bare door {} kg: {} kg together\n", fixed(w.item_kg, 1),
                         fixed(w.brackets_kg, 1), fixed(w.reinforcement_kg, 1), fixed(w.door_kg, 1), fixed(w.total_kg, 1));
    const std::string factor = o.dynamic_factor > 0 ? ", dynamic factor " + figure(o.dynamic_factor) : "";
    if (!o.dynamic_basis.empty()) s += wrapped("Road    ", fmt::format("{}{}. {}", words(o.dynamic_basis), factor, o.dynamic_derivation), t.width);
    return s;
}

} // namespace

std::string verdict_lines(const Outcome& o, const TextOptions& t)
{
    const FirstLine first = first_line(o);
    std::string s = coloured(first.verdict, o.verdict, t.colour) + first.rest + (o.single_loss ? " " + o.single_loss->headline : "") + "\n";
    const bool introduced = o.advice.find(": ") < 20;
    if (!o.advice.empty()) s += wrapped(introduced ? "" : "What would help: ", o.advice, t.width);
    if (const std::string on = stands_on_words(o); !on.empty()) s += wrapped("", on, t.width);
    const std::string judged = judgement_count(o);
    if (!judged.empty()) s += wrapped("", judged, t.width);
    return s;
}

std::string caution_lines(const TextOptions& t) { return wrapped("", base::caution_text, t.width); }

std::string group_lines(const Outcome& o, const TextOptions&)
{
    if (o.groups.empty()) return "";
    const bool solved = o.verdict != Verdict::not_solved;
    Table table({{"group"}, {"status"}, {"least margin", Align::right}, {"part"}, {"check"}, {"remarks"}});
    for (const results::Group& g : o.groups)
        table.row({g.name, std::string(base::name(g.status)), g.least_margin && solved ? margin_text(*g.least_margin) : "-", g.part, g.check,
                   group_remark(g)});
    return heading("Groups") + table.text();
}

std::string check_text(const Outcome& o, const TextOptions& t)
{
    std::string s = verdict_lines(o, t) + caution_lines(t) + case_lines(o, t);
    if (!o.not_solved.empty()) s += heading("Not solved") + bullet_list(o.not_solved, t.width);
    s += group_lines(o, t) + single_loss_lines(o, t) + margin_table(o, t) + not_covered_lines(o, t);
    if (t.detail) s += check_details(o, t);
    s += load_path_lines(o) + skin_lines(o, t) + frequency_lines(o, t) + life_lines(o, t) + wind_lines(o, t) + door_lines(o, t) + stack_lines(o);
    if (t.detail) s += force_details(o, t);
    s += assumption_lines(o, t) + list_lines(o, t) + balance_lines(o, t);
    return s + "\n" + caution_lines(t);
}

} // namespace thinskin::report
