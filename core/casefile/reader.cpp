#include "casefile/reader.h"

#include "casefile/read_visitor.h"
#include "casefile/rules.h"
#include "yaml/document.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <tuple>

namespace thinskin::casefile {
namespace {

ReadResult failed(const std::string& file, std::string message)
{
    ReadResult r;
    r.diagnostics.push_back({{file, 0, 0}, "", std::move(message), "", base::Severity::error});
    return r;
}

/// In the order of the file; the tree, the values and the rules each found theirs on their own.
void sort_by_place(std::vector<base::Diagnostic>& all)
{
    std::stable_sort(all.begin(), all.end(), [](const base::Diagnostic& a, const base::Diagnostic& b) {
        return std::tie(a.at.line, a.at.column) < std::tie(b.at.line, b.at.column);
    });
}

/// All of a file, at most one byte more than the limit: that tells that it is too large. Nothing, and why, when it cannot be read.
std::optional<std::string> bytes_of(const std::string& path, std::string& why)
{
    std::ifstream in(path, std::ios::binary);
    if (!in) return why = "the file cannot be opened: check its name and whether it may be read", std::nullopt;
    std::string text(yaml::Limits{}.bytes + 1, '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad() || (in.fail() && !in.eof())) return why = "the file cannot be read: is it a folder?", std::nullopt;
    text.resize(static_cast<std::size_t>(in.gcount()));
    return text;
}

template <class Own> void take_rows(std::vector<Own>& into, std::vector<Own>& from)
{
    for (Own& r : from) {
        r.shared = true;
        into.push_back(std::move(r));
    }
}

/// The rows of the shared file behind those of the case; its errors stand in its own lines.
std::vector<base::Diagnostic> add_shared_rows(model::Case& c, const ReadResult& of_case)
{
    const auto at = of_case.places.find("catalogue.file");
    const base::Location where = at == of_case.places.end() ? base::Location{} : at->second;
    const auto one = [&where](std::string message) { return std::vector<base::Diagnostic>{{where, "catalogue.file", std::move(message), "", base::Severity::error}}; };
    if (c.own.file.find_first_of("/\\") != std::string::npos) return one("expected the name of a file in the folder of the case, without a path");
    const auto folder = c.file.find_last_of("/\\");
    const std::string path = (folder == std::string::npos ? "" : c.file.substr(0, folder + 1)) + c.own.file;
    std::string why;
    const auto text = bytes_of(path, why);
    if (!text) return one(path + ": " + why);
    yaml::Document doc = yaml::parse(*text, path);
    ReadResult of_rows;
    of_rows.diagnostics = std::move(doc.errors);
    if (!doc.usable) return of_rows.diagnostics;
    model::OwnRows rows;
    model::Case notes;
    ReadVisitor(of_rows).read_rows(doc.root, rows, notes);
    for (base::Diagnostic& d : of_rows.diagnostics) // written as a case is
        if (d.key_path == "catalogue.catalogue" || d.key_path == "catalogue.format") d.hint = "a shared file holds the lists of rows alone, without catalogue above them";
    if (!rows.file.empty()) of_rows.diagnostics.push_back({of_rows.places["catalogue.file"], "catalogue.file", "a shared file names no further file", "", base::Severity::error});
    take_rows(c.own.materials, rows.materials);
    take_rows(c.own.bolt_grades, rows.bolt_grades);
    take_rows(c.own.screws, rows.screws);
    take_rows(c.own.rivets, rows.rivets);
    take_rows(c.own.roads, rows.roads);
    take_rows(c.own.base_pulses, rows.base_pulses);
    c.own.file_text = *text;
    return of_rows.diagnostics;
}

/// Where names stand that only the catalogue knows: it is asked later.
void place_names(const std::map<std::string, base::Location>& places, model::Road& road)
{
    const auto place = [&](const char* path) { return places.count(path) > 0 ? places.at(path) : road.at; };
    road.surface_at = place("road.surface");
    road.pulse_at = place("road.pulse");
}

} // namespace

ReadResult read_text(std::string text, std::string file_name)
{
    yaml::Document doc = yaml::parse(text, file_name);
    ReadResult out;
    out.diagnostics = std::move(doc.errors);
    if (!doc.usable) return out;
    model::Case c;
    c.file = file_name;
    c.text = std::move(text);
    ReadVisitor(out).read(doc.root, c);
    if (doc.root.kind == yaml::Node::Kind::map) // otherwise nothing was read that a rule could speak about
        for (base::Diagnostic& d : check_rules(c, out.places)) {
            if (d.at.file.empty()) d.at = doc.root.at;
            out.diagnostics.push_back(std::move(d));
        }
    if (c.road) place_names(out.places, *c.road);
    sort_by_place(out.diagnostics);
    if (!c.own.file.empty()) {
        std::vector<base::Diagnostic> more = add_shared_rows(c, out);
        sort_by_place(more);
        out.diagnostics.insert(out.diagnostics.end(), more.begin(), more.end());
    }
    if (!base::has_errors(out.diagnostics)) out.value = std::move(c);
    return out;
}

ReadResult read_file(const std::string& path)
{
    std::string why;
    auto text = bytes_of(path, why);
    return text ? read_text(std::move(*text), path) : failed(path, why);
}

} // namespace thinskin::casefile
