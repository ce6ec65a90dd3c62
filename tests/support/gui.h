#pragma once
#include "document/document.h"
#include "presentation/inputs.h"
#include "support/cases.h"

#include <cstdlib>
#include <filesystem>

namespace thinskin::tests {

/// A folder of its own that goes away with the test.
class Folder {
public:
    Folder()
    {
        std::string name = (std::filesystem::temp_directory_path() / "thinskin-test-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~Folder()
    {
        std::error_code none;
        std::filesystem::remove_all(path_, none);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] std::string operator/(const std::string& name) const { return path_ + "/" + name; }
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

inline std::string bytes_of(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    std::stringstream all;
    all << in.rdbuf();
    return all.str();
}

inline void write_bytes(const std::string& path, const std::string& text) { std::ofstream(path, std::ios::binary) << text; }

/// An edit offered by the window, taken: no reason against it, no error of the file, no comment lost.
inline void take(gui::Document& d, const gui::FieldEdit& e)
{
    INFO(e.why);
    REQUIRE(e.ok());
    const gui::Applied a = d.apply(e.edit);
    const std::string first = a.errors.empty() ? "" : base::format(a.errors.front());
    INFO(first);
    REQUIRE(a.ok);
    CHECK_FALSE(a.comments_lost);
}

inline gui::Document demo_document() { return {edited_text("condenser_door"), "condenser_door.yaml"}; }

} // namespace thinskin::tests
