#pragma once
#include "report/text.h"

#include <string>

/// The sections of check_text, in the order in which they are printed; each is empty when there is nothing to say.
namespace thinskin::report {

using results::Outcome;

[[nodiscard]] std::string verdict_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string caution_lines(const TextOptions&);
[[nodiscard]] std::string group_lines(const Outcome&, const TextOptions&);

[[nodiscard]] std::string single_loss_lines(const Outcome&, const TextOptions&); ///< --single-loss: nothing when it was not run
[[nodiscard]] std::string margin_table(const Outcome&, const TextOptions&);
[[nodiscard]] std::string not_covered_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string check_details(const Outcome&, const TextOptions&);   ///< --detail: formula, inputs, source

[[nodiscard]] std::string load_path_lines(const Outcome&);
[[nodiscard]] std::string skin_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string frequency_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string life_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string wind_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string door_lines(const Outcome&, const TextOptions&);

/// The modes to show: the lowest three in which item or brackets take part, else the lowest three; all with --detail.
[[nodiscard]] std::vector<const results::NaturalMode*> modes_to_show(const std::vector<results::NaturalMode>& modes, bool all);
[[nodiscard]] std::string stack_lines(const Outcome&);
[[nodiscard]] std::string assumption_lines(const Outcome&, const TextOptions&);
[[nodiscard]] std::string list_lines(const Outcome&, const TextOptions&);      ///< cautions, to see to, exclusions
[[nodiscard]] std::string balance_lines(const Outcome&, const TextOptions&);

[[nodiscard]] std::string force_details(const Outcome&, const TextOptions&);   ///< --detail: all forces and movements

/// One line for each distinct reason (the same in twenty load cases is told once), then what the pipeline could not run.
[[nodiscard]] std::vector<std::string> not_covered_items(const Outcome&);

[[nodiscard]] std::string bullet_list(const std::vector<std::string>& items, int width);

} // namespace thinskin::report
