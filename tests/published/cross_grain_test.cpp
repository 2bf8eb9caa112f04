// Glued cross-grain faces through the whole program, against worked cases and published strains.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "judging/fits/cross_grain_layers.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/core.h>

#include <cmath>
#include <tuple>

using namespace checked;

namespace {

std::string number(double value) { return fmt::format("{:g}", value); }

/// A slat 20 mm thick glued across a rail 22 mm wide and 70 mm deep.
constexpr const char* kSlatOnRail = R"(
[[wood]]
id = "wood"
species = "$wood"
rings = "$rings"
[[part]]
id = "slat"
wood = "wood"
length = 400
width = $width
thickness = $thickness
grain = "y"
face = "z"
at = [100, 0, 500]
[[part]]
id = "rail"
wood = "rail wood"
length = 1200
width = $deep
thickness = 22
grain = "x"
face = "y"
at = { left = 0, front = 100, top = 500 }
[[wood]]
id = "rail wood"
species = "$bearer"
rings = "$bearing rings"
[[joint]]
between = ["slat", "rail"]
kind = "face"
glue = "PVA"
)";

std::string slat_on_rail(double width, bool wide_room)
{
    return still_head(wide_room) + fill(kSlatOnRail, {{"wood", "red oak"},
                                                      {"rings", "flat"},
                                                      {"width", number(width)},
                                                      {"thickness", "20"},
                                                      {"deep", "70"},
                                                      {"bearing rings", "flat"},
                                                      {"bearer", "red oak"}});
}

/// Two members crossing in a half lap, each halved to 11 mm.
constexpr const char* kHalfLap = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "one"
wood = "oak"
length = 300
width = 50
thickness = 22
grain = "x"
face = "z"
at = [0, 125, 0]
[[part]]
id = "other"
wood = "oak"
length = 300
width = 50
thickness = 22
grain = "y"
face = "z"
at = [125, 0, 0]
[[joint]]
between = ["one", "other"]
kind = "lap"
glue = "PVA"
)";

/// Two boards 20 mm thick and 100 mm wide, face to face with the grain parallel: flat-sawn on quarter-sawn.
constexpr const char* kFlatOnQuarter = R"(
[[wood]]
id = "flat"
species = "red oak"
rings = "flat"
[[wood]]
id = "quarter"
species = "red oak"
rings = "quarter"
[[part]]
id = "upper"
wood = "flat"
length = 600
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 20]
[[part]]
id = "lower"
wood = "quarter"
length = 600
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[joint]]
between = ["upper", "lower"]
kind = "face"
glue = "PVA"
)";

/// A rail tenoned into a post.
constexpr const char* kTenon = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "post"
wood = "oak"
length = 900
width = 60
thickness = 60
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "rail"
wood = "oak"
length = 400
width = $deep
thickness = 25
grain = "x"
face = "y"
at = { left = 60, front = 17, bottom = 300 }
[[joint]]
between = ["rail", "post"]
kind = "tenon"
glue = "PVA"
tenon = { length = 40, width = $width, thickness = 8 }
)";

/// A wide board let into a groove of a cross piece, glued: a breadboard end, a panel in its frame, a drawer bottom.
constexpr const char* kTongue = R"(
[[wood]]
id = "wood"
species = "$wood"
rings = "flat"
[[part]]
id = "board"
wood = "wood"
length = 700
width = $width
thickness = $thickness
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "cross piece"
wood = "wood"
length = $width
width = 60
thickness = 24
grain = "y"
face = "z"
at = { left = 680, front = 0, bottom = -6 }
[[joint]]
between = ["board", "cross piece"]
kind = "$kind"
glue = "PVA"
$more
)";

/// A shelf whose end is glued into the side of a case: both run across the grain along the depth.
constexpr const char* kShelfEnd = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = "quarter"
[[part]]
id = "side"
wood = "oak"
length = 900
width = 280
thickness = 20
grain = "z"
face = "x"
at = [0, 0, 0]
[[part]]
id = "shelf"
wood = "oak"
length = 600
width = 280
thickness = 20
grain = "x"
face = "z"
at = [14, 0, 400]
[[joint]]
between = ["shelf", "side"]
kind = "housing"
glue = "PVA"
)";

/// A board with one thin layer, or one on either face, glued on across its grain.
constexpr const char* kVeneered = R"(
[[wood]]
id = "wood"
species = "white oak"
[[part]]
id = "core"
wood = "wood"
length = 600
width = 300
thickness = 16
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "sheet"
wood = "wood"
length = 300
width = 600
thickness = $thin
grain = "y"
face = "z"
at = [0, 0, 16]
$more
[[joint]]
between = ["sheet", "core"]
kind = "face"
glue = "hide glue"
)";

