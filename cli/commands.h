#pragma once
#include "exit_code.h"

#include <string>
#include <vector>

/// One function and one file a command. They read, call the core and print: no figure is worked out here.
/// Results go to standard output, everything that is wrong to standard error.
namespace thinskin::cli {

struct CheckOptions {
    std::vector<std::string> files;
    bool json = false, detail = false, strict = false, single_loss = false;
    double rust_mm = 0.1;
    int spread = 0;                         ///< runs over the ranges of what nobody measured; 0: none
    std::string grid;                       ///< normal, quick, fine; empty: as the case says
};
[[nodiscard]] Exit run_check(const CheckOptions& options);

/// Writes record.html, result.json (as check --json) and case.yaml (the bytes that were checked) into `folder`, which is made if it
/// is not there; files of these names are overwritten, and it says so. Ends as check does.
struct RecordOptions { std::string file, folder, date, grid; bool strict = false, detail = false, single_loss = false; double rust_mm = 0.1; int spread = 0; }; ///< date: YYYY-MM-DD, empty: a line to fill in; spread as in CheckOptions
[[nodiscard]] Exit run_record(const RecordOptions& options);

/// Fixing schemes that hold. Ends with 0 when there is one, else as check does for the closest. Stopped: the best so far is printed.
struct ProposeOptions { std::string file, write_file; int write_number = 0, schemes = 0, threads = 0; bool json = false, quick = false, single_loss = false; }; ///< single_loss: done anyway; quick: no bad ends, single losses, natural frequencies
[[nodiscard]] Exit run_propose(const ProposeOptions& options);

struct CatalogueOptions { std::string table, file; };                        ///< empty: the list of tables; file: a case with rows of its own
[[nodiscard]] Exit run_catalogue(const CatalogueOptions& options);

struct FormulaOptions { std::string id; std::vector<std::string> values; bool json = false; }; ///< empty id: the list of formulas
[[nodiscard]] Exit run_formula(const FormulaOptions& options);

struct NewOptions { std::string kind; };
[[nodiscard]] Exit run_new(const NewOptions& options);

} // namespace thinskin::cli
