#pragma once
#include "results/results.h"
#include "worker/worker.h"
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace thinskin::gui {

struct Session;

/// Questions over the sheet, one at a time. Each ends with a call of what was asked for, or with nothing.
class Dialogs {
public:
    enum class Kind { none, open, save_as, record, new_case, unsaved, changed_outside, recover, errors, keys };
    void ask(Kind k) { wanted_ = k; }
    /// Asks to save what would be lost, then goes on; at once when nothing would be lost.
    void unless_unsaved(Session& s, std::function<void()> then);
    void show(Session& s);
    [[nodiscard]] bool any() const { return kind_ != Kind::none || wanted_ != Kind::none; }
    bool quit = false;                          ///< the program may end

private:
    void begin(Session& s);
    void files(Session& s);
    void starters(Session& s);
    void unsaved(Session& s);
    void changed_outside(Session& s);
    void recover(Session& s);
    void errors(Session& s);
    void keys();
    void file_done(Session& s);
    void close();

    Kind kind_ = Kind::none, wanted_ = Kind::none;
    std::function<void()> then_;
    std::string folder_, name_, why_, text_;
    std::string write_over_;                    ///< file that there is already and that was named a first time
};

/// Opens a file into the session; false: it cannot be read (said in the session's message).
bool open_into(Session& s, const std::string& path);
/// Saves; false: not yet (never saved before, changed outside, failed). `dialogs` goes on asking where that helps.
bool save_now(Session& s, Dialogs& dialogs);
/// Writes record.html, result.json and case.yaml into a folder. Says how it went.
void write_record(Session& s, const std::string& folder);

} // namespace thinskin::gui
