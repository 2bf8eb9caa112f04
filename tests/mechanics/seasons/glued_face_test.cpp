// Glued faces: their directions, lengths, strains and layers.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <cmath>

using namespace checked;

namespace {

constexpr const char* kSlatOnRail = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "rail"
wood = "oak"
length = 600
width = 70
thickness = 22
grain = "x"
face = "y"
at = [0, 100, 0]
[[part]]
id = "slat"
wood = "oak"
length = 300
width = 60
thickness = 20
grain = "y"
face = "z"
at = [100, 0, $height]
[[joint]]
between = ["slat", "rail"]
kind = "$kind"
$more
)";

std::unique_ptr<Bench> slat(const std::string& more = "glue = \"PVA\"", const std::string& kind = "face",
                            const std::string& height = "70")
{
    return bench_of(still_head(true) + fill(kSlatOnRail, {{"height", height}, {"kind", kind}, {"more", more}}));
}

const FaceDirection& along(const std::vector<FaceDirection>& faces, Axis axis)
{
    for (const FaceDirection& f : faces)
        if (std::abs(f.direction[index_of(axis)]) > 0.99 && std::abs(f.patch->normal[2]) > 0.99) return f;
    throw std::logic_error("no such face direction");
}

constexpr double kDry = -3.6 / (1 / 0.00369 - 1), kDamp = 0.00369 * 2.9; // flat-sawn red oak across its face, made at 9 %
constexpr double kRadialDry = -3.6 / (1 / 0.00158 - 1), kRadialDamp = 0.00158 * 2.9;
constexpr double kAlongDry = -0.00005 * 3.6, kAlongDamp = 0.00005 * 2.9;

} // namespace

TEST_CASE("A slat on a rail is one face seen in two directions", "[glued-face]")
{
    const auto bench = slat();
    const auto faces = glued_directions(bench->prepared);
    REQUIRE(faces.size() == 2);
    const FaceDirection& x = along(faces, Axis::x);
    CHECK_THAT(x.length, WithinRel(0.060, 1e-9));
    CHECK(x.crossed());
    CHECK_FALSE(x.core);
    CHECK_THAT(x.a.along, WithinAbs(0, 1e-12)); // the slat across its grain, the rail along its own
    CHECK_THAT(x.b.along, WithinAbs(1, 1e-12));
    CHECK_THAT(x.a.dry, WithinRel(kDry, 1e-9));
    CHECK_THAT(x.dry, WithinRel(kDry - kAlongDry, 1e-9));
    CHECK_THAT(x.damp, WithinRel(kDamp - kAlongDamp, 1e-9));
    CHECK_THAT(x.movement(), WithinRel(0.060 * (kAlongDry - kDry), 1e-9));
    const FaceDirection& y = along(faces, Axis::y);
    CHECK_THAT(y.length, WithinRel(0.022, 1e-9));
    CHECK_THAT(y.b.dry, WithinRel(kRadialDry, 1e-9)); // through the thickness of the flat-sawn rail
    CHECK_THAT(y.damp, WithinRel(kAlongDamp - kRadialDamp, 1e-9));
}

TEST_CASE("Dry faces are left out, glued ones cut to what is glued", "[glued-face]")
{
    CHECK(glued_directions(slat("")->prepared).empty());
    const auto bench = slat("glue = \"PVA\"\nglued = { length = 25, at = \"left\" }");
    const auto faces = glued_directions(bench->prepared);
    REQUIRE(faces.size() == 2);
    CHECK_THAT(along(faces, Axis::x).length, WithinRel(0.025, 1e-9));
    CHECK_THAT(along(faces, Axis::y).length, WithinRel(0.022, 1e-9));
    // All that there is may be said, more is refused where it is read.
    CHECK_THAT(
        along(glued_directions(slat("glue = \"PVA\"\nglued = { length = 60, at = \"middle\" }")->prepared), Axis::x).length,
        WithinRel(0.060, 1e-9));
    CHECK_THROWS_WITH(slat("glue = \"PVA\"\nglued = { length = 500, at = \"middle\" }"),
                      ContainsSubstring("are glued over 500 mm, but they touch along 60 mm only"));
}

