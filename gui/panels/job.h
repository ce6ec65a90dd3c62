#pragma once
#include "presentation/inputs.h"
#include "presentation/keys.h"

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
    /// Opens the section of a field and gives it the keyboard; a key that is not there yet gets its form.
    void go_to(const Spot& s);
    /// The last edit was not taken: the form that it came from is shown again.
    void not_taken() { if (sent_) adding_ = std::move(sent_); sent_.reset(); }
    void taken() { sent_.reset(); }
    /// Text under edit is put in even when its field is no longer drawn.
    [[nodiscard]] bool typing() const { return !draft_.id.empty() || adding_; }

private:
    struct Draft { std::string id, text; Field field; int coordinate = -1; bool drawn = false; };
    void group_head(int number, const InputGroup& g, const model::Case* c, JobEvents& e);
    void section(const Section& s, const model::Case* c, const std::string& chosen_part, JobEvents& e);
    void field(const Field& f, JobEvents& e);
    void input(const Field& f, int coordinate, const std::string& value, float width, JobEvents& e);
    void pick(const Field& f, float width, JobEvents& e);
    void put_in(JobEvents& e);
    void parts_to_add(const model::Case& c, JobEvents& e);
    void keys_of(const Section& s, const model::Case& c, JobEvents& e);
    void add_to(const std::string& owner, const std::vector<std::string>& can_add, const model::Case& c, float width);
    void begin_adding(const std::string& owner, const std::string& path, const model::Case& c);
    void form(const std::string& owner, JobEvents& e);
    void form_field(std::size_t i, bool& entered);
    [[nodiscard]] bool wanted(const std::string& path);
    void light();

    Draft draft_;
    std::set<std::string> open_;
    bool first_look_ = true;
    std::string open_wanted_;
    struct Adding { std::string owner; NewKey key; std::vector<std::string> texts; bool fresh = true; };
    std::optional<Adding> adding_;              ///< form of a key that is not there yet; owner: the section or group it is shown in
    std::optional<Adding> sent_;                ///< the form that the last edit came from
    std::string add_wanted_, add_owner_;        ///< a form that go_to() asked for
    std::string go_to_;                         ///< path of the field that gets the keyboard in this frame
    std::string lit_;                           ///< path of the field that was led to
    double lit_until_ = 0;                      ///< s
    int scrolls_ = 0;                           ///< frames in which it is still brought into view
    UnitSystem units_ = UnitSystem::metric;
    const model::Case* case_ = nullptr;         ///< of the frame
};

} // namespace thinskin::gui