/// The cases were worked by hand with rounded inputs: 1 % for those, and half of the last digit that they are told to.
double tolerance(double value, double half_digit) { return 0.01 * value + half_digit; }

Finding cross_grain(const std::string& text) { return finding_of(content_of(text).findings, "cross-grain"); }

/// The same design, kept by the share that the worked cases were told for: they take PVA to creep all year.
std::string creeping(const std::string& text) { return text + "[limits]\nrelaxation = 0.35\n"; }

/// Head of a design kept between two humidities at 21 °C, made at a third.
std::string air_head(double driest, double dampest, double made)
{
    const auto settled = [](double humidity) {
        return number(equilibrium_moisture(RelativeHumidity::percent(humidity), Temperature::celsius(21)).percent());
    };
    return fill(std::string(kStill), {{"driest", settled(driest)}, {"dampest", settled(dampest)}, {"made", settled(made)}});
}

std::string white_oak_slat(double width, double thickness, const std::string& rings)
{
    return fill(kSlatOnRail, {{"wood", "white oak"},
                              {"rings", rings},
                              {"width", number(width)},
                              {"thickness", number(thickness)},
                              {"deep", "70"},
                              {"bearing rings", "flat"},
                              {"bearer", "white oak"}});
}

/// Strain of the held layer without any relaxation or set: what it wants to move over the length that holds it.
double held_strain(const Finding& f) { return value_of(f, "differential_movement") / value_of(f, "glued_length"); }

} // namespace

TEST_CASE("Red oak slats glued across a rail hold, warn or fail by their width", "[cross-grain][published]")
{
    // Cases of our own for flat-sawn red oak 20 mm on a 22 x 70 mm rail, r = 0.35, worked by hand. Strain: the same stress over r E.
    struct Row {
        bool wide_room;
        double width_mm, tension_mpa, shear_mpa, strain_pct; // 0: not told
        Verdict verdict;
    };
    const Row rows[] = {
        {true, 40, 1.88, 1.88, 0.48, Verdict::pass},  {true, 60, 2.94, 2.30, 0.74, Verdict::warn},
        {true, 75, 3.72, 2.72, 0.94, Verdict::warn},  {true, 100, 4.74, 3.09, 1.20, Verdict::fail},
        {true, 300, 6.86, 3.31, 1.74, Verdict::fail}, {false, 75, 2.24, 0, 0, Verdict::pass},
        {false, 100, 2.85, 0, 0, Verdict::warn},      {false, 150, 3.60, 0, 0, Verdict::warn},
        {false, 300, 4.13, 0, 0, Verdict::fail},
    };
    for (const Row& row : rows) {
        CAPTURE(row.wide_room, row.width_mm);
        const Finding f = cross_grain(creeping(slat_on_rail(row.width_mm, row.wide_room)));
        CHECK(f.verdict == row.verdict);
        CHECK_THAT(value_of(f, "restraint_stress"), WithinAbs(row.tension_mpa * 1e6, tolerance(row.tension_mpa, 0.005) * 1e6));
        CHECK_THAT(value_of(f, "tension_limit"), WithinAbs(2.27e6, 0.005e6));
        CHECK_THAT(value_of(f, "glue_shear_limit"), WithinAbs(2.21e6, 0.005e6));
        if (row.shear_mpa > 0)
            CHECK_THAT(value_of(f, "glue_shear"), WithinAbs(row.shear_mpa * 1e6, tolerance(row.shear_mpa, 0.005) * 1e6));
        if (row.strain_pct > 0)
            CHECK_THAT(value_of(f, "unrelaxed_strain") * 100, WithinAbs(row.strain_pct, tolerance(row.strain_pct, 0.005)));
    }
}

