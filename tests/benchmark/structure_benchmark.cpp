// How long a piece takes as one frame: assembled and factored, solved for many cases, read; and how that grows with the number of parts.

#include "benchmark/slatted_field.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/structure.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace jointwright;
using namespace measured;

/// A piece prepared once; its frame is built anew by what is measured.
struct Ready {
    explicit Ready(const Piece& of) : prepared(prepare(lay_out(of), facts(), combinations_of(of).front(), of.units)) {}
    std::vector<std::vector<CopyLoad>> cases(std::size_t count) const
    {
        std::vector<std::vector<CopyLoad>> all;
        const LoadCases& stated = prepared.statics.cases;
        for (std::size_t k = 0; k < count; ++k) {
            all.push_back(stated.lasting);
            const auto& own = stated.cases[k % stated.cases.size()].loads;
            all.back().insert(all.back().end(), own.begin(), own.end());
        }
        return all;
    }
    void count(benchmark::State& state) const
    {
        state.counters["parts"] = static_cast<double>(piece.copies.size());
        state.counters["unknowns"] = prepared.statics.frame->frame().unknowns();
        state.counters["cases"] = static_cast<double>(prepared.statics.cases.cases.size());
        state.SetComplexityN(static_cast<benchmark::IterationCount>(piece.copies.size()));
    }
    Prepared prepared;
    const Piece& piece = *prepared.piece;
};

void build_frame_of(benchmark::State& state, const Ready& ready)
{
    for (auto _ : state) benchmark::DoNotOptimize(Structure(ready.prepared, ready.prepared.statics.cases));
    ready.count(state);
}

/// What the kernel alone takes for a frame that is laid out.
void factor_and_solve(benchmark::State& state, const Ready& ready, std::size_t cases)
{
    const Structure& structure = *ready.prepared.statics.frame;
    kernel::Frame frame = structure.frame();
    const auto loads = ready.cases(cases);
    for (auto _ : state) {
        frame.factor();
        Eigen::MatrixXd nodal = Eigen::MatrixXd::Zero(frame.unknowns(), static_cast<Eigen::Index>(cases));
        for (std::size_t k = 0; k < cases; ++k) structure.add_loads(nodal.col(static_cast<Eigen::Index>(k)), loads[k]);
        benchmark::DoNotOptimize(frame.solve_all(nodal));
    }
    ready.count(state);
}

void prepare_whole(benchmark::State& state, const Ready& ready)
{
    const Combination combination = combinations_of(ready.piece).front();
    for (auto _ : state) benchmark::DoNotOptimize(prepare(ready.piece, facts(), ready.layout, combination, ready.piece.units));
    ready.count(state);
}

const Ready& bench()
{
    static const Ready ready(boot_bench());
    return ready;
}

void bench_frame_built(benchmark::State& state) { build_frame_of(state, bench()); }
void bench_thirty_cases(benchmark::State& state) { factor_and_solve(state, bench(), 30); }
void bench_prepared(benchmark::State& state) { prepare_whole(state, bench()); }

void field_frame_built(benchmark::State& state) { build_frame_of(state, Ready(slatted_field(static_cast<int>(state.range(0))))); }
void field_thirty_cases(benchmark::State& state)
{
    factor_and_solve(state, Ready(slatted_field(static_cast<int>(state.range(0)))), 30);
}
void field_prepared(benchmark::State& state) { prepare_whole(state, Ready(slatted_field(static_cast<int>(state.range(0))))); }

} // namespace

BENCHMARK(bench_frame_built)->Unit(benchmark::kMicrosecond);
BENCHMARK(bench_thirty_cases)->Unit(benchmark::kMicrosecond);
BENCHMARK(bench_prepared)->Unit(benchmark::kMicrosecond);
// 336 slats on 60 legs and rails are 400 parts.
BENCHMARK(field_frame_built)->Arg(42)->Arg(84)->Arg(168)->Arg(336)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(field_thirty_cases)->Arg(42)->Arg(84)->Arg(168)->Arg(336)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(field_prepared)->Arg(42)->Arg(84)->Arg(168)->Arg(336)->Unit(benchmark::kMillisecond)->Complexity();
