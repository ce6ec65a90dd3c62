#pragma once
#include <string_view>

namespace thinskin::base {

/// Status of one check, ordered from good to bad.
enum class Status { pass, judgement, not_covered, fail };

/// Verdict of a case or of a group.
enum class Verdict { pass, not_covered, not_solved, fail };

[[nodiscard]] constexpr std::string_view name(Status s)
{
    switch (s) {
    case Status::pass: return "pass";
    case Status::judgement: return "judgement";
    case Status::not_covered: return "not covered";
    case Status::fail: return "fail";
    }
    return "fail";
}

[[nodiscard]] constexpr std::string_view name(Verdict v)
{
    switch (v) {
    case Verdict::pass: return "pass";
    case Verdict::not_covered: return "not covered";
    case Verdict::not_solved: return "not solved";
    case Verdict::fail: return "fail";
    }
    return "fail";
}

/// The sentence that stands on every screen and output; no option removes it.
inline constexpr std::string_view caution_text =
    "CAUTION: a screening calculation, not a certificate. The local code, the vehicle maker's body-builder instructions "
    "and a licensed engineer decide.";

} // namespace thinskin::base
