// Held flat or free to bow: what the rest of a piece does to a glued face.

#include "mechanics/held_flat.hpp"

#include "catch.hpp"
#include "checks/checked.hpp"
#include "mechanics/glued_face.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A case side 400 mm wide and $tall high with a runner glued across it at half height, and a board above and below it.
constexpr const char* kCase = R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "runner"
wood = "oak"
length = $runner
width = 25
thickness = 18
grain = "y"
face = "x"
at = [20, 20, $middle]
[[part]]
id = "side"
wood = "oak"
length = $tall
width = 400
thickness = 20
grain = "z"
face = "x"
at = [0, 0, 0]
[[joint]]
between = ["runner", "side"]
kind = "face"
glue = "PVA"
$more
)";

constexpr const char* kBoards = R"(
[[part]]
id = "board"
wood = "oak"
length = 600
width = $wide
thickness = 20
grain = "x"
face = "z"
at = { left = 14, front = 0, bottom = 10 }
copies = [ { at = { left = 14, front = 0, top = $top } } ]
[[joint]]
between = ["board", "side"]
kind = "housing"
)";

std::string case_side(int tall, const std::string& more, int runner = 360)
{
    return still_head(true) + fill(kCase, {{"runner", std::to_string(runner)},
                                           {"middle", std::to_string(tall / 2)},
                                           {"tall", std::to_string(tall)},
                                           {"more", more}});
}

std::string boards(int tall, int wide = 400)
{
    return fill(kBoards, {{"wide", std::to_string(wide)}, {"top", std::to_string(tall - 10)}});
}

/// The glued face of two parts in the direction of its greater movement.
FaceDirection governing(const Bench& bench, const std::string& first, const std::string& second)
{
    std::optional<FaceDirection> found;
    for (const FaceDirection& face : glued_directions(bench.prepared)) {
        const Contact& c = bench.layout.contacts[face.contact];
        if (bench.piece.part_of(c.first).id != first || bench.piece.part_of(c.second).id != second) continue;
        if (!found || face.movement() > found->movement()) found = face;
    }
    if (!found) throw std::logic_error("no such glued face");
    return *found;
}

bool runner_held(const std::string& text)
{
    const auto bench = bench_of(text);
    return governing(*bench, "runner", "side").held_flat;
}

/// Boards $wide wide lying across two rails $apart apart, front to back; legs at the rails' ends where there are any.
constexpr const char* kTop = R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "board"
wood = "oak"
length = 900
width = $wide
thickness = 20
grain = "x"
face = "z"
at = [0, 100, 500]
[[part]]
id = "rail"
wood = "oak"
length = $rail
width = 60
thickness = 22
grain = "y"
face = "x"
at = [40, 100, 440]
$second
[[joint]]
between = ["board", "rail"]
kind = "face"
glue = "PVA"
)";

constexpr const char* kLegs = R"(
[[part]]
id = "leg"
wood = "oak"
length = 500
width = 50
thickness = 50
grain = "z"
face = "x"
at = [26, 50, 0]
copies = [ { at = [26, $far, 0] } ]
[[joint]]
between = ["rail", "leg"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 40, thickness = 8 }
)";

std::string top(int wide, int rail, const std::string& second = "", const std::string& more = "")
{
    return still_head(true) + fill(kTop, {{"wide", std::to_string(wide)}, {"rail", std::to_string(rail)}, {"second", second}}) +
           more;
}

bool rail_held(const std::string& text)
{
    const auto bench = bench_of(text);
    return governing(*bench, "board", "rail").held_flat;
}

std::string second_rail(int apart) { return "copies = [ { at = [" + std::to_string(40 + apart) + ", 100, 440] } ]"; }
std::string legs(int rail) { return fill(kLegs, {{"far", std::to_string(100 + rail)}}); }

} // namespace

