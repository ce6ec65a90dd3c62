#include "app/dialogs.h"
#include "app/session.h"
#include "casefile/values.h"
#include "report/json.h"
#include "report/record.h"

#include <array>
#include <ctime>
#include <filesystem>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <fstream>

namespace thinskin::gui {
namespace {

namespace fs = std::filesystem;

std::string today()
{
    const std::time_t now = std::time(nullptr);
    std::array<char, 16> text{};
    return std::strftime(text.data(), text.size(), "%Y-%m-%d", std::localtime(&now)) > 0 ? text.data() : "";
}

bool write(const fs::path& path, const std::string& bytes)
{
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    out << bytes;
    out.close();
    return out.good();
}

std::string page(const Answer& a, const results::Outcome& o)
{
    report::RecordInputs in;
    const model::Case& c = *a.source;
    in.job_number = c.job.number;
    in.vehicle = c.job.vehicle;
    in.prepared_by = c.job.prepared_by;
    in.notes = c.job.notes;
    in.date = today();
    for (const casefile::Value& v : casefile::case_values(c))
        in.values.push_back({v.path, v.list ? fmt::format("[{}]", fmt::join(v.items, ", ")) : v.items.front(), casefile::measured_from(c, v.path)});
    in.layout = a.analysis.layout.get();
    return report::record_html(o, in);
}

} // namespace

void write_record(Session& s, const std::string& folder)
{
    const auto a = s.results.shown();
    const bool current = a && a->final && a->outcome() && s.results.state(s.document.revision(), s.document.readable()) == ResultsShown::State::current;
    if (!current) {
        s.say("No record: the figures of the case as it is are not there yet", true);
        return;
    }
    std::error_code e;
    fs::create_directories(folder, e);
    const results::Outcome o = filed(*a);
    const bool ok = !e && write(fs::path(folder) / "record.html", page(*a, o)) && write(fs::path(folder) / "result.json", report::check_json(o)) && write(fs::path(folder) / "case.yaml", s.document.text());
    s.say(ok ? "Record written: " + (fs::path(folder) / "record.html").string() : folder + ": the record could not be written", !ok);
}

} // namespace thinskin::gui