TEST_CASE("With half of the stress kept the same slats bear less, by the ratio of the strains that drive them",
          "[cross-grain][published]")
{
    // Made 9 %, 5.4 to 11.9 %: Δε_dry 0.01315, Δε_damp 0.01056, so 0.5 (Δε_dry + 0.5 Δε_damp) = 0.00921 against 0.35 (Δε_dry + 0.65 Δε_damp)
    // = 0.00700; made 8 %, 6 to 10 %: 0.00728 both, 0.00546 against 0.00420. No glue creeps in that air, so PVA keeps half as well.
    struct Row {
        bool wide_room;
        double width_mm, tension_mpa, strain_pct;
        Verdict verdict;
    };
    const Row rows[] = {
        {true, 40, 2.47, 0.44, Verdict::warn},   {true, 75, 4.89, 0.87, Verdict::fail},  {true, 100, 6.24, 1.11, Verdict::fail},
        {false, 40, 1.46, 0.26, Verdict::pass},  {false, 60, 2.28, 0.41, Verdict::warn}, {false, 75, 2.91, 0.52, Verdict::warn},
        {false, 150, 4.68, 0.83, Verdict::fail},
    };
    for (const Row& row : rows) {
        CAPTURE(row.wide_room, row.width_mm);
        const Finding f = cross_grain(slat_on_rail(row.width_mm, row.wide_room));
        CHECK(f.verdict == row.verdict);
        CHECK_THAT(value_of(f, "restraint_stress"), WithinAbs(row.tension_mpa * 1e6, tolerance(row.tension_mpa, 0.005) * 1e6));
        CHECK_THAT(value_of(f, "unrelaxed_strain") * 100, WithinAbs(row.strain_pct, tolerance(row.strain_pct, 0.005)));
    }
}

TEST_CASE("Borders of stress and of strain lie where they were worked out for flat-sawn red oak", "[cross-grain][published]")
{
    // 2.27 and 3.85 MPa over r E_T, E_T = 0.082 x 13.75 GPa: 0.40 and 0.68 % at r 0.5, 0.58 and 0.98 % at 0.35.
    for (const auto& [share, passes, warns] : {std::tuple(0.5, 0.40, 0.68), std::tuple(0.35, 0.58, 0.98)}) {
        CAPTURE(share);
        const auto bench = bench_of(slat_on_rail(75, true) + fmt::format("[limits]\nrelaxation = {}\n", share));
        for (const FaceDirection& face : glued_directions(bench->prepared)) {
            const auto s = judge_layer_stresses(bench->prepared, face, nullptr);
            REQUIRE(s);
            if (s->layer != "slat") continue;
            const double per_stress = s->strain / s->tension; // 1/(r E)
            CHECK_THAT(s->tension_pass * per_stress * 100, WithinAbs(passes, tolerance(passes, 0.005)));
            CHECK_THAT(s->tension_warn * per_stress * 100, WithinAbs(warns, tolerance(warns, 0.005)));
        }
    }
}

TEST_CASE("A cherry slat on a deep oak rail holds both ways", "[cross-grain][published]")
{
    // Cherry 44 x 16 mm on white oak 22 x 76 mm: 1.6 MPa of 1.8 and 3.1 across the slat; along it, where 22 mm of rail move tangentially, 0.9.
    const std::string text = still_head(true) + fill(kSlatOnRail, {{"wood", "black cherry"},
                                                                   {"rings", "flat"},
                                                                   {"width", "44"},
                                                                   {"thickness", "16"},
                                                                   {"deep", "76"},
                                                                   {"bearing rings", "quarter"},
                                                                   {"bearer", "white oak"}});
    const auto bench = bench_of(creeping(text));
    const auto faces = glued_directions(bench->prepared);
    REQUIRE(faces.size() == 2);
    for (const FaceDirection& face : faces) {
        const auto stresses = judge_layer_stresses(bench->prepared, face, nullptr);
        REQUIRE(stresses);
        CAPTURE(stresses->layer);
        CHECK(stresses->verdict == Verdict::pass);
        if (stresses->layer == "slat") {
            CHECK_THAT(stresses->tension, WithinAbs(1.6e6, tolerance(1.6, 0.05) * 1e6));
            CHECK_THAT(stresses->tension_pass, WithinAbs(1.8e6, 0.05e6));
            CHECK_THAT(stresses->tension_warn, WithinAbs(3.1e6, 0.05e6));
        } else {
            CHECK_THAT(stresses->tension, WithinAbs(0.9e6, tolerance(0.9, 0.05) * 1e6));
        }
    }
}

TEST_CASE("An oak half lap is on the edge in a dry house and holds in an even one", "[cross-grain][published]")
{
    // White oak, 11 + 11 mm, 50 mm wide: 3.2 MPa, limits 3.1 and 5.2 (thin layers stand more); 1.9 MPa in the second room.
    const Finding wide = cross_grain(creeping(still_head(true) + kHalfLap)),
                  even = cross_grain(creeping(still_head(false) + kHalfLap));
    CHECK(wide.verdict == Verdict::warn);
    CHECK_THAT(value_of(wide, "restraint_stress"), WithinAbs(3.2e6, tolerance(3.2, 0.05) * 1e6));
    CHECK_THAT(value_of(wide, "tension_limit"), WithinAbs(3.1e6, 0.05e6));
    CHECK(even.verdict == Verdict::pass);
    CHECK_THAT(value_of(even, "restraint_stress"), WithinAbs(1.9e6, tolerance(1.9, 0.05) * 1e6));
}

