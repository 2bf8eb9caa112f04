#pragma once
// Pieces that the benchmarks measure.

#include "piece/read/read_design.hpp"

#include <fmt/core.h>

#include <stdexcept>
#include <string>

namespace measured {

using namespace jointwright;

inline const Facts& facts()
{
    static const Facts loaded(embedded_data());
    return loaded;
}

/// A slatted field on two rails and legs, with so many slats.
inline Piece slatted_field(int slats)
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

inline Piece boot_bench() { return *read_design(*facts().text("designs/boot-bench.toml"), facts()).piece; }

} // namespace measured