TEST_CASE("Layers are as deep as the wood behind the face", "[glued-face]")
{
    SECTION("a slat on a rail: all of both")
    {
        const auto bench = slat();
        const auto layers = restraint_at(bench->prepared, along(glued_directions(bench->prepared), Axis::x));
        REQUIRE(layers);
        CHECK_THAT(in_metres(layers->a.thickness), WithinRel(0.020, 1e-9));
        CHECK_THAT(in_metres(layers->b.thickness), WithinRel(0.070, 1e-9));
        CHECK_THAT(in_metres(layers->length), WithinRel(0.060, 1e-9));
    }
    SECTION("let 8 mm into the rail: the rail loses that")
    {
        const auto bench = slat("glue = \"PVA\"", "housing", "62");
        const auto layers = restraint_at(bench->prepared, along(glued_directions(bench->prepared), Axis::x));
        REQUIRE(layers);
        CHECK_THAT(in_metres(layers->a.thickness), WithinRel(0.020, 1e-9));
        CHECK_THAT(in_metres(layers->b.thickness), WithinRel(0.062, 1e-9));
    }
    SECTION("lapped: each keeps its part")
    {
        const auto bench = slat("glue = \"PVA\"\nlap = { first = 8 }", "lap", "50");
        const auto layers = restraint_at(bench->prepared, along(glued_directions(bench->prepared), Axis::x));
        REQUIRE(layers);
        CHECK_THAT(in_metres(layers->a.thickness), WithinRel(0.012, 1e-9));
        CHECK_THAT(in_metres(layers->b.thickness), WithinRel(0.070 - 0.012, 1e-9));
    }
}

TEST_CASE("Moduli of the layers are those of the wood's own directions", "[glued-face]")
{
    const auto bench = slat();
    const WoodState& oak = bench->prepared.parts[0].usual;
    const auto faces = glued_directions(bench->prepared);
    const FaceDirection& x = along(faces, Axis::x);
    const auto across = modulus_in(bench->prepared, x.a.copy, x.direction, x.patch->normal);
    REQUIRE(across);
    CHECK_THAT(across->modulus.value(),
               WithinRel(oak.modulus_tangential->value.value(), 1e-9)); // across the face of a flat-sawn slat
    CHECK_THAT(across->shear_modulus.value(), WithinRel(oak.shear_modulus_rt->value.value(), 1e-9));
    const auto with = modulus_in(bench->prepared, x.b.copy, x.direction, x.patch->normal);
    REQUIRE(with);
    CHECK_THAT(with->modulus.value(), WithinRel(1.10 * 12.5e9, 1e-9)); // red oak, table 5-3a
    CHECK_THAT(with->shear_modulus.value(),
               WithinRel(oak.shear_modulus_lt->value.value(), 1e-9)); // rail on edge: the vertical is tangential
    const FaceDirection& y = along(faces, Axis::y);
    const auto through = modulus_in(bench->prepared, y.b.copy, y.direction, y.patch->normal);
    REQUIRE(through);
    CHECK_THAT(through->modulus.value(), WithinRel(oak.modulus_radial->value.value(), 1e-9));
}

TEST_CASE("At 45 degrees to the grain the modulus follows Hankinson", "[glued-face]")
{
    const auto bench = slat();
    const WoodState& oak = bench->prepared.parts[0].usual;
    const double el = oak.modulus_along->value.value(), et = oak.modulus_tangential->value.value();
    const double s = std::sqrt(0.5);
    const auto slanting = modulus_in(bench->prepared, bench->copy("slat #1"), {s, s, 0}, {0, 0, 1});
    REQUIRE(slanting);
    CHECK_THAT(slanting->modulus.value(), WithinRel(2 * el * et / (el + et), 1e-9));
}

TEST_CASE("Tenons, grooves and end grain are cores; their shoulders and edges are left out", "[glued-face]")
{
    const std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "post"
wood = "oak"
length = 500
width = 50
thickness = 50
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 70
thickness = 24
grain = "x"
face = "y"
at = { left = 50, front = 10, top = 450 }
[[joint]]
between = ["rail", "post"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 50, thickness = 8 }
)";
    const auto bench = bench_of(text);
    const auto faces = glued_directions(bench->prepared);
    REQUIRE_FALSE(faces.empty());
    double longest = 0;
    for (const FaceDirection& f : faces) {
        CHECK(f.core);
        CHECK(std::abs(f.patch->normal[1]) > 0.99); // cheeks look to the front and back
        longest = std::max(longest, f.length);
    }
    CHECK_THAT(longest, WithinRel(0.050, 1e-9));
}

