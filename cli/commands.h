#pragma once
#include "exit_code.h"

#include <string>
#include <vector>

/// One function and one file a command. They read, call the core and print: no figure is worked out here.
/// Results go to standard output, everything that is wrong to standard error.
namespace thinskin::cli {

struct CheckOptions {
    std::vector<std::string> files;
    bool json = false, detail = false, strict = false;
};
[[nodiscard]] Exit run_check(const CheckOptions& options);

struct CatalogueOptions { std::string table; };                              ///< empty: the list of tables
[[nodiscard]] Exit run_catalogue(const CatalogueOptions& options);

struct FormulaOptions { std::string id; std::vector<std::string> values; bool json = false; }; ///< empty id: the list of formulas
[[nodiscard]] Exit run_formula(const FormulaOptions& options);

struct NewOptions { std::string kind; };
[[nodiscard]] Exit run_new(const NewOptions& options);

} // namespace thinskin::cli
