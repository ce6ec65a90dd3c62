#include "casefile/starter.h"

#include "casefile/reader.h"
#include "casefile/starter_texts.h"
#include "casefile/write_visitor.h"

#include <stdexcept>

namespace thinskin::casefile {

namespace {

/// What else may be given, as comments: what is not given is not run, and said so.
std::string offered(const StarterText& s)
{
    if (s.offers.empty()) return "";
    std::string text = "\n# Also, where you know it (put it under its block with your own figures; what is not given is not run, and the output says so):\n";
    for (const std::string_view line : s.offers) text += "#   " + std::string(line) + "\n";
    return text;
}

} // namespace

std::vector<std::string> starter_kinds()
{
    std::vector<std::string> kinds;
    for (const StarterText& s : starter_texts()) kinds.emplace_back(s.kind);
    return kinds;
}

std::string starter(const std::string& kind)
{
    for (const StarterText& s : starter_texts()) {
        if (s.kind != kind) continue;
        const ReadResult read = read_text(std::string(s.text), std::string(s.kind));
        if (!read.value) throw std::logic_error("the starter text " + kind + " does not read");
        const std::string head = "# Starter case: " + std::string(s.purpose) +
                                 ".\n# Put your own figures in; each stands with its unit. Keys and words: docs/case_file.md.\n\n";
        return head + yaml::emit(WriteVisitor(*read.value, Show::starter).tree()) + offered(s);
    }
    throw std::invalid_argument("there is no starter case \"" + kind + "\"");
}

} // namespace thinskin::casefile
