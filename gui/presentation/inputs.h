#pragma once
#include "document/document.h"
#include "document/units.h"

#include <string>
#include <string_view>
#include <vector>

/// Inputs in the order of the job, made from the schema table and the case: a window draws a widget by the kind of the field.
namespace thinskin::gui {

enum class FieldKind { text, choice, quantity, point, list, section, material, fastener_kind, washer };

struct Field {
    std::string path, label, help;       ///< path as Change takes it; label: the key in words
    FieldKind kind = FieldKind::text;
    base::Dimension dimension = base::Dimension::length;
    std::string value;                   ///< as shown in the chosen units; empty: not given and no default
    std::string as_written;              ///< text in the file; empty: default, or not given
    std::vector<std::string> coordinates;///< point and list: each as shown
    std::vector<std::string> choices;    ///< choice, and suggestions for section, material, fastener kind
    std::string unit;                    ///< shown unit of a plain number
    bool required = false, is_default = false, assumed = false; ///< assumed: a default or a word that stands for an unmeasured fact
    bool can_be_removed = false;
    std::string read_only;               ///< reason: "taken from left (mirror)"; empty = may be edited
    std::string measured_from;           ///< of a measured value: offcut, ..., assumed; empty: not a measured value
    std::string error;                   ///< first diagnostic at this path
};

struct Section {
    std::string path, title;             ///< "brackets[0]", "bracket left"
    std::string part;                    ///< name on the drawing, to highlight; may be empty
    std::vector<Field> fields;
    std::vector<std::string> can_add;    ///< optional keys that are not there yet, and lists: paths for new_key()
    std::vector<std::string> can_remove; ///< optional keys and blocks that are written: paths for remove_key()
    bool can_be_removed = false;
};

struct InputGroup { std::string title; std::vector<Section> sections; std::vector<std::string> can_add = {}; };   ///< "Vehicle and panel", "Item", "Fixing", "Road"

[[nodiscard]] std::vector<InputGroup> input_groups(const Document& d, UnitSystem units);

/// A typed text for a field as an edit, or the reason why not. `coordinate`: of a point or list; -1: the value itself (a list in
/// flow form). An empty text removes an optional key.
struct FieldEdit { Edit edit; std::string why, part = {}; /* part: name of the new part that it makes */ [[nodiscard]] bool ok() const { return why.empty(); } };
[[nodiscard]] FieldEdit edit_field(const Field& f, const std::string& typed_text, UnitSystem units, int coordinate = -1);
[[nodiscard]] FieldEdit set_measured_from(const Field& f, const std::string& word);

// Whole parts, with sensible places to start from. Names are new ones ("angle 3", "R5").
[[nodiscard]] FieldEdit add_angle(const model::Case& c);
[[nodiscard]] FieldEdit add_fastener(const model::Case& c, const std::string& bracket);
[[nodiscard]] FieldEdit add_bracket_copy(const model::Case& c, const std::string& bracket);
[[nodiscard]] FieldEdit add_strap(const model::Case& c, const std::string& bracket);
[[nodiscard]] FieldEdit add_gauge(const model::Case& c, double x_mm, double y_mm, UnitSystem units);
[[nodiscard]] FieldEdit add_fastener_kind(const model::Case& c, const std::string& type); ///< bolt, screw, rivet, insert
/// Removes the part at a path of a section or field; refused with a reason where others are copies of it.
[[nodiscard]] FieldEdit remove_part(const model::Case& c, const std::string& path);

/// Kinds of the case, then those to start from that it does not have, with this mark before them.
inline constexpr std::string_view new_kind_mark = "new: ";
[[nodiscard]] std::vector<std::string> kinds_to_choose(const model::Case& c);
/// Name of a kind chosen from that list; a change that makes it, where it is a new one.
[[nodiscard]] std::string kind_chosen(const std::string& choice, std::vector<casefile::Change>& changes);
[[nodiscard]] std::vector<std::string> kinds_through_skin(const model::Case& c);
/// Every fastener of one kind through the skin (from empty: of any) becomes another kind: "swap screws for bolts".
[[nodiscard]] FieldEdit swap_kind(const model::Case& c, const std::string& from, const std::string& to);
/// Another name for the part whose name stands at `path` ("brackets[0].name"), or for the fastener kind "fastener_kinds[M8 bolt]", in all
/// that speak of it.
[[nodiscard]] FieldEdit rename_part(const model::Case& c, const std::string& path, const std::string& name);

} // namespace thinskin::gui
