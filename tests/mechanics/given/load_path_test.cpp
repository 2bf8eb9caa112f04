// Which part bears which.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

using Names = std::vector<std::string>;

/// Four posts, two rails between them, slats on the rails.
std::string bench_text(const char* kind = "tenon", const char* glue = "PVA",
                       const char* sizes = "tenon = { length = 20, width = 40, thickness = 8 }",
                       const std::vector<std::string>& wall = {})
{
    return design({
        head_text({.name = "Bench", .wall = wall, .made = 8, .air = "heated, cold winters"}),
        wood_text("white oak", ""),
        part_text("leg", {400, 40, 40}, "z", "y", "[0, 0, 0]",
                  "copies = [ { at = [960, 0, 0] }, { at = [0, 260, 0] }, { at = [960, 260, 0] } ]"),
        part_text("rail", {920, 60, 20}, "x", "y", "{ left = 40, front = 10, top = 400 }",
                  "copies = [ { at = { left = 40, front = 270, top = 400 } } ]"),
        part_text("slat", {300, 60, 20}, "y", "z", "[60, 0, 400]", "repeat = { count = 10, along = \"x\", gap = 20 }"),
        joint_text("rail", "leg", kind, glue, sizes),
    });
}

} // namespace

TEST_CASE("Slats lie on rails, rails hang in legs, legs stand", "[load-path]")
{
    const auto bench = bench_of(bench_text());
    const LoadPath& path = bench->prepared.layout->path;
    CHECK(bench->borne_by("slat #4") == Names{"rail #1", "rail #2"});
    CHECK(bench->borne_by("rail #1") == Names{"leg #1", "leg #2"});
    CHECK(bench->borne_by("leg #1").empty());
    for (std::size_t i = 0; i < bench->piece.copies.size(); ++i) {
        CHECK(path.on_floor[i] == (bench->piece.part_of(i).id == "leg"));
        CHECK(path.reached[i]);
    }
}

TEST_CASE("Every part stands in the order before what bears it", "[load-path]")
{
    for (const char* name : {"boot-bench", "hall-table-glued-top", "window-seat-metric"}) {
        CAPTURE(name);
        const auto bench = bench_of(built_in_design(name));
        const LoadPath& path = bench->prepared.layout->path;
        std::vector<std::size_t> place(path.order.size());
        REQUIRE(path.order.size() == bench->piece.copies.size());
        for (std::size_t k = 0; k < path.order.size(); ++k) place[path.order[k]] = k;
        for (std::size_t i = 0; i < path.bearings.size(); ++i)
            for (const Bearing& b : path.bearings[i]) CHECK(place[i] < place[b.below]);
    }
}

TEST_CASE("A bearing lies where the two parts meet", "[load-path]")
{
    const auto bench = bench_of(bench_text());
    const auto& bearings = bench->prepared.layout->path.bearings[bench->copy("slat #1")];
    REQUIRE(bearings.size() == 2);
    for (const Bearing& b : bearings) {
        const bool front = b.below == bench->copy("rail #1");
        CHECK_THAT(b.from, WithinAbs(front ? 0.010 : 0.270, 1e-9));
        CHECK_THAT(b.to, WithinAbs(front ? 0.030 : 0.290, 1e-9));
        CHECK_THAT(b.across, WithinAbs(0.090, 1e-9));
    }
}

TEST_CASE("Side by side and dry, nothing is borne", "[load-path]")
{
    const auto dry = bench_of(bench_text("butt", "", ""));
    CHECK(dry->borne_by("rail #1").empty());
    CHECK_FALSE(dry->prepared.layout->path.reached[dry->copy("rail #1")]);
    const auto glued = bench_of(bench_text("butt", "PVA", ""));
    CHECK(glued->borne_by("rail #1") == Names{"leg #1", "leg #2"});
    const auto screwed = bench_of(bench_text("screws", "", "screws = { diameter = 5, length = 60, count = 2 }"));
    CHECK(screwed->borne_by("rail #1") == Names{"leg #1", "leg #2"});
}

TEST_CASE("Parts screwed to a wall bear the rest", "[load-path]")
{
    const auto bench = bench_of(bench_text("tenon", "PVA", "tenon = { length = 20, width = 40, thickness = 8 }", {"rail"}));
    CHECK(bench->prepared.layout->path.on_floor[bench->copy("rail #1")]);
    CHECK_FALSE(bench->prepared.layout->path.on_floor[bench->copy("leg #1")]);
    CHECK(bench->borne_by("slat #1") == Names{"rail #1", "rail #2"});
    CHECK(bench->borne_by("leg #1") == Names{"rail #1"}); // the legs hang from the rails
}

TEST_CASE("On one level what lies below bears what lies on it", "[load-path]")
{
    // A post carries a plank at its side by a dowel and another on top of that plank.
    const char* dowels = "dowels = { diameter = 8, length = 40, count = 2 }";
    const std::string text = design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("post", {400, 40, 40}, "z", "y", "[0, 0, 0]"),
        part_text("lower", {300, 40, 20}, "x", "z", "[40, 0, 200]"),
        part_text("upper", {300, 40, 20}, "x", "z", "[40, 0, 220]"),
        joint_text("lower", "post", "dowel", "PVA", dowels),
        joint_text("upper", "post", "dowel", "PVA", dowels),
    });
    const auto bench = bench_of(text);
    CHECK(bench->borne_by("upper #1") == Names{"lower #1", "post #1"});
    CHECK(bench->borne_by("lower #1") == Names{"post #1"});
}
