#pragma once
#include "casefile/reader.h"
#include "pipeline/analyse.h"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace thinskin::tests {

using Edits = std::vector<std::pair<std::string, std::string>>;

/// The text of a shipped case with every occurrence of each first replaced by its second; a first that is not there fails the test.
inline std::string edited_text(const std::string& name, const Edits& edits = {})
{
    std::ifstream in(std::string(THINSKIN_SOURCE_DIR) + "/cases/" + name + ".yaml");
    std::stringstream all;
    all << in.rdbuf();
    std::string text = all.str();
    for (const auto& edit : edits) {
        const std::string &from = edit.first, &to = edit.second;
        INFO("text to replace: ", from);
        REQUIRE(text.find(from) != std::string::npos);
        for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) text.replace(at, from.size(), to);
    }
    return text;
}

inline model::Case read_case(const std::string& text)
{
    const casefile::ReadResult r = casefile::read_text(text, "test.yaml");
    std::string first = r.diagnostics.empty() ? "" : base::format(r.diagnostics.front());
    INFO(first);
    REQUIRE(r.value);
    return *r.value;
}

/// A case with what came out of it; the layout in the analysis points into the case.
struct Analysed {
    std::unique_ptr<model::Case> source;
    pipeline::Analysis analysis;
};

inline Analysed analyse_anew(const std::string& text, pipeline::Depth depth = pipeline::Depth::margins)
{
    Analysed a;
    a.source = std::make_unique<model::Case>(read_case(text));
    pipeline::Workspace w;
    a.analysis = pipeline::analyse(*a.source, w, depth);
    std::string first = a.analysis.diagnostics.empty() ? "" : base::format(a.analysis.diagnostics.front());
    INFO(first);
    REQUIRE(a.analysis.outcome);
    REQUIRE(a.analysis.layout);
    return a;
}

/// A shipped case, edited or not, worked out once a program whoever asks for it: large deflection takes seconds.
inline const Analysed& analysed(const std::string& name, const Edits& edits = {}, pipeline::Depth depth = pipeline::Depth::margins)
{
    static std::map<std::pair<std::string, pipeline::Depth>, Analysed> all;
    const auto key = std::make_pair(edited_text(name, edits), depth);
    const auto known = all.find(key);
    return known != all.end() ? known->second : all.emplace(key, analyse_anew(key.first, depth)).first->second;
}

inline const results::Outcome& check_case(const std::string& name, const Edits& edits = {}, pipeline::Depth depth = pipeline::Depth::margins)
{
    return *analysed(name, edits, depth).analysis.outcome;
}

inline const results::Check* row(const results::Outcome& o, const std::string& id)
{
    for (const results::Check& c : o.checks)
        if (c.id == id) return &c;
    return nullptr;
}

inline const results::Group* group(const results::Outcome& o, const std::string& name)
{
    for (const results::Group& g : o.groups)
        if (g.name == name) return &g;
    return nullptr;
}

inline const results::FastenerForce& fastener(const results::Outcome& o, const std::string& name, const std::string& load_case)
{
    for (const results::FastenerForce& f : o.fasteners)
        if (f.name == name && f.load_case == load_case) return f;
    FAIL("no fastener " << name << " in " << load_case);
    return o.fasteners.front();
}

/// Names of all case files of the project, sorted.
inline const std::vector<std::string>& shipped_cases()
{
    static const std::vector<std::string> all = [] {
        std::vector<std::string> names;
        for (const auto& file : std::filesystem::directory_iterator(std::string(THINSKIN_SOURCE_DIR) + "/cases"))
            if (file.path().extension() == ".yaml") names.push_back(file.path().stem().string());
        std::sort(names.begin(), names.end());
        return names;
    }();
    // Builds with sanitizers take ten times as long: those that are solved fast.
    static const std::vector<std::string> few{"condenser_door", "condenser_door_made_good", "ladder_rack", "sliding_door", "plain_panel"};
    if (std::getenv("THINSKIN_FEW_CASES") != nullptr) return few;
    return all;
}

} // namespace thinskin::tests
