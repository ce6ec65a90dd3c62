#include "yaml/document.h"

#include "yaml/bytes.h"
#include "yaml/events.h"

#include <array>
#include <sstream>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

namespace thinskin::yaml {
namespace {

/// The library's messages say what its grammar missed; a fitter needs to know what to look at.
std::string in_plain_words(const std::string& library_message)
{
    struct Words { std::string_view part, plain; };
    static constexpr std::array words = {
        Words{"end of map flow", "a { is not closed before this place, or a comma is missing"},
        Words{"end of sequence flow", "a [ is not closed before this place, or a comma is missing"},
        Words{"end of map", "this line does not belong to the block above: check its indentation, and that each key has a colon and a space after it"},
        Words{"end of sequence", "this line does not belong to the list above: check its indentation and its dash"},
        Words{"illegal map value", "a colon too many on this line, or a line that is indented too far: put text with a colon in quotes"},
        Words{"illegal map key", "a key cannot stand here: check the indentation"},
        Words{"illegal block entry", "a list dash cannot stand here: put it on a line of its own, indented below its key"},
        Words{"illegal flow end", "a ] or } without its opening bracket"},
        Words{"illegal EOF in scalar", "a quoted text is not closed"},
        Words{"illegal document indicator", "a quoted text is not closed"},
        Words{"unknown escape", "a backslash in \"...\" that means nothing: write \\\\ or use '...'"},
        Words{"unknown token", "no value can start with this character: put the text in quotes"},
        Words{"anchor", "anchors and aliases (& and *) are not used in case files: put a text that starts with & or * in quotes"},
        Words{"alias", "anchors and aliases (& and *) are not used in case files: put a text that starts with & or * in quotes"},
        Words{"tag", "tags (!) are not used in case files: put a text that starts with ! in quotes"},
    };
    for (const Words& w : words)
        if (library_message.find(w.part) != std::string::npos) return std::string(w.plain);
    return "this cannot be read as YAML: " + library_message;
}

Document unusable(base::Diagnostic error)
{
    Document d;
    d.errors = {std::move(error)};
    return d;
}

/// What stands after the end of the first document.
void finish(YAML::Parser& parser, TreeBuilder& builder, Document& out, std::string_view text, const LineTable& lines)
{
    try {
        parser.HandleNextDocument(builder);
        out.usable = true;
    } catch (const Stop& stop) {
        std::size_t at = 0;
        for (int line = 1; line < stop.error.at.line; ++line) at = text.find('\n', at) + 1;
        const bool marked = text.substr(at, 3) == "---";
        out.usable = marked;
        base::Diagnostic d{stop.error.at, "", "a second document (---) starts here: a case file holds one case", ""};
        if (!marked) d = {lines.place(at), "", in_plain_words("end of map"), ""};
        if (!marked) out.errors.clear();
        out.errors.push_back(std::move(d));
    }
}

} // namespace

const Node* Node::find(std::string_view key) const
{
    for (const Entry& e : entries)
        if (e.key == key) return &e.value;
    return nullptr;
}

Document parse(std::string_view raw, const std::string& file_name, const Limits& limits)
{
    if (auto wrong = check_bytes(raw, file_name, limits.bytes)) return unusable(std::move(*wrong));
    const std::string_view text = without_mark(raw);
    const LineTable lines(text, file_name);
    std::istringstream in{std::string(text)};
    Document out;
    try {
        YAML::Parser parser(in);
        TreeBuilder builder(lines, limits, out);
        if (!parser.HandleNextDocument(builder)) return unusable({{file_name, 1, 1}, "", "the file is empty", ""});
        finish(parser, builder, out, text, lines);
    } catch (const Stop& stop) {
        return unusable(stop.error);
    } catch (const YAML::Exception& e) {
        return unusable({lines.place(e.mark.line, e.mark.column), "", in_plain_words(e.msg), ""});
    }
    return out;
}

} // namespace thinskin::yaml
