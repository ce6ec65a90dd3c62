// The document of the window: its truth is the text, an edit that is refused changes nothing, undo gives the same bytes.
#include "document/document.h"
#include "document/files.h"
#include "document/recovery.h"
#include "document/settings.h"
#include "support/gui.h"

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

using namespace thinskin;
using namespace thinskin::gui;
using casefile::set;

namespace {

Edit move_l1(const std::string& y, const std::string& drag = "") { return {"Move L1", {set("brackets[0].fasteners[0].at[1]", y)}, drag}; }

} // namespace

TEST_SUITE_BEGIN("consistency");

TEST_CASE("document: undo and redo give the bytes they came from")
{
    Document d = tests::demo_document();
    const std::string first = d.text();
    const auto before = d.revision();
    CHECK_FALSE(d.dirty());
    REQUIRE(d.apply(move_l1("425 mm")).ok);
    const std::string second = d.text();
    REQUIRE(d.apply({"Thickness of the skin", {set("panel.skin.thickness", "22 ga")}}).ok);
    CHECK(d.current()->panel.skin.thickness.text == "22 ga");
    CHECK(d.undo_name() == "Thickness of the skin");
    CHECK(d.revision() > before);
    CHECK(d.dirty());
    REQUIRE(d.undo());
    CHECK(d.text() == second);
    CHECK(d.redo_name() == "Thickness of the skin");
    REQUIRE(d.undo());
    CHECK(d.text() == first);
    CHECK_FALSE(d.dirty());
    CHECK_FALSE(d.undo());
    REQUIRE(d.redo());
    CHECK(d.text() == second);
    REQUIRE(d.apply(move_l1("430 mm")).ok); // a new edit takes the way of the old ones
    CHECK_FALSE(d.can_redo());
}

TEST_CASE("document: an edit with errors changes nothing and says where")
{
    Document d = tests::demo_document();
    const std::string text = d.text();
    const auto revision = d.revision();
    for (const Edit& bad : {Edit{"", {set("panel.width", "0 mm")}}, Edit{"", {set("panel.width", "740")}}, Edit{"", {set("panel.widht", "1 mm")}}, Edit{"", {casefile::remove("item.mass")}}, Edit{"", {set("brackets[9].x", "1 mm")}}, Edit{"", {set("road.basis", "gravel")}}}) {
        const Applied a = d.apply(bad);
        CAPTURE(bad.changes.front().path);
        CHECK_FALSE(a.ok);
        REQUIRE_FALSE(a.errors.empty());
        CHECK_FALSE(a.errors.front().message.empty());
        CHECK(d.text() == text);
        CHECK(d.revision() == revision);
        CHECK_FALSE(d.can_undo());
    }
    const Applied same = d.apply({"", {set("panel.width", "740 mm")}});
    CHECK(same.ok);
    CHECK_FALSE(same.changed);
    CHECK_FALSE(d.can_undo());
}

TEST_CASE("document: a drag is one step, and one that ends where it began is none")
{
    Document d = tests::demo_document();
    const std::string first = d.text();
    for (const char* y : {"425 mm", "430 mm", "435 mm"}) REQUIRE(d.apply(move_l1(y, "move L1")).ok);
    d.end_drag();
    REQUIRE(d.apply(move_l1("440 mm", "move L1")).ok);
    d.end_drag();
    REQUIRE(d.undo());
    CHECK(d.current()->brackets[0].fasteners[0].at.y.text == "435 mm");
    REQUIRE(d.undo());
    CHECK(d.text() == first);
    for (const char* y : {"425 mm", "420 mm"}) REQUIRE(d.apply(move_l1(y, "move L1")).ok);
    CHECK(d.text() == first);
    CHECK_FALSE(d.can_undo());
}

TEST_CASE("document: a wrong file opens with its errors, keeps the last good case and is mended step by step")
{
    Document d = tests::demo_document();
    REQUIRE(d.replace_text("By hand", tests::edited_text("condenser_door", {{"width: 740 mm", "width: 740"}, {"mass: 36 kg", "mass: 36"}})).ok);
    CHECK_FALSE(d.readable());
    CHECK(d.diagnostics().size() == 2);
    REQUIRE(d.current());
    CHECK(d.current()->panel.width.text == "740 mm");
    CHECK(d.apply({"Width", {set("panel.width", "750 mm")}}).ok);
    CHECK(d.diagnostics().size() == 1);
    CHECK_FALSE(d.apply({"", {set("panel.height", "high")}}).ok); // not more errors than before
    CHECK(d.apply({"Mass", {set("item.mass", "36 kg")}}).ok);
    CHECK(d.readable());
    CHECK(d.current()->panel.width.text == "750 mm");
}

