// bearing: of two woods the weaker, and the wood beside a short bearing.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A board across two sills that lie on the floor, each of its own wood; the sill's width is 70 mm, the board's 90.
std::unique_ptr<Bench> crossing(const std::string& sill, const std::string& board, double length = 400, double width = 90)
{
    const auto of = [](std::string part, const std::string& wood) {
        return part.replace(part.find("\"stock\""), 7, "\"" + wood + "\"");
    };
    return bench_of(design({
        head_text({.name = "Crossing"}),
        "[[wood]]\nid = \"hard\"\nspecies = \"white oak\"\nrings = \"flat\"\n",
        "[[wood]]\nid = \"soft\"\nspecies = \"eastern white pine\"\nrings = \"flat\"\n",
        of(part_text("sill", {length, 70, 60}, "y", "z", "[0, 0, 0]", "copies = [ { at = [730, 0, 0] } ]"), sill),
        of(part_text("board", {800, width, 40}, "x", "z", fmt::format("[0, {}, 60]", (length - width) / 2)), board),
        load_text("weight", "board", 900, fmt::format("[300, {}, 100]", length / 2), "lasting = true"),
    }));
}

} // namespace

TEST_CASE("Of two woods that cross the weaker dents, whichever lies on top", "[bearing]")
{
    const auto under = crossing("soft", "hard"), over = crossing("hard", "soft");
    const double pine = under->prepared.state_of(under->copy("sill #1")).loaded.compression_across->value.value(),
                 oak = under->prepared.state_of(under->copy("board")).loaded.compression_across->value.value();
    CHECK(oak > 2 * pine);
    // Left of it: 900 × 465/730 and half the board's weight, on 70 × 90 mm. The sill is pressed over 90 mm along its grain, 155 mm from its ends:
    // it counts 9.5 mm longer; the board is pressed at its very ends.
    for (const auto* bench : {&under, &over}) {
        const bool sill = bench == &under;
        CAPTURE(sill);
        const Bench& b = **bench;
        const Finding f = finding_of(run_check("bearing", b.prepared), "bearing");
        const double own = b.prepared.masses[b.copy("board")] * kStandardGravity;
        CHECK_THAT(value_of(f, "force"), WithinRel(900 * 465.0 / 730 + own / 2, 2e-3));
        CHECK_THAT(value_of(f, "resistance"), WithinRel(pine / 1.67, 1e-9));
        CHECK_THAT(value_of(f, "area"), WithinRel(0.070 * 0.090, 1e-6));
        CHECK_THAT(value_of(f, "area_counted"), WithinRel(0.070 * (sill ? 0.090 + 0.375 * 0.0254 : 0.090), 1e-6));
        CHECK_THAT(*f.utilisation, WithinRel(value_of(f, "force") / value_of(f, "area_counted") / (pine / 1.67), 1e-9));
        CHECK(f.headline.find(sill ? "sill" : "board") < 3);
    }
}

TEST_CASE("A bearing counts as longer only far from the ends and where it is short", "[bearing]")
{
    const auto counted = [](double length, double width) {
        const auto bench = crossing("soft", "hard", length, width);
        const Finding f = finding_of(run_check("bearing", bench->prepared), "bearing");
        return value_of(f, "area_counted") / value_of(f, "area");
    };
    CHECK_THAT(counted(240, 90), WithinRel(1.0, 1e-9));            // 75 mm from its ends
    CHECK_THAT(counted(400, 160), WithinRel(1.0, 1e-9));           // over 6 in long
    CHECK_THAT(counted(300, 40), WithinRel(1 + 9.525 / 40, 1e-6)); // 130 mm from its ends
    // Nothing jumps on the way.
    CHECK(counted(400, 152) < 1.002);
    CHECK(counted(244, 90) < 1.01);
}
