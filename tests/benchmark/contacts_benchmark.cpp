// How contact finding, a whole check and its page grow with the number of parts; how long the sweeps of `size` take. Speed is measured here,
// never asserted in a test.

#include "checks/run.hpp"
#include "checks/size_search.hpp"
#include "piece/contact.hpp"
#include "piece/read_design.hpp"
#include "report/html.hpp"

#include <benchmark/benchmark.h>

#include <fmt/core.h>

#include <stdexcept>
#include <string>

namespace {

using namespace jointwright;

const Facts& facts()
{
    static const Facts loaded(embedded_data());
    return loaded;
}

/// A slatted field on two rails and legs, with so many slats.
Piece slatted_field(int slats)
{
    const std::string text = fmt::format(R"(
[piece]
name = "slatted field"
units = "mm"
use = "seat"
carries = ["slat"]
[room]
air = "heated, cold winters"
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "leg"
wood = "oak"
length = 400
width = 60
thickness = 60
grain = "z"
face = "y"
at = [0, 0, 0]
repeat = {{ count = {0}, along = "x", gap = 440 }}
copies = [{{ at = [0, 300, 0] }}]
[[part]]
id = "rail"
wood = "oak"
length = {1}
width = 80
thickness = 40
grain = "x"
face = "y"
at = [0, 10, 400]
copies = [{{ at = [0, 310, 400] }}]
[[part]]
id = "slat"
wood = "oak"
length = 400
width = 40
thickness = 20
grain = "y"
face = "z"
at = [0, -20, 472]
repeat = {{ count = {2}, along = "x", gap = 8 }}
[[joint]]
between = ["slat", "rail"]
kind = "housing"
glue = "PVA"
clearance = 0.4
[[joint]]
between = ["rail", "leg"]
kind = "face"
glue = "PVA"
)",
                                         slats / 12 + 1, 48 * slats, slats);
    DesignRead read = read_design(text, facts());
    if (!read.piece) throw std::runtime_error(read.faults.front().says);
    return *read.piece;
}

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
