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
    if (!base::has_errors(out.diagnostics)) out.value = std::move(c);
    return out;
}

ReadResult read_file(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    if (!in) return failed(path, "the file cannot be opened: check its name and whether it may be read");
    // One byte more than the limit tells that the file is too large without reading all of it.
    std::string text(yaml::Limits{}.bytes + 1, '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad() || (in.fail() && !in.eof())) return failed(path, "the file cannot be read: is it a folder?");
    text.resize(static_cast<std::size_t>(in.gcount()));
    return read_text(std::move(text), path);
}

} // namespace thinskin::casefile
