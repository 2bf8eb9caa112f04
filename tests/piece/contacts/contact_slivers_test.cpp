// How much narrow faces take of what presses on them.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A board that lies on one broad post and reaches by so many millimetres over a second one; wholly dry.
std::unique_ptr<Bench> reaching(double over, double thick = 20)
{
    return bench_of(design({
        head_text({.name = "Reach"}),
        wood_text("white oak"),
        part_text("post", {400, 90, 90}, "z", "x", "[0, 0, 0]"),
        part_text("other", {400, 70, 40}, "z", "x", "[500, 0, 0]"),
        part_text("board", {500 + over, 90, thick}, "x", "z", "[0, 0, 400]"),
        load_text("weight", "board", 100, "[45, 45, 410]"),
    }));
}

} // namespace

TEST_CASE("Slivers bear nothing, and more than a sliver comes in slowly", "[contact]")
{
    for (const auto& [over, bears] : {std::pair{0.5, 0.0}, {2.9, 0.0}, {4.5, 0.125}, {6.0, 1.0}, {25.0, 1.0}}) {
        CAPTURE(over);
        const auto bench = reaching(over);
        const Contact& c = bench->contact("board", "other");
        REQUIRE(c.patches.size() == 1);
        CHECK_THAT(c.patches[0].bears, WithinAbs(bears, 1e-6));
        const std::vector<std::string> by = bench->borne_by("board");
        CHECK(by.size() == (bears > 0 ? 2 : 1));
    }
}

TEST_CASE("A thin board that lies on the whole of its edge bears on it", "[contact]")
{
    // 2.4 mm thick, on edge on the post: no sliver, since it is no wider anywhere.
    const auto bench = bench_of(design({
        head_text({.name = "Thin"}),
        wood_text("white oak"),
        part_text("post", {400, 90, 90}, "z", "x", "[0, 0, 0]"),
        part_text("board", {90, 60, 2.4}, "x", "y", "[0, 20, 400]"),
        load_text("weight", "board", 1, "[45, 21, 430]"),
    }));
    CHECK(bench->contact("board", "post").patches[0].bears == 1);
}

TEST_CASE("A face in several pieces is as wide as they are together", "[contact]")
{
    // Notches leave a comb of teeth 2 mm wide under a board: each tooth alone is a sliver.
    const auto comb = [](double tooth) {
        return bench_of(design({
            head_text({.name = "Comb"}),
            wood_text("white oak"),
            part_text("post", {400, 90, 90}, "z", "x", "[0, 0, 0]"),
            part_text(
                "board", {90, 60, 20}, "x", "z", "[0, 10, 400]",
                fmt::format("notches = [ {{ from = \"bottom\", depth = 5, width = {}, first = {}, step = 90, count = 1 }} ]",
                            90 - 2 * tooth, tooth)),
            load_text("weight", "board", 1, "[45, 21, 420]"),
        }));
    };
    for (const Patch& p : comb(2)->contact("board", "post").patches) CHECK(p.bears == 0);
    for (const Patch& p : comb(9)->contact("board", "post").patches) CHECK(p.bears == 1);
}
