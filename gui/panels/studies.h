#pragma once
#include "presentation/proposals.h"

#include <optional>

namespace thinskin::gui {

/// What the drawer below the drawing shows: schemes that hold, or the spread over what nobody measured.
struct StudiesShown {
    bool spread = false;                        ///< the second of the two
    const ProposalShown* proposal = nullptr;    ///< null: none yet
    const SpreadShown* spread_found = nullptr;
    bool older = false;                         ///< found for another state of the case than that on the screen
    bool stopped = false;                       ///< before its end
    bool running = false, stopping = false;     ///< of the one that is shown
    bool can_start = true;                      ///< a case is open and reads without errors
    std::string progress;
    float share = -1;                           ///< done, 0 .. 1; < 0: not known
    bool robust = true;
    int taken = -1;                             ///< number of the scheme that the case is now; -1: none
    std::string why;                            ///< it could not be done
};

struct StudiesEvents {
    bool start = false, stop = false, close = false;
    std::optional<bool> spread;                 ///< the other one is wanted
    std::optional<bool> robust;
    std::optional<std::size_t> take;            ///< row of the scheme
};

class StudiesPanel {
public:
    /// Fills the room that is left in the current window.
    StudiesEvents show(const StudiesShown& s);

private:
    void head(const StudiesShown& s, StudiesEvents& e);
    void controls(const StudiesShown& s, StudiesEvents& e);
    void scheme(const StudiesShown& s, std::size_t i, StudiesEvents& e);
    void schemes(const StudiesShown& s, StudiesEvents& e);
    std::size_t open_ = 0;                      ///< row whose details are shown; past the end: none
    const ProposalShown* of_ = nullptr;
};

} // namespace thinskin::gui
