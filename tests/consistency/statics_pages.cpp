// docs/theory/actions.md and statics.md against their cards: what the page prints is what the code evaluates.
#include "actions/cards.h"
#include "statics/cards.h"
#include "support/near.h"

#include <fstream>
#include <sstream>

using namespace thinskin;

namespace {

std::string page(const std::string& name)
{
    std::ifstream in(std::string(THINSKIN_SOURCE_DIR) + "/docs/theory/" + name);
    std::stringstream s;
    s << in.rdbuf();
    return s.str();
}

void check_page(const std::string& text, const std::vector<base::Card>& cards)
{
    for (const base::Card& c : cards) {
        CAPTURE(c.id);
        const std::size_t at = text.find("### " + c.id + " " + c.title + "\n");
        REQUIRE(at != std::string::npos);
        const std::string section = text.substr(at, text.find("\n### ", at + 1) - at);
        CHECK(section.find("    " + c.formula + "\n") != std::string::npos);
        for (const base::Symbol& x : c.symbols)
            CHECK(section.find("| `" + x.name + "` | " + x.unit + " | " + base::range_text(x) + " | " + x.meaning + " |\n") != std::string::npos);
    }
}

} // namespace

TEST_SUITE_BEGIN("theory pages of actions and statics");

TEST_CASE("each card's heading, formula and symbols stand on its page") {
    check_page(page("actions.md") + page("shock_and_vibration.md") + page("vehicle.md"), actions::cards());
    check_page(page("statics.md"), statics::cards());
}

TEST_SUITE_END();
