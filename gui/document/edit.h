#pragma once
#include "casefile/edit.h"

#include <string>
#include <vector>

namespace thinskin::gui {

/// What a panel returns: changes of the case file's text under one name in the undo list.
struct Edit {
    std::string name;                          ///< "Move L2", "Thickness of the skin": as the undo menu shows it
    std::vector<casefile::Change> changes;
    /// Not empty: successive edits with the same text are one step of the undo list (a drag, arrow keys held down), until
    /// Document::end_drag().
    std::string drag = {};
};

} // namespace thinskin::gui
