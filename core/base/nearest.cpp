#include "base/nearest.h"

#include <algorithm>

namespace thinskin::base {

int edit_distance(std::string_view a, std::string_view b)
{
    std::vector<int> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<int>(j);
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const int replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, replace});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) now[j] = std::min(now[j], before[j - 2] + 1);
        }
        std::swap(before, last);
        std::swap(last, now);
    }
    return last[b.size()];
}

std::string nearest(std::string_view word, const std::vector<std::string>& candidates)
{
    // Very long words are no slips of the pen, and the table above would grow with the square.
    if (word.empty() || word.size() > 100) return {};
    std::string best;
    int least = std::max(1, static_cast<int>(word.size()) / 3) + 1;
    for (const std::string& c : candidates) {
        if (c.size() > 100) continue;
        const int d = edit_distance(word, c);
        if (d < least) {
            least = d;
            best = c;
        }
    }
    return best;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates)
{
    const std::string n = nearest(word, candidates);
    return n.empty() ? std::string{} : "did you mean " + n + "?";
}

} // namespace thinskin::base
