#pragma once
#include "fem/factor.h"
#include "fem/large.h"
#include "fem/large_elements.h"

/// Internal to core/fem: the skin's quadratic pieces in place, and its tangent on one fixed pattern.
namespace thinskin::fem {

class LargeModel {
public:
    explicit LargeModel(std::shared_ptr<const Skin> skin_in);

    std::shared_ptr<const Skin> skin;
    std::vector<QuadraticPiece> pieces;      ///< sheet elements in grid order (openings left out), then rib segments
    std::vector<int> piece_of;               ///< per grid element: index of its piece, -1 in an opening
    Sparse small;                            ///< stiffness at small displacements, on the tangent's pattern
    Factor pattern;

private:
    std::map<std::array<int, 2>, SheetGradients> gradients_;
    std::map<std::array<unsigned, 3>, QuadraticElement> elements_;
    struct RibSegment { QuadraticElement element; RibGradients gradients; };
    std::map<std::array<int, 2>, RibSegment> ribs_; ///< by (rib, class of its interval)

    void add_sheet();
    void add_ribs();
    void make_pattern();
    void find_entries();
};

/// Internal force and tangent at u. `K` has the pattern of LargeModel::small.
struct Tangent { Sparse K; Vector force; };
void internal_force(const LargeModel& model, const Vector& u, Vector& force);
/// geometric: 1 exact; 0: without the membrane forces' own stiffness, always positive definite, for steps from far away.
void tangent(const LargeModel& model, const Vector& u, double geometric, Tangent& out);

} // namespace thinskin::fem