TEST_CASE("files: save, save as, and what another program did in between")
{
    const tests::Folder folder;
    const std::string file = folder / "a.yaml", text = tests::edited_text("plain_panel");
    tests::write_bytes(file, text);
    Opened o = open_file(file);
    REQUIRE(o.document);
    Document& d = *o.document;
    CHECK(compare_with_disk(d) == Disk::same);
    REQUIRE(d.apply({"Width", {set("panel.width", "777 mm")}}).ok);
    REQUIRE(save(d).kind == Saved::Kind::ok);
    CHECK_FALSE(d.dirty());
    CHECK(tests::bytes_of(file) == d.text());
    CHECK(d.can_undo()); // saving is no step

    tests::write_bytes(file, text + "# by hand\n");
    CHECK(compare_with_disk(d) == Disk::changed);
    REQUIRE(d.apply({"Width", {set("panel.width", "778 mm")}}).ok);
    CHECK(save(d).kind == Saved::Kind::changed_outside);
    CHECK(tests::bytes_of(file).ends_with("# by hand\n"));
    std::string why;
    REQUIRE(reload(d, why));
    CHECK(d.text().ends_with("# by hand\n"));
    CHECK_FALSE(d.dirty());
    REQUIRE(d.undo());
    CHECK(d.current()->panel.width.text == "778 mm");
    CHECK(d.dirty());
    CHECK(save(d, true).kind == Saved::Kind::ok);

    REQUIRE(save_as(d, folder / "b.yaml").kind == Saved::Kind::ok);
    CHECK(d.file() == folder / "b.yaml");
    CHECK(d.current()->file == folder / "b.yaml"); // results name the file
    std::filesystem::remove(folder / "b.yaml");
    CHECK(compare_with_disk(d) == Disk::gone);
    CHECK(save(d).kind == Saved::Kind::ok);
    CHECK(save_as(d, folder / "no/such/folder/c.yaml").kind == Saved::Kind::failed);
    CHECK(d.file() == folder / "b.yaml");
    CHECK_FALSE(open_file(folder.path()).document);
    CHECK_FALSE(open_file(folder / "nothing.yaml").why.empty());
}

TEST_CASE("files: a link stays a link, and a file's permissions stay")
{
    const tests::Folder folder;
    tests::write_bytes(folder / "true.yaml", tests::edited_text("plain_panel"));
    std::filesystem::permissions(folder / "true.yaml", std::filesystem::perms(0640));
    std::filesystem::create_symlink(folder / "true.yaml", folder / "link.yaml");
    Opened o = open_file(folder / "link.yaml");
    REQUIRE(o.document);
    REQUIRE(o.document->apply({"Width", {set("panel.width", "777 mm")}}).ok);
    REQUIRE(save(*o.document).kind == Saved::Kind::ok);
    CHECK(std::filesystem::is_symlink(folder / "link.yaml"));
    CHECK(tests::bytes_of(folder / "true.yaml") == o.document->text());
    CHECK(std::filesystem::status(folder / "true.yaml").permissions() == std::filesystem::perms(0640));
}

TEST_CASE("files: a file that is no case opens with its diagnostics")
{
    for (const char* name : {"bad_utf8", "too_deep", "empty", "syntax_brace", "all_in_one_run"}) {
        CAPTURE(name);
        const Opened o = open_file(std::string(THINSKIN_SOURCE_DIR) + "/tests/bad/" + name + ".yaml");
        REQUIRE(o.document);
        CHECK_FALSE(o.document->readable());
        CHECK_FALSE(o.document->diagnostics().empty());
        CHECK_FALSE(o.document->current());
    }
}

TEST_CASE("starter cases: new, not dirty until edited, never on disk")
{
    REQUIRE_FALSE(starters().empty());
    for (const Starter& s : starters()) {
        CAPTURE(s.kind);
        CHECK_FALSE(s.title.empty());
        Document d = new_document(s.kind);
        CHECK(d.readable());
        CHECK_FALSE(d.dirty());
        CHECK(compare_with_disk(d) == Disk::unsaved);
        CHECK(save(d).kind == Saved::Kind::failed);
        REQUIRE(d.apply({"Width", {set("panel.width", "777 mm")}}).ok);
        CHECK(d.dirty());
    }
}