TEST_CASE("A flat-sawn board glued on a quarter-sawn one holds and cups", "[cross-grain][published]")
{
    // 20 + 20 mm, 100 mm wide, first room: 0.8 MPa; its own bending, shown beside it, 1.6 MPa.
    const Finding f = cross_grain(creeping(still_head(true) + kFlatOnQuarter));
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(value_of(f, "restraint_stress"), WithinAbs(0.8e6, tolerance(0.8, 0.05) * 1e6));
    CHECK_THAT(value_of(f, "own_bending"), WithinAbs(1.6e6, tolerance(1.6, 0.05) * 1e6));
}

TEST_CASE("Tenons, tongues, tails and shelf ends are judged by what they want to move", "[cross-grain][published]")
{
    struct Row {
        const char* what;
        std::string design;
        bool wide_room;
        double movement_mm;
        Verdict verdict;
    };
    const auto tenon = [](const char* width) { return fill(kTenon, {{"width", width}, {"deep", "180"}}); };
    const auto tongue = [](const char* wood, const char* width, const char* kind, const char* more = "") {
        return fill(kTongue, {{"wood", wood}, {"width", width}, {"thickness", "12"}, {"kind", kind}, {"more", more}});
    };
    const char* middle = "glued = { length = 100, at = \"middle\" }";
    const Row rows[] = {
        {"76 mm tenon", tenon("76"), true, 1.0, Verdict::pass},
        {"100 mm tenon", tenon("100"), true, 1.3, Verdict::warn},
        {"150 mm tenon, even room", tenon("150"), false, 1.1, Verdict::warn},
        {"300 mm panel, even room", tongue("white oak", "300", "groove"), false, 2.2, Verdict::fail},
        {"70 mm sliding dovetail", tongue("white oak", "70", "sliding dovetail"), true, 0.9, Verdict::pass},
        {"20 mm shelf end", kShelfEnd, true, 0.3, Verdict::pass},
        {"500 mm breadboard tongue", tongue("white oak", "500", "groove"), true, 6.5, Verdict::fail},
        {"500 mm breadboard tongue, even room", tongue("white oak", "500", "groove"), false, 3.6, Verdict::fail},
        {"its middle 100 mm glued", tongue("white oak", "500", "groove", middle), true, 1.3, Verdict::warn},
        {"its middle 100 mm glued, even room", tongue("white oak", "500", "groove", middle), false, 0.7, Verdict::pass},
        {"400 mm pine drawer bottom", tongue("eastern white pine", "400", "groove"), true, 3.0, Verdict::fail},
        {"400 mm pine drawer bottom, even room", tongue("eastern white pine", "400", "groove"), false, 1.7, Verdict::fail},
    };
    for (const Row& row : rows) {
        CAPTURE(row.what);
        const Finding f = cross_grain(still_head(row.wide_room) + row.design);
        CHECK(f.verdict == row.verdict);
        CHECK_THAT(value_of(f, "differential_movement"), WithinAbs(row.movement_mm * 1e-3, 0.05e-3));
        CHECK(static_cast<bool>(f.remedy) == (row.verdict != Verdict::pass));
    }
}

TEST_CASE("A thin sheet on both faces holds, on one face it cups", "[cross-grain][published]")
{
    // 0.6 mm: E Δε would be 7 to 10 MPa, and yet it is sound in every veneered panel.
    CHECK(cross_grain(still_head(true) + fill(kVeneered, {{"thin", "0.6"}, {"more", ""}})).verdict == Verdict::warn);
    CHECK(cross_grain(still_head(true) + fill(kVeneered, {{"thin", "0.6"}, {"more", "copies = [ { at = [0, 0, -0.6] } ]"}}))
              .verdict == Verdict::pass);
    CHECK(cross_grain(still_head(true) + fill(kVeneered, {{"thin", "6"}, {"more", ""}})).verdict == Verdict::fail);
    // Not alike: the sheet below is four times as thick as the one above, or runs the other way.
    const std::string unlike = R"(
[[part]]
id = "backing"
wood = "wood"
length = $length
width = $width
thickness = $thin
grain = "$grain"
face = "z"
at = { left = 0, front = 0, top = 0 }
[[joint]]
between = ["backing", "core"]
kind = "face"
glue = "hide glue"
)";
    const auto backed = [&](const char* thin, const char* grain, const char* length, const char* width) {
        return finding_of(content_of(still_head(true) + fill(kVeneered, {{"thin", "0.6"}, {"more", ""}}) +
                                     fill(unlike, {{"thin", thin}, {"grain", grain}, {"length", length}, {"width", width}}))
                              .findings,
                          "cross-grain", "sheet / core")
            .verdict;
    };
    CHECK(backed("0.6", "y", "300", "600") == Verdict::pass);
    CHECK(backed("2.4", "y", "300", "600") == Verdict::warn);
    CHECK(backed("0.6", "x", "600", "300") == Verdict::warn);
}

