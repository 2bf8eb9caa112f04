// Held flat or free to bow: what the rest of a piece does to a glued face.

#include "mechanics/seasons/held_flat.hpp"

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A case side 400 mm wide and `tall` high with a runner glued across it at half height, and perhaps a board above and below it.
std::string case_side(int tall, const std::string& more, double runner = 360)
{
    return design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("runner", {runner, 25, 18}, "y", "x", fmt::format("[20, 20, {}]", tall / 2)),
        part_text("side", {1.0 * tall, 400, 20}, "z", "x", "[0, 0, 0]"),
        joint_text("runner", "side", "face", "PVA"),
        more,
    });
}

std::string boards(int tall, double wide = 400)
{
    return part_text("board", {600, wide, 20}, "x", "z", "{ left = 14, front = 0, bottom = 10 }",
                     fmt::format("copies = [ {{ at = {{ left = 14, front = 0, top = {} }} }} ]", tall - 10)) +
           joint_text("board", "side", "housing", "");
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

/// Boards so `wide` lying across one rail or two, front to back; legs at the rails' ends where there are any.
std::string top(double wide, double rail, const std::string& second = "", const std::string& more = "")
{
    return design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("board", {900, wide, 20}, "x", "z", "[0, 100, 500]"),
        part_text("rail", {rail, 60, 22}, "y", "x", "[40, 100, 440]", second),
        joint_text("board", "rail", "face", "PVA"),
        more,
    });
}

bool rail_held(const std::string& text)
{
    const auto bench = bench_of(text);
    return governing(*bench, "board", "rail").held_flat;
}

std::string second_rail(int apart) { return "copies = [ { at = [" + std::to_string(40 + apart) + ", 100, 440] } ]"; }
std::string legs(int rail)
{
    return part_text("leg", {500, 50, 50}, "z", "x", "[26, 50, 0]",
                     fmt::format("copies = [ {{ at = [26, {}, 0] }} ]", 100 + rail)) +
           joint_text("rail", "leg", "tenon", "PVA", "tenon = { length = 30, width = 40, thickness = 8 }");
}

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
    const auto layer = [](double thick) {
        return part_text("board below", {900, 400, thick}, "x", "z", "{ left = 0, front = 100, top = 440 }") +
               joint_text("board below", "rail", "face", "PVA");
    };
    CHECK(rail_held(top(400, 400, "", layer(20))));
    CHECK_FALSE(rail_held(top(400, 400, "", layer(30))));
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
    const std::string text = design({
        still_head(true),
        wood_text("red oak", ""),
        part_text("board", {600, 80, 20}, "x", "z", "[0, 0, 60]", "repeat = { count = 4, along = \"y\", gap = 0 }"),
        part_text("rail", {320, 60, 22}, "y", "x", "[100, 0, 0]"),
        joint_text("board", "rail", "face", "PVA"),
    });
    const auto judged = [](const std::string& whole) {
        return finding_of(content_of(whole).findings, "cross-grain", "board / rail");
    };
    CHECK_THAT(value_of(judged(text), "glued_length"), WithinAbs(0.080, 1e-9)); // four boards, each by itself
    const Finding one = judged(text + joint_text("board", "board", "edge", "PVA"));
    CHECK_THAT(value_of(one, "glued_length"), WithinAbs(0.320, 1e-9));
    CHECK(one.verdict == Verdict::fail);
}
