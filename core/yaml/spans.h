#pragma once
#include "yaml/document.h"

#include <optional>

namespace thinskin::yaml {

/// Bytes [begin, end) of a text.
struct Span { std::size_t begin = 0, end = 0; };

/// Where nodes stand in the text they were parsed from (without its byte order mark). The parser tells only where they start; ends
/// are found here. Empty: not found (a value that is not there, a shape that case files do not use).
class Spans {
public:
    explicit Spans(std::string_view text) : text_(text) {}

    /// in_flow: some block round the node is written with { } or [ ].
    [[nodiscard]] std::optional<Span> of(const Node& n, bool in_flow) const;
    [[nodiscard]] std::optional<Span> key(const Entry& e) const;
    /// Right behind the colon of an entry.
    [[nodiscard]] std::optional<std::size_t> after_colon(const Entry& e) const;
    /// Written with { } or [ ].
    [[nodiscard]] bool flow(const Node& n) const;

    [[nodiscard]] std::size_t line_start(std::size_t at) const;
    [[nodiscard]] std::size_t line_end(std::size_t at) const;        ///< before the line's end mark
    [[nodiscard]] std::size_t next_line(std::size_t at) const;       ///< start of the next line, or the end of the text
    [[nodiscard]] std::size_t skip_blanks(std::size_t at) const;     ///< blanks, line ends and comments
    [[nodiscard]] bool first_on_line(std::size_t at) const;

private:
    [[nodiscard]] std::optional<std::size_t> end_of_quoted(std::size_t at) const;
    [[nodiscard]] std::size_t end_of_text_block(std::size_t at) const;
    [[nodiscard]] std::optional<std::size_t> end_of_plain(const Node& n, bool in_flow) const;
    [[nodiscard]] std::size_t end_of_plain_line(std::size_t at, bool in_flow) const;
    [[nodiscard]] std::optional<std::size_t> end_of_collection(const Node& n, bool in_flow) const;
    std::string_view text_;
};

} // namespace thinskin::yaml
