#include "log.h"

#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

namespace thinskin::cli {
namespace {

spdlog::logger& logger()
{
    static const auto one = spdlog::stderr_logger_st("thinskin");
    return *one;
}

} // namespace

void set_verbose(bool on) { logger().set_level(on ? spdlog::level::debug : spdlog::level::warn); }

void log(const std::string& message) { logger().debug("{}", message); }

} // namespace thinskin::cli
