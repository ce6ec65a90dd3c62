#pragma once
#include "presentation/inputs.h"

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

struct ImFont;

namespace thinskin::gui {

struct JobEvents {
    std::optional<FieldEdit> edit;              ///< what was typed or chosen; may be a refusal with its reason
    std::string chosen_part;                    ///< a section was clicked: its part on the drawing
};

/// The left column: inputs in the order of the job. Reads the document's groups and returns edits; keeps only drafts of what is
/// being typed and which sections are open.
class JobPanel {
public:
    JobEvents show(const std::vector<InputGroup>& groups, const model::Case* c, UnitSystem units, const std::string& chosen_part);
    void open_part(const std::string& part) { open_wanted_ = part; }
    /// Text under edit is put in even when its field is no longer drawn.
    [[nodiscard]] bool typing() const { return !draft_.id.empty(); }

private:
    struct Draft { std::string id, text; Field field; int coordinate = -1; bool drawn = false; };
    void group_head(int number, const InputGroup& g, const model::Case* c, JobEvents& e);
    void section(const Section& s, const model::Case* c, const std::string& chosen_part, JobEvents& e);
    void field(const Field& f, JobEvents& e);
    void input(const Field& f, int coordinate, const std::string& value, float width, JobEvents& e);
    void pick(const Field& f, float width, JobEvents& e);
    void put_in(JobEvents& e);
    void parts_to_add(const model::Case& c, JobEvents& e);

    Draft draft_;
    std::set<std::string> open_;
    bool first_look_ = true;
    std::string open_wanted_;
    UnitSystem units_ = UnitSystem::metric;
    const model::Case* case_ = nullptr;         ///< of the frame
};

} // namespace thinskin::gui
