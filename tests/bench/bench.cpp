// Checks of whole cases and the skin over a range of grids. Ratios and the commands: docs/performance.md.
#include "actions/load_cases.h"
#include "bench/timing.h"
#include "casefile/reader.h"
#include "checks/checks.h"
#include "fem/joints.h"
#include "fem/modes.h"
#include "fem/skin.h"
#include "idealise/response.h"
#include "layout/layout.h"
#include "pipeline/analyse.h"

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

using namespace thinskin;

namespace {

std::string text_of(const std::string& name)
{
    std::ifstream in(std::string(THINSKIN_SOURCE_DIR) + "/cases/" + name + ".yaml");
    std::stringstream all;
    all << in.rdbuf();
    if (!in) throw std::runtime_error("cannot read case " + name);
    return all.str();
}

std::string replaced(std::string text, const std::string& from, const std::string& to)
{
    if (text.find(from) == std::string::npos) throw std::runtime_error("not in the case: " + from);
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) text.replace(at, from.size(), to);
    return text;
}

model::Case parsed(const std::string& text)
{
    const casefile::ReadResult r = casefile::read_text(text, "bench.yaml");
    if (!r.value) throw std::runtime_error(r.diagnostics.empty() ? "no case" : base::format(r.diagnostics.front()));
    return *r.value;
}

std::string linear(const std::string& text) { return replaced(text, "skin: automatic", "skin: linear"); }
/// The left bracket with its bolts and the gauge beside it 3 mm further right.
std::string moved(const std::string& text) { return replaced(text, "150 mm", "153 mm"); }

void check(const model::Case& c, pipeline::Workspace& w)
{
    const pipeline::Analysis a = pipeline::analyse(c, w, pipeline::Depth::margins);
    if (!a.outcome || a.outcome->checks.empty()) throw std::runtime_error("no result");
}

void linear_cold(benchmark::State& state)
{
    const std::string text = linear(text_of("condenser_door"));
    for (auto _ : state) {
        pipeline::Workspace w;
        check(parsed(text), w); // reading included
    }
}
BENCHMARK(linear_cold)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

void linear_warm(benchmark::State& state)
{
    const model::Case c = parsed(linear(text_of("condenser_door")));
    pipeline::Workspace w;
    check(c, w);
    for (auto _ : state) check(c, w);
}
BENCHMARK(linear_warm)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

/// A bracket dragged: the skin is known, the new places are not.
void linear_after_moving(benchmark::State& state)
{
    const std::string text = linear(text_of("condenser_door"));
    const model::Case before = parsed(text), after = parsed(moved(text));
    for (auto _ : state) {
        pipeline::Workspace w;
        check(before, w);
        state.SetIterationTime(bench::milliseconds([&] { check(after, w); }) / 1000);
    }
}
BENCHMARK(linear_after_moving)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseManualTime();

void automatic(benchmark::State& state, const char* name)
{
    const model::Case c = parsed(text_of(name));
    const double before = bench::heap_MB();
    double kept = 0;
    for (auto _ : state) {
        pipeline::Workspace w;
        check(c, w);
        kept = bench::heap_MB() - before;
    }
    state.counters["kept_MB"] = kept;
}
BENCHMARK_CAPTURE(automatic, condenser_door, "condenser_door")->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(automatic, condenser_door_bare, "condenser_door_bare")->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

