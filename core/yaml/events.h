#pragma once
#include "yaml/bytes.h"
#include "yaml/document.h"

#include <unordered_map>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/mark.h>

namespace thinskin::yaml {

/// Thrown out of the library when reading must not go on; holds the one error to report.
struct Stop {
    base::Diagnostic error;
};

/// Builds the tree from parser events, so that anchors, depth, count and duplicate keys are seen where they stand and
/// nothing is ever expanded.
class TreeBuilder final : public YAML::EventHandler {
public:
    TreeBuilder(const LineTable& lines, const Limits& limits, Document& out) : lines_(lines), limits_(limits), out_(out) {}

    void OnDocumentStart(const YAML::Mark& mark) override;
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, const std::string& value) override;
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value style) override;
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value style) override;
    void OnMapEnd() override { close(); }

private:
    struct Open {
        Node node;
        bool has_key = false;
        bool drop_value = false; ///< the value belongs to a key that was refused
        std::string key;
        base::Location key_at;
        std::size_t key_offset = 0;
        std::unordered_map<std::string, int> lines; ///< key -> line; a long map must not cost the square of its length
    };

    [[nodiscard]] Node start(const YAML::Mark& mark, Node::Kind kind, const std::string& tag, YAML::anchor_t anchor);
    void open(Node node);
    void close();
    void add(Node node);
    void take_key(Open& map, const Node& key);
    void take_value(Open& map, Node value);
    void report(const base::Location& at, std::string message, std::string hint = {});

    const LineTable& lines_;
    const Limits& limits_;
    Document& out_;
    std::vector<Open> stack_;
    int count_ = 0;
    int documents_ = 0;
};

} // namespace thinskin::yaml
