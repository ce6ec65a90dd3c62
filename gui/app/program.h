#pragma once
#include "app/commands.h"
#include "app/dialogs.h"
#include "app/session.h"
#include "panels/job.h"
#include "panels/studies.h"

#include <chrono>
#include <deque>
#include <functional>
#include <utility>
#include <string>
#include <vector>

namespace thinskin::gui {

/// The whole screen, frame by frame. Knows Dear ImGui but neither GLFW nor OpenGL: tests run it without a window.
class Program {
public:
    explicit Program(Session& s) : s_(s) {}

    /// One frame, between ImGui::NewFrame() and ImGui::Render().
    void frame();
    void run(Command c);
    void dropped(const std::string& path);
    void close_asked();                         ///< by the window's own button
    [[nodiscard]] bool ended() const { return dialogs_.quit; }
    /// Nothing is being worked out and nothing waits to be.
    [[nodiscard]] bool settled() const;
    /// What is drawn is the document, by linear theory at least.
    [[nodiscard]] bool is_drawn() const;
    /// Letters have another size now: the caller builds the fonts anew.
    [[nodiscard]] float wanted_scale(float display) const { return display * static_cast<float>(s_.settings.font_scale); }
    /// For how long the figures on the screen have not been those of the document, ms; 0: they are. Nothing is dragged: none.
    [[nodiscard]] std::optional<double> figures_age() const;
    [[nodiscard]] const Sheet& sheet() const { return sheet_; }
    [[nodiscard]] std::string window_title() const;
    void ask_recovery() { dialogs_.ask(Dialogs::Kind::recover); }
    [[nodiscard]] Session& session() { return s_; }

private:
    void fetch();
    void note_state();
    void menu();
    void recent_menu();
    void caution(float top, float tall);
    void status_line(float top);
    [[nodiscard]] std::string working_words() const;
    void job_column();
    [[nodiscard]] std::vector<Spot> spots(const std::vector<std::string>& keys) const;
    void sheet_column();
    void margins_column();
    void load_case_bar();
    void studies_drawer();
    void show_studies(bool spread);
    void fetch_study();
    void start_study();
    void stop_study();
    void take(std::size_t scheme);
    void drag_on_sheet(const SheetDrag& d);
    void nudge();
    void choose(const drawing::Part& part);
    void choose_margin(const std::string& check, const std::string& load_case);
    void step_margin(int by);
    void step_load_case(int by);
    void rows_anew();
    [[nodiscard]] const Answer* drawn() const;
    [[nodiscard]] std::string state_words() const;
    [[nodiscard]] std::string linear_words() const;
    [[nodiscard]] std::vector<std::string> trouble() const;
    [[nodiscard]] std::string words_about(const drawing::Part& p);
    [[nodiscard]] std::string compared_with_words() const;
    void divider(const char* id, float& width, float sign, float least, float most);

    Session& s_;
    Sheet sheet_;
    JobPanel job_;
    Dialogs dialogs_;
    StudiesPanel studies_panel_;
    ProposalShown proposal_;                    ///< of s_.studies, in words
    SpreadShown spread_;

    // Made once for each revision and each answer, not each frame.
    std::uint64_t inputs_of_ = 0;
    std::vector<InputGroup> inputs_;
    const Answer* rows_of_ = nullptr;
    std::string rows_key_;
    std::optional<VerdictLines> verdict_;
    std::vector<GroupRow> groups_;
    std::string stands_on_;
    bool told_of_copy_ = false;
    std::optional<std::uint64_t> settled_file_; ///< Session::opened of the last file that got its figures before anybody changed it
    std::vector<MarginRow> rows_;
    std::optional<MarginCard> card_;
    std::vector<LoadCaseRow> cases_;
    const results::Outcome* marked_ = nullptr;  ///< whose margins stand at the parts
    std::uint64_t marked_version_ = 0;
    std::map<std::string, std::string> notes_;
    std::map<std::string, base::Status> statuses_;
    std::shared_ptr<const model::Case> grips_for_;
    std::optional<drawing::Part> grips_part_;
    std::vector<Handle> grips_;
    std::vector<Spot> advice_at_, help_at_;     ///< where the advice leads
    std::string spots_of_;
    const Answer* spots_rows_ = nullptr;
    std::shared_ptr<const Answer> drawn_;       ///< last answer with a layout
    std::uint64_t sheet_version_ = 0;

    std::shared_ptr<const model::Case> about_of_;
    std::optional<drawing::Part> about_part_;
    std::string about_;                         ///< words_about() that part
    std::string hint_;                          ///< about what is under the pointer; instead of the last message
    std::optional<Handle> handle_;              ///< being dragged
    Vec3 handle_from_{};
    std::string new_part_;                      ///< was added; is chosen when it is on the drawing
    bool dragging_ = false;
    std::deque<std::pair<std::uint64_t, std::chrono::steady_clock::time_point>> states_; ///< since when the document is so, while dragging
    float left_ = 0, right_ = 0;                ///< widths of the side columns at scale 1
    float drawer_ = 0;                          ///< height of the drawer below the drawing at scale 1
};

} // namespace thinskin::gui
