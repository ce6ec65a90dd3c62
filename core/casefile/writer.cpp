#include "casefile/writer.h"

#include "casefile/write_visitor.h"
#include "yaml/patch.h"

namespace thinskin::casefile {

namespace {

template <class Own> void keep_own(std::vector<Own>& rows)
{
    std::erase_if(rows, [](const Own& r) { return r.shared; });
}

} // namespace

std::string write(const model::Case& c)
{
    model::Case own = c; // rows of the shared file stay there
    keep_own(own.own.materials);
    keep_own(own.own.bolt_grades);
    keep_own(own.own.screws);
    keep_own(own.own.rivets);
    keep_own(own.own.roads);
    keep_own(own.own.base_pulses);
    return yaml::emit(WriteVisitor(own, Show::needed).tree());
}

std::string block_text(const model::Case& c, std::string_view path)
{
    const yaml::Node tree = WriteVisitor(c, Show::needed).tree();
    const yaml::Node* block = yaml::find_node(tree, yaml::path_parts(path));
    return block ? yaml::one_line(*block) : "";
}

} // namespace thinskin::casefile