TEST_CASE("The side of a case is held flat by boards housed above and below", "[held-flat]")
{
    CHECK(runner_held(case_side(700, boards(700))));
    CHECK_FALSE(runner_held(case_side(700, "")));
    // Boards farther away than the side is wide do not keep its middle from cupping.
    CHECK_FALSE(runner_held(case_side(1400, boards(1400))));
    // Boards over half of the width only hold half of it.
    CHECK_FALSE(runner_held(case_side(700, boards(700, 200))));
}

TEST_CASE("Glue on a lesser part of the width bows the wood about it", "[held-flat]")
{
    CHECK_FALSE(runner_held(case_side(700, boards(700), 230)));
    CHECK(runner_held(case_side(700, boards(700), 250)));
}

TEST_CASE("A rail that is mostly under glue and joined to legs at both ends is held flat by its frame", "[held-flat]")
{
    CHECK(rail_held(top(400, 400, "", legs(400))));
    CHECK_FALSE(rail_held(top(400, 400)));
    // A narrow slat on the long rail of a frame: the frame is far away from the wood that bows.
    CHECK_FALSE(rail_held(top(60, 400, "", legs(400))));
}

TEST_CASE("A second rail near the first holds wide boards flat, not slats", "[held-flat]")
{
    CHECK(rail_held(top(400, 400, second_rail(300))));
    CHECK_FALSE(rail_held(top(400, 400, second_rail(600))));
    CHECK_FALSE(rail_held(top(60, 60, second_rail(300))));
}

TEST_CASE("A like layer on the other face balances the first", "[held-flat]")
{
    constexpr const char* layer = R"([[part]]
id = "board below"
wood = "oak"
length = 900
width = 400
thickness = $thick
grain = "x"
face = "z"
at = { left = 0, front = 100, top = 440 }
[[joint]]
between = ["board below", "rail"]
kind = "face"
glue = "PVA"
)";
    CHECK(rail_held(top(400, 400, "", fill(layer, {{"thick", "20"}}))));
    CHECK_FALSE(rail_held(top(400, 400, "", fill(layer, {{"thick", "30"}}))));
}

TEST_CASE("Held flat, the wood is worse off than free to bow, and the working says what holds it", "[held-flat]")
{
    const auto judged = [](const std::string& text) {
        return finding_of(content_of(text).findings, "cross-grain", "runner / side");
    };
    const Finding held = judged(case_side(700, boards(700))), free = judged(case_side(700, ""));
    CHECK(value_of(held, "restraint_stress") > 1.1 * value_of(free, "restraint_stress"));
    CHECK(value_of(held, "own_bending") == 0);
    CHECK(value_of(free, "own_bending") > 0);
    const auto says = [](const Finding& f, const std::string& words) {
        return std::any_of(f.working.begin(), f.working.end(),
                           [&](const WorkingStep& step) { return step.with.find(words) != std::string::npos; });
    };
    CHECK(says(held, "held flat by others fastened across the same board"));
    CHECK(says(free, "free to bow"));
}

TEST_CASE("Boards glued edge to edge reach over a rail as one board", "[held-flat]")
{
    std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "board"
wood = "oak"
length = 600
width = 80
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 60]
repeat = { count = 4, along = "y", gap = 0 }
[[part]]
id = "rail"
wood = "oak"
length = 320
width = 60
thickness = 22
grain = "y"
face = "x"
at = [100, 0, 0]
[[joint]]
between = ["board", "rail"]
kind = "face"
glue = "PVA"
)";
    const auto judged = [](const std::string& design) {
        return finding_of(content_of(design).findings, "cross-grain", "board / rail");
    };
    CHECK_THAT(value_of(judged(text), "glued_length"), WithinAbs(0.080, 1e-9)); // four boards, each by itself
    const Finding one = judged(text + "[[joint]]\nbetween = [\"board\", \"board\"]\nkind = \"edge\"\nglue = \"PVA\"\n");
    CHECK_THAT(value_of(one, "glued_length"), WithinAbs(0.320, 1e-9));
    CHECK(one.verdict == Verdict::fail);
}