/// Large deflection of one load case of the bare skin, by its number; the linear solution is there.
void large_one(benchmark::State& state)
{
    const model::Case c = parsed(text_of("condenser_door_bare"));
    const layout::Result resolved = layout::resolve(c);
    const layout::Layout& l = resolved.layout.value();
    const auto cases = actions::load_cases(l).cases;
    idealise::SkinCache skin;
    const auto structure = idealise::build(l, {}, skin);
    fem::ColumnCache columns;
    const idealise::Solution linear_solution = idealise::solve(*structure, cases, columns, {});
    const auto model = fem::make_large(skin.skin);
    const auto index = static_cast<std::size_t>(state.range(0));
    int steps = 0;
    for (auto _ : state) {
        idealise::Solution s = linear_solution;
        idealise::solve_large_cases(*structure, s, {cases[index].name}, columns, *model, {});
        const auto& large = s.runs[index].large;
        if (!large || large->status != fem::SolveStatus::solved) {
            state.SkipWithError("not solved");
            break;
        }
        steps = large->steps;
    }
    state.counters["newton_steps"] = steps;
    state.SetLabel(index < cases.size() ? cases[index].name : "");
}
BENCHMARK(large_one)->DenseRange(0, 7)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

void frequencies(benchmark::State& state)
{
    fem::SkinModel m;
    m.width = 740, m.height = 1520, m.spacing = 30, m.sheet = {210000, 0.3, 0.76};
    const fem::Skin skin = fem::make_skin(m);
    fem::Assembly a;
    a.bodies = {&skin.body};
    const auto mass = fem::skin_mass(skin, 7.85e-9);
    for (auto _ : state) benchmark::DoNotOptimize(fem::modes(a, {}, {mass}, 3));
}
BENCHMARK(frequencies)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

// --- the skin over grids of 1 000 to 100 000 unknowns; the argument is the spacing in tenths of a millimetre --------------------------------
fem::SkinModel panel(const benchmark::State& state)
{
    fem::SkinModel m;
    m.width = 740, m.height = 1520, m.spacing = static_cast<double>(state.range(0)) / 10, m.sheet = {210000, 0.3, 0.76};
    return m;
}

void size_of(benchmark::State& state, const fem::Skin& skin) { state.SetComplexityN(std::count(skin.body.supported.begin(), skin.body.supported.end(), 0)); }

void make_skin(benchmark::State& state)
{
    std::optional<fem::Skin> skin;
    double kept = 0;
    for (auto _ : state) {
        skin.reset();
        const double before = bench::heap_MB();
        skin = fem::make_skin(panel(state));
        kept = bench::heap_MB() - before;
    }
    size_of(state, *skin);
    state.counters["kept_MB"] = kept;
}

void factor(benchmark::State& state)
{
    const fem::Skin skin = fem::make_skin(panel(state));
    for (auto _ : state) benchmark::DoNotOptimize(fem::factorise(skin.body.K, skin.body.supported, skin.body.spots));
    size_of(state, skin);
}

void condense(benchmark::State& state)
{
    const fem::Skin skin = fem::make_skin(panel(state));
    fem::Assembly a;
    a.bodies = {&skin.body};
    for (int k = 0; k < 12; ++k) {
        fem::Joint tie;
        tie.a = {0, fem::skin_port(skin, {150.0 + 210 * (k % 3), 230.0 + 330 * (k / 3), 9, 9}, fem::SkinDirection::z)};
        tie.compliance = 1e-5;
        a.joints.push_back(tie);
    }
    for (auto _ : state) {
        fem::ColumnCache cache;
        benchmark::DoNotOptimize(fem::condense(a, 0, cache));
    }
    size_of(state, skin);
}

void one_solve(benchmark::State& state)
{
    const fem::Skin skin = fem::make_skin(panel(state));
    const fem::Vector load = fem::skin_pressure(skin, 1e-6);
    for (auto _ : state) benchmark::DoNotOptimize(fem::solve(skin.body, load));
    size_of(state, skin);
}

void over_grids(benchmark::internal::Benchmark* b)
{
    for (const int spacing : {750, 500, 300, 200, 120, 84}) b->Arg(spacing);
    b->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->Complexity();
}
BENCHMARK(make_skin)->Apply(over_grids);
BENCHMARK(factor)->Apply(over_grids);
BENCHMARK(condense)->Apply(over_grids);
BENCHMARK(one_solve)->Apply(over_grids);

} // namespace

BENCHMARK_MAIN();
