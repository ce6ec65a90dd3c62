#pragma once
#include "presentation/inputs.h"

/// Keys that a case does not have yet and may get, those it may do without, and the field that a piece of advice speaks about.
namespace thinskin::gui {

/// A key to be added, with the fields that have to be filled in first: nothing that nobody measured is filled in here.
struct NewKey {
    std::string path, label;             ///< "panel.frame.inner", "inner"
    bool entry = false;                  ///< one more entry of the list at `path`
    std::vector<Field> fields;           ///< their paths are below `path`; one with the path itself: the key is a single value
};
/// No fields: the path is not a key that can be added.
[[nodiscard]] NewKey new_key(const model::Case& c, const std::string& path, UnitSystem units);
/// What a field of the form asks for and how it is typed in: "Lower left corner. Across and up, with a comma between: 120, 380".
[[nodiscard]] std::string how_to_fill(const Field& f);
/// One edit from what was typed into the fields, in their order; refused with the first thing that is missing or cannot be read.
/// Optional fields may stay empty.
[[nodiscard]] FieldEdit add_key(const NewKey& k, const std::vector<std::string>& typed_texts);

/// Takes an optional key or block of a section away, with the word that says how it was measured.
[[nodiscard]] FieldEdit remove_key(const model::Case& c, const std::string& path);

/// "another rib", "inner": a path of can_add or can_remove in words, as its section shows it.
[[nodiscard]] std::string key_words(const std::string& section, const std::string& path);

/// Inside presentation: what a section or a group may still get, and what it may do without.
[[nodiscard]] std::vector<std::string> keys_to_add(const Section& s);
[[nodiscard]] std::vector<std::string> keys_to_remove(const Section& s);
[[nodiscard]] std::vector<std::string> lists_to_add(const std::vector<InputGroup>& groups, std::size_t group);
/// Group of the job (0 vehicle and panel, 1 item, 2 fixing, 3 road) and the word for one entry of a list.
[[nodiscard]] std::size_t group_of(const std::string& path);
[[nodiscard]] std::string singular(const std::string& list);

/// Where a key of results::Check::help_at is on the screen.
struct Spot {
    std::string label;                   ///< "upper rail: section", "+ angle"
    std::string section, field;          ///< paths; field empty: the section as a whole
    std::string add;                     ///< key that is not there yet and can be added in that section, or by a button of this path
    [[nodiscard]] bool found() const { return !section.empty() || !add.empty(); }
};
[[nodiscard]] Spot spot_of(const std::vector<InputGroup>& groups, const model::Case& c, const std::string& key);

} // namespace thinskin::gui
