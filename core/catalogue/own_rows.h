#pragma once
#include "catalogue/catalogue.h"
#include "model/own_rows.h"

/// Rows of one case (block `catalogue` of its file) beside the program's own.
namespace thinskin::catalogue {

/// Note of every row that comes from a case.
inline constexpr std::string_view own_row_note = "row of the case";

/// As rows of the program; E, nu and density of a material are those of its kind. Units N, mm, MPa, g, s.
[[nodiscard]] Material as_row(const model::OwnMaterial& m);
[[nodiscard]] BoltGrade as_row(const model::OwnBoltGrade& g);
[[nodiscard]] ScrewSize as_row(const model::OwnScrew& s);
[[nodiscard]] BlindRivet as_row(const model::OwnRivet& r);
[[nodiscard]] RoadSurface as_row(const model::OwnRoad& r);
[[nodiscard]] BasePulse as_row(const model::OwnPulse& p);

/// Null when the case has no such row. Names are matched to the letter.
template <class Own> [[nodiscard]] const Own* find_own(const std::vector<Own>& rows, std::string_view name)
{
    for (const Own& r : rows)
        if (r.name == name) return &r;
    return nullptr;
}

/// A road or pulse of the case or of the program; none: there is no such row.
[[nodiscard]] std::optional<RoadSurface> road_surface(std::string_view name, const model::OwnRows& own);
[[nodiscard]] std::optional<BasePulse> base_pulse(std::string_view name, const model::OwnRows& own);

/// What cannot be: a name that the program has or that stands twice, strengths or thicknesses the wrong way round.
struct OwnRowProblem { base::Location at; std::string path, message; };
[[nodiscard]] std::vector<OwnRowProblem> problems_of(const model::OwnRows& own);

/// "maker's sheet of May (read by whoever wrote the case)": whose figures a row has, and how they are known.
[[nodiscard]] std::string origin_words(const model::OwnRow& r);

} // namespace thinskin::catalogue
