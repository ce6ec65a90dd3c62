#include "casefile/writer.h"

#include "casefile/write_visitor.h"

namespace thinskin::casefile {

std::string write(const model::Case& c) { return yaml::emit(WriteVisitor(c, Show::needed).tree()); }

} // namespace thinskin::casefile