TEST_CASE("autosave: what a killed program had is found again, what a running one has is not")
{
    const tests::Folder folder;
    const std::string file = folder / "a.yaml", unsaved = folder / "unsaved";
    tests::write_bytes(file, tests::edited_text("plain_panel"));
    const pid_t child = ::fork();
    if (child == 0) { // nothing of the test program may run in the child but this
        Document d = *open_file(file).document;
        d.apply({"Width", {set("panel.width", "777 mm")}});
        Autosave slot(unsaved);
        slot.tick(d, std::chrono::steady_clock::now());
        ::raise(SIGKILL);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));

    Document running = tests::demo_document();
    REQUIRE(running.apply(move_l1("425 mm")).ok);
    Autosave slot(unsaved);
    REQUIRE(slot.tick(running, std::chrono::steady_clock::now()));
    const auto found = Autosave::find(unsaved);
    REQUIRE(found.size() == 1);
    CHECK(found[0].file == file);
    CHECK(found[0].was_on_disk);
    const Document d = Autosave::recover(found[0]);
    CHECK(d.dirty());
    REQUIRE(d.current());
    CHECK(d.current()->panel.width.text == "777 mm");
    CHECK(compare_with_disk(d) == Disk::same);
    Autosave::discard(unsaved, found[0]);
    CHECK(Autosave::find(unsaved).empty());
}

TEST_CASE("autosave: once a pause while there are changes, gone when saved or closed")
{
    const tests::Folder folder;
    const auto start = std::chrono::steady_clock::now();
    const auto files = [&] { return std::filesystem::exists(folder / "u") ? std::distance(std::filesystem::directory_iterator(folder / "u"), {}) : 0; };
    Document d = tests::demo_document();
    {
        Autosave slot(folder / "u");
        CHECK_FALSE(slot.tick(d, start));
        REQUIRE(d.apply(move_l1("425 mm")).ok);
        CHECK(slot.tick(d, start));
        CHECK_FALSE(slot.tick(d, start + slot.pause)); // nothing new
        REQUIRE(d.apply(move_l1("430 mm")).ok);
        CHECK_FALSE(slot.tick(d, start + slot.pause / 2));
        CHECK(slot.tick(d, start + slot.pause));
        CHECK(files() > 0);
        while (d.undo()) {}
        CHECK_FALSE(slot.tick(d, start + 2 * slot.pause));
        CHECK(files() == 0);
        REQUIRE(d.redo());
        CHECK(slot.tick(d, start + 3 * slot.pause));
    }
    CHECK(files() == 0);
    CHECK(Autosave::find(folder / "nothing").empty());
}

TEST_CASE("settings and state come back as they were; a broken file gives defaults")
{
    const tests::Folder folder;
    Settings s;
    s.units = UnitSystem::us;
    s.font_scale = 1.5;
    s.snap = false;
    s.autosave_seconds = 9;
    REQUIRE(save_settings(s, folder / "c"));
    const Settings back = load_settings(folder / "c");
    CHECK(back.units == UnitSystem::us);
    CHECK(back.font_scale == 1.5);
    CHECK_FALSE(back.snap);
    CHECK(back.autosave_seconds == 9);

    State t;
    for (int i = 0; i < 20; ++i) remember_file(t, "/jobs/" + std::to_string(i) + ".yaml");
    remember_file(t, "/jobs/15.yaml");
    t.window_width = 1920;
    t.layout["panel.inputs"] = "320";
    REQUIRE(save_state(t, folder / "s"));
    const State again = load_state(folder / "s");
    CHECK(again.recent.size() == 12);
    CHECK(again.recent.front() == "/jobs/15.yaml");
    CHECK(again.recent[1] == "/jobs/19.yaml");
    CHECK(again.window_width == 1920);
    CHECK(again.layout.at("panel.inputs") == "320");

    tests::write_bytes(folder / "c/settings", "units = miles\nfont_scale = nan\nautosave_seconds = 0\nsnap\n = \n\xFF\n");
    CHECK(load_settings(folder / "c").font_scale == 1.0);
    CHECK(load_settings(folder / "c").autosave_seconds == 5);
    CHECK(load_settings("").units == UnitSystem::metric);
}

TEST_CASE("folders follow the XDG base directory specification")
{
    const auto with = [](const char* config, const char* home) {
        config == nullptr ? ::unsetenv("XDG_CONFIG_HOME") : ::setenv("XDG_CONFIG_HOME", config, 1);
        ::setenv("HOME", home, 1);
        return config_folder();
    };
    const char* old_config = std::getenv("XDG_CONFIG_HOME");
    const std::string home = std::getenv("HOME") != nullptr ? std::getenv("HOME") : "/", config = old_config != nullptr ? old_config : "";
    CHECK(with("/x", "/h") == "/x/thinskin");
    CHECK(with(nullptr, "/h") == "/h/.config/thinskin");
    CHECK(with("relative", "/h") == "/h/.config/thinskin");
    (void)with(old_config != nullptr ? config.c_str() : nullptr, home.c_str());
}

TEST_SUITE_END();