TEST_CASE("An oak panel held all round splits between 70 and 10 % humidity, however it is sawn", "[cross-grain][published]")
{
    // Mecklenburg and Tumosa 1991, quoted in The Structural Conservation of Panel Paintings (Getty 1998), p. 456: 760 x 1020 x 12.7 mm, uncracked.
    const std::string room = air_head(10, 70, 70);
    for (const char* rings : {"flat", "quarter"}) {
        CAPTURE(rings);
        CHECK(cross_grain(room + white_oak_slat(760, 12.7, rings)).verdict == Verdict::fail);
    }
}

TEST_CASE("White oak held fast bears small swings of humidity about 50 %", "[cross-grain][published]")
{
    // Strain at yield 0.4 %, at failure 0.9 % (same book, p. 545); humidity bands worked from them with the coefficients of table 13-5.
    const double yields = testing::shared_facts().number("yield_strain_across").value,
                 splits = testing::shared_facts().number("failure_strain_across").value;
    CHECK_THAT(yields, WithinRel(0.004, 1e-12));
    CHECK_THAT(splits, WithinRel(0.009, 1e-12));
    SECTION("flat-sawn, 50 ± 6 %: passes")
    {
        const Finding f = cross_grain(air_head(44, 56, 50) + white_oak_slat(140, 20, "flat"));
        CHECK(f.verdict == Verdict::pass);
        CHECK(held_strain(f) <= yields);
    }
    SECTION("flat-sawn, 50 ± 20 %: fails")
    {
        const Finding f = cross_grain(air_head(30, 70, 50) + white_oak_slat(140, 20, "flat"));
        CHECK(f.verdict == Verdict::fail);
        CHECK(held_strain(f) > splits);
    }
    SECTION("quarter-sawn, 50 ± 12 %: within yield by strain, and at worst on the edge by stress")
    {
        const Finding f = cross_grain(air_head(38, 62, 50) + white_oak_slat(140, 20, "quarter"));
        CHECK(held_strain(f) <= yields);
        CHECK(f.verdict <= Verdict::warn);
    }
}

TEST_CASE("Humidity that a held part bears before it yields and before it splits", "[cross-grain][published]")
{
    // Computed beside the same source: made at 50 % and 21 °C; bands to whole percent of humidity, rounded or cut.
    struct Row {
        const char* wood;
        double rings_deg, yield_low, yield_high, split_low, split_high;
    };
    const Row rows[] = {
        {"white oak", 0, 43, 56, 34, 64},          {"white oak", 90, 36, 63, 19, 74},  {"red oak", 0, 43, 56, 34, 64},
        {"black cherry", 0, 40, 59, 27, 69},       {"sugar maple", 0, 43, 57, 33, 64}, {"American beech", 0, 44, 56, 36, 62},
        {"eastern white pine", 0, 38, 61, 23, 72},
    };
    constexpr double kWholePercent = 1;
    const auto settled = [](double humidity) {
        return equilibrium_moisture(RelativeHumidity::percent(humidity), Temperature::celsius(21));
    };
    for (const Row& row : rows) {
        CAPTURE(row.wood, row.rings_deg);
        const auto law = movement_law(testing::shared_facts(), testing::shared_facts().find_wood(row.wood));
        REQUIRE(std::holds_alternative<MovementLaw>(law));
        const auto strain_at = [&](double humidity) {
            return std::abs(
                board_strain(std::get<MovementLaw>(law), degrees(row.rings_deg), settled(50), settled(humidity)).width);
        };
        const auto border = [&](double strain, double towards) {
            double inside = 50, outside = towards;
            for (int i = 0; i < 60; ++i) (strain_at((inside + outside) / 2) > strain ? outside : inside) = (inside + outside) / 2;
            return inside;
        };
        CHECK_THAT(border(0.004, 1), WithinAbs(row.yield_low, kWholePercent));
        CHECK_THAT(border(0.004, 99), WithinAbs(row.yield_high, kWholePercent));
        CHECK_THAT(border(0.009, 1), WithinAbs(row.split_low, kWholePercent));
        CHECK_THAT(border(0.009, 99), WithinAbs(row.split_high, kWholePercent));
    }
}
