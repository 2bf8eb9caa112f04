#pragma once
// Small designs for the tests of the command line.

namespace designs {

/// One loose plank: nothing in it can fail.
constexpr const char* kPlank = R"([piece]
name  = "Plank"
units = "mm"
use   = "none"

[room]
driest              = { moisture = 5.4 }
dampest             = { moisture = 11.9 }
moisture_at_glue_up = 9

[[wood]]
id      = "oak"
species = "red oak"
rings   = "flat"

[[part]]
id        = "plank"
wood      = "oak"
length    = 600
width     = 300
thickness = 20
grain     = "x"
face      = "z"
at        = [0, 0, 70]
)";

/// What makes it a door that splits: a batten glued across its whole width.
constexpr const char* kGluedBatten = R"(
[[part]]
id        = "batten"
wood      = "oak"
length    = 300
width     = 22
thickness = 70
grain     = "y"
face      = "z"
at        = [300, 0, 0]

[[joint]]
between = ["plank", "batten"]
kind    = "face"
glue    = "PVA"
)";

} // namespace designs
