// How contact finding, a whole check and its page grow with the number of parts; how long the sweeps of `size` take. Speed is measured here,
// never asserted in a test.

#include "benchmark/slatted_field.hpp"
#include "piece/contacts/contact.hpp"
#include "report/page/html.hpp"
#include "review/review.hpp"
#include "review/search/size_search.hpp"

#include <benchmark/benchmark.h>

#include <string>

namespace {

using namespace jointwright;
using namespace measured;

void find_contacts_of(benchmark::State& state)
{
    const Piece piece = slatted_field(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(find_contacts(piece));
    state.counters["parts"] = static_cast<double>(piece.copies.size());
    state.SetComplexityN(static_cast<benchmark::IterationCount>(piece.copies.size()));
}

void check_whole(benchmark::State& state)
{
    const Piece piece = slatted_field(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(check_piece(piece, facts()));
    state.counters["parts"] = static_cast<double>(piece.copies.size());
    state.SetComplexityN(static_cast<benchmark::IterationCount>(piece.copies.size()));
}

/// The question "how thin may the long rail be?" put to the first example: some ten whole checks.
void size_sweep(benchmark::State& state)
{
    const std::string& text = *facts().text("designs/boot-bench.toml");
    const DesignRead read = read_design(text, facts());
    constexpr std::size_t kLongRail = 1;
    for (auto _ : state)
        benchmark::DoNotOptimize(search_size(text, *read.piece, facts(), kLongRail, VariedSize::thickness, LengthUnit::inch));
}

/// The whole check with every wood of the tables for that rail.
void wood_sweep(benchmark::State& state)
{
    const DesignRead read = read_design(*facts().text("designs/boot-bench.toml"), facts());
    constexpr std::size_t kLongRail = 1;
    for (auto _ : state) benchmark::DoNotOptimize(search_woods(*read.piece, facts(), kLongRail, LengthUnit::inch));
}

void write_page_of(benchmark::State& state)
{
    CheckOptions options;
    options.drawn = true;
    const ReportContent content = check_piece(slatted_field(static_cast<int>(state.range(0))), facts(), options);
    std::size_t bytes = 0;
    for (auto _ : state) {
        const std::string page = write_html(content);
        bytes = page.size();
        benchmark::DoNotOptimize(page.data());
    }
    state.counters["bytes"] = static_cast<double>(bytes);
    state.SetComplexityN(static_cast<benchmark::IterationCount>(state.range(0)));
}

} // namespace

BENCHMARK(find_contacts_of)->Arg(25)->Arg(50)->Arg(100)->Arg(200)->Arg(360)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(check_whole)->Arg(25)->Arg(50)->Arg(100)->Arg(200)->Arg(360)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(size_sweep)->Unit(benchmark::kMillisecond);
BENCHMARK(wood_sweep)->Unit(benchmark::kMillisecond);
BENCHMARK(write_page_of)->Arg(25)->Arg(50)->Arg(100)->Arg(200)->Arg(360)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK_MAIN();
