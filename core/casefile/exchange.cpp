#include "casefile/exchange.h"

#include "casefile/writer.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::casefile {

namespace {

using model::Case;
using Changes = std::vector<Change>;

std::string path_of(const model::FastenerKind& k) { return "fastener_kinds[" + k.name + "]"; }

/// Kinds that `now` does not have as they are.
void add_kinds(const Case& now, const Case& then, Changes& out)
{
    for (const model::FastenerKind& k : then.fastener_kinds) {
        const std::string flow = block_text(then, path_of(k));
        if (!flow.empty() && flow != block_text(now, path_of(k))) out.push_back(set_block(path_of(k), flow));
    }
}

void drop_kinds(const Case& now, const Case& then, Changes& out)
{
    for (const model::FastenerKind& k : now.fastener_kinds)
        if (std::none_of(then.fastener_kinds.begin(), then.fastener_kinds.end(), [&](const model::FastenerKind& t) { return t.name == k.name; })) out.push_back(remove(path_of(k)));
}

void exchange_block(const Case& now, const Case& then, const std::string& key, Changes& out)
{
    const std::string flow = block_text(then, key);
    if (flow == block_text(now, key)) return;
    out.push_back(flow.empty() ? remove(key) : set_lines(key, flow));
}

void exchange_feet(const Case& now, const Case& then, Changes& out)
{
    if (!now.item || !then.item) return;
    for (std::size_t i = 0; i < std::min(now.item->fixings.size(), then.item->fixings.size()); ++i)
        if (now.item->fixings[i].use != then.item->fixings[i].use) out.push_back(set(fmt::format("item.fixings[{}].use", i), then.item->fixings[i].use));
}

} // namespace

Changes exchange(const Case& now, const Case& then)
{
    Changes out;
    add_kinds(now, then, out);
    exchange_feet(now, then, out);
    exchange_block(now, then, "brackets", out);
    exchange_block(now, then, "reinforcement", out);
    drop_kinds(now, then, out);
    return out;
}

} // namespace thinskin::casefile