TEST_CASE("Glued dowels reach from the first to the last, not over the end grain between shoulder and edge", "[glued-face]")
{
    const auto dowelled = [](const std::string& sizes) {
        return bench_of(still_head(true) + fill(R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "stile"
wood = "oak"
length = 600
width = 60
thickness = 24
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 120
thickness = 24
grain = "x"
face = "y"
at = [60, 0, 0]
[[joint]]
between = ["rail", "stile"]
kind = "dowel"
glue = "PVA"
$sizes
)",
                                                {{"sizes", sizes}}));
    };
    const auto longest = [](const std::unique_ptr<Bench>& bench) {
        double most = 0;
        for (const FaceDirection& f : glued_directions(bench->prepared)) {
            CHECK(f.core);
            most = std::max(most, f.length);
        }
        return most;
    };
    CHECK_THAT(longest(dowelled("dowels = { diameter = 10, length = 60, count = 3 }")), WithinRel(0.090, 1e-9)); // 20, 60, 100 mm
    CHECK_THAT(longest(dowelled("dowels = { diameter = 10, length = 60, count = 2, inset = 20 }")), WithinRel(0.090, 1e-9));
    CHECK_THAT(longest(dowelled("dowels = { diameter = 10, length = 60, count = 1 }")), WithinRel(0.010, 1e-9));
}

TEST_CASE("A loose tenon glued in on both faces is a core, by whatever name", "[glued-face]")
{
    const std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "post"
wood = "oak"
length = 500
width = 60
thickness = 60
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "loose tenon"
wood = "oak"
length = 80
width = 70
thickness = 10
grain = "x"
face = "y"
at = [20, 25, 200]
[[joint]]
between = ["loose tenon", "post"]
kind = "housing"
glue = "PVA"
)";
    const auto bench = bench_of(text);
    for (const FaceDirection& f : glued_directions(bench->prepared)) {
        CAPTURE(f.length);
        if (std::abs(f.patch->normal[1]) > 0.99) CHECK(f.core);
    }
    const auto findings = content_of(text).findings;
    const Finding fit = finding_of(findings, "bind", "loose tenon / post");
    CHECK(fit.verdict == Verdict::pass);
    CHECK_THAT(fit.headline, ContainsSubstring("held across its width by the glue on its faces"));
    CHECK(value_of(fit, "gap_dampest") >= 0);
    CHECK_THAT(value_of(finding_of(findings, "cross-grain", "loose tenon / post"), "limit"), WithinRel(0.001, 1e-9));
}

TEST_CASE("Boards of mixed cut glued edge to edge move by their mean", "[glued-face]")
{
    const std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "flat board"
wood = "oak"
rings = "flat"
length = 600
width = 200
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 60]
[[part]]
id = "quarter board"
wood = "oak"
rings = "quarter"
length = 600
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 200, 60]
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 60
thickness = 22
grain = "y"
face = "x"
at = [100, 0, 0]
[[joint]]
between = ["flat board", "quarter board"]
kind = "edge"
glue = "PVA"
[[joint]]
between = ["flat board", "rail"]
kind = "face"
glue = "PVA"
[[joint]]
between = ["quarter board", "rail"]
kind = "face"
glue = "PVA"
)";
    const Finding f = finding_of(content_of(text).findings, "cross-grain", "flat board / rail");
    const double dry = (0.200 * kDry + 0.100 * kRadialDry) / 0.300 - kAlongDry;
    CHECK_THAT(value_of(f, "differential_movement"), WithinAbs(0.300 * -dry, 1e-9));
}

TEST_CASE("Own test values without movement across leave the layers without moduli, and say so", "[glued-face]")
{
    std::string text = still_head(true) + fill(kSlatOnRail, {{"height", "70"}, {"kind", "face"}, {"more", "glue = \"PVA\""}});
    text.replace(text.find("species = \"red oak\"\n"), 20, "properties = { tangential = 0.0035, radial = 0.0017 }\n");
    const auto bench = bench_of(text);
    const auto faces = glued_directions(bench->prepared);
    REQUIRE_FALSE(faces.empty());
    std::string missing;
    CHECK_FALSE(restraint_at(bench->prepared, faces.front(), &missing));
    CHECK_THAT(missing, ContainsSubstring("modulus of elasticity"));
    CHECK_FALSE(restraint_at(bench->prepared, faces.front()));
}

TEST_CASE("What relaxes in one season comes back in the other", "[glued-face]")
{
    // r (first + (1 − r) other).
    CHECK_THAT(relaxed_strain(0.5, 0.01, 0.5, 0.006), WithinRel(0.5 * (0.01 + 0.5 * 0.006), 1e-12));
    CHECK_THAT(relaxed_strain(0.35, -0.01, 0.35, 0.006), WithinRel(0.35 * (0.01 + 0.65 * 0.006), 1e-12));
    CHECK_THAT(relaxed_strain(0.5, 0.01, 0.35, 0.006),
               WithinRel(0.5 * (0.01 + 0.65 * 0.006), 1e-12));             // creeps in the other season only
    CHECK_THAT(relaxed_strain(1, 0.01, 1, 0.006), WithinRel(0.01, 1e-12)); // nothing relaxes: nothing comes back
    CHECK(relaxed_strain(0, 0.01, 0, 0.006) == 0);
}
