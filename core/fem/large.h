#pragma once
#include "fem/joints.h"
#include "fem/skin.h"

#include <stop_token>

/// The skin at moderate rotations (von Karman): membrane strain  u_x + 1/2 w_x^2,  v_y + 1/2 w_y^2,  u_y + v_x + w_x w_y;
/// bending as in the small-displacement theory (theory FE-19..FE-23). Ribs take 1/2 w'^2 along their line into their axial
/// strain. All other bodies stay linear; contact, straps and ties are those of solve_joints.
///   range   slopes small against 1 (0.2 rad: 2 % of the strain is left out), strains elastic, loads keep their direction
namespace thinskin::fem {

/// Everything that does not depend on the load: matrices of the quadratic strain, pattern and elimination order of the
/// tangent. Built once per skin, shared by all load cases. Thread-safe to read.
class LargeModel;
[[nodiscard]] std::shared_ptr<const LargeModel> make_large(std::shared_ptr<const Skin> skin);
[[nodiscard]] const Skin& skin_of(const LargeModel& model);

struct NewtonRule {
    int most_steps = 25;                 ///< Newton steps per load step
    double force_tolerance = 1e-8;       ///< largest out-of-balance force at an unsupported dof over the largest load or joint force (moments over the grid spacing)
    int most_load_steps = 40;            ///< load steps tried when Newton fails at full load; 1: no load steps
    /// A factor is kept for the next step, and by a LargeMemory for the next load case, while a step leaves less than this share of the
    /// out-of-balance force; 0: a new one each step. The answer is the same within the tolerance: what is kept is a divisor only.
    double keep_below = 0;
};

/// The last factored tangent, for the next load case of the same assembly and model.
class LargeMemory {
public:
    LargeMemory();
    ~LargeMemory();
    struct Impl;
    Impl& impl() { return *impl_; }
private:
    std::unique_ptr<Impl> impl_;
};

struct Large {
    /// solved, or one of: mechanism, no_contact_state, ill_conditioned (of the joints), not_converged, buckled, stopped.
    /// Anything but solved: `where` says what and at which step, and the figures below are not for use.
    SolveStatus status = SolveStatus::not_converged;
    std::string where;
    JointState joints;                   ///< of the deflected state; hand it to recover() for every body but the skin
    Vector skin_u;                       ///< all dofs of the skin
    Vector skin_support;                 ///< reactions at supported dofs (zero elsewhere)
    int steps = 0;                       ///< Newton steps, all load steps together
    int factors = 0;                     ///< of them with a new factor
    int load_steps = 0;                  ///< 1: full load at once
    std::vector<double> residuals;       ///< after each Newton step of the last load step
    double residual = 0;                 ///< the last of them
    double start_scale = 0;              ///< beta: the start is beta w_lin
    /// Resultants on the skin (forces, moments about the origin), moments with the deflected position: z + w for in-plane forces.
    Eigen::Matrix<double, 6, 1> applied = Eigen::Matrix<double, 6, 1>::Zero(), reaction = Eigen::Matrix<double, 6, 1>::Zero();
    double force_error = 0;              ///< |applied + reaction|, forces, over the sum of the absolute forces; rounding only
    double moment_error = 0;             ///< the same for moments; contains the grid's error in the deflected lever arms
};

/// `load_factors` on `loads` as in recover(); `linear_start`: the solved state of the linear theory (its forces give the
/// start, its active joints the first contact state). `cache` keeps the other bodies' columns. `start_u`: a solved
/// neighbouring load case's skin_u, used instead of the linear start when given. `memory`: see NewtonRule::keep_below.
/// Throws std::invalid_argument when the parts do not belong together.
[[nodiscard]] Large solve_large(const Assembly& assembly, int skin_body, const LargeModel& model, const std::vector<UnitLoad>& loads,
                                const Vector& load_factors, const JointState& linear_start, ColumnCache& cache,
                                const NewtonRule& rule = {}, std::stop_token stop = {}, const Vector* start_u = nullptr, LargeMemory* memory = nullptr);

/// Membrane forces at the nodes, from the elements' middles where they are most exact; one per solved state.
struct LargeField {
    Vector u;
    Eigen::Matrix<double, 3, Eigen::Dynamic> N; ///< N_x, N_y, N_xy per node, N/mm
};
[[nodiscard]] LargeField large_field(const LargeModel& model, const Vector& skin_u);
/// Fields at a point: moments from the curvatures, N between the nodes' values. von_mises() takes it as it stands.
[[nodiscard]] SkinPoint skin_point_large(const LargeModel& model, const LargeField& field, double x, double y);

/// Membrane and bending part of the stress apart, and both faces: von Mises, MPa.
struct FaceStress { double membrane = 0, bending = 0, top = 0, bottom = 0; ///< top: +z face
};
[[nodiscard]] FaceStress face_stress(const SheetSection& sheet, const SkinPoint& p);

/// The sheet round a washer on a fine grid of its own: along the boundary of a rectangle it moves as the global solution does, inside it
/// carries the same forces (theory FE-26). For stresses within a few grid spacings of a footprint, which the global grid does not settle.
struct LocalForce { Footprint where; SkinDirection direction = SkinDirection::z; double force = 0; }; ///< N on the skin, panel axes
struct LocalArea { double x0 = 0, y0 = 0, x1 = 0, y1 = 0, spacing = 0; };  ///< mm; clipped to the panel
struct LargeLocal {
    SolveStatus status = SolveStatus::not_converged; ///< solved or not_converged; then no figures
    std::string where;
    LocalArea area;
    std::shared_ptr<const LargeModel> model;
    LargeField field;
};
/// The grids looked at last, without loads: round the next place of the same make and size they serve again. Same bits either way.
struct LocalGrids {
    static constexpr std::size_t most = 4;   ///< some 15 MB each
    std::vector<std::shared_ptr<const LargeModel>> last;
};
/// `forces`: every force on the skin whose footprint lies in the area; `pressure` N/mm2 over all of it.
/// About three footprint widths each way and a quarter of the footprint as spacing settle the stress beside it to 2 %.
/// Throws std::invalid_argument for an area without size or a footprint that reaches over its boundary.
[[nodiscard]] LargeLocal large_local(const LargeModel& global, const LargeField& field, const LocalArea& area, const std::vector<LocalForce>& forces,
                                     double pressure = 0, LocalGrids* kept = nullptr);
/// Fields at a point in panel coordinates.
[[nodiscard]] SkinPoint local_point(const LargeLocal& local, double x, double y);

/// Traction handed to one edge at n stations (as edge_flow, with the membrane field of the deflected state).
[[nodiscard]] std::vector<EdgeFlow> edge_flow_large(const LargeModel& model, const LargeField& field, int edge, int stations);

} // namespace thinskin::fem
