// The back of a seat, what leans on it, and how that tips the seat.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/loads/back_rest.hpp"
#include "mechanics/loads/footing.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A plank seat 1200 × 400 mm, 450 mm high, on four legs, with whatever stands up behind it.
std::string plank_seat(const std::string& behind = "")
{
    return design({
        head_text({.name = "Settle",
                   .use = "seat",
                   .carries = {"plank"},
                   .more = "size = [1200, 400, 900]",
                   .made = 8,
                   .air = "heated, cold winters"}),
        wood_text("white oak", ""),
        part_text("leg", {420, 60, 60}, "z", "y", "[0, 0, 0]", "mirror = [\"x\", \"y\"]"),
        part_text("plank", {1200, 400, 30}, "x", "z", "[0, 0, 420]"),
        behind,
    });
}

std::string posts(double tall)
{
    return part_text("post", {tall, 40, 30}, "z", "y", "{ left = 100, back = 400, bottom = 450 }", "mirror = [\"x\"]");
}
std::string board(int height) { return part_text("back board", {920, 100, 20}, "x", "y", fmt::format("[140, 375, {}]", height)); }

std::optional<BackRest> back_of(const Piece& piece)
{
    return back_rest_of(piece, testing::shared_facts(), piece.carried_copies());
}

} // namespace

TEST_CASE("A back is what rises 250 mm over a seat along more than half of a side", "[back-rest]")
{
    CHECK_FALSE(back_of(piece_of(plank_seat())));
    // Two posts with nothing between them are none; nor is a rail at the height of arms.
    CHECK_FALSE(back_of(piece_of(plank_seat(posts(400)))));
    CHECK_FALSE(back_of(piece_of(plank_seat(posts(240) + board(580)))));

    const Piece piece = piece_of(plank_seat(posts(400) + board(700)));
    const auto back = back_of(piece);
    REQUIRE(back);
    CHECK(back->axis == 1);
    CHECK(back->far);
    CHECK_THAT(back->seat, WithinAbs(0.45, 1e-12));
    CHECK_THAT(back->top, WithinAbs(0.85, 1e-12));
    CHECK_THAT(back->height, WithinAbs(0.75, 1e-12)); // 300 mm above the seat
    CHECK_THAT(back->front, WithinAbs(0.37, 1e-12));  // the posts stand 30 mm deep

    SECTION("a low back is leaned on 100 mm under its edge")
    {
        const auto low = back_of(piece_of(plank_seat(posts(340) + board(680))));
        REQUIRE(low);
        CHECK_THAT(low->height, WithinAbs(0.69, 1e-12)); // 790 less 100
    }
}

TEST_CASE("A leaning back presses on what lies behind the pad, by area, and level", "[back-rest]")
{
    const Piece piece = piece_of(plank_seat(posts(400) + board(700)));
    const Facts& facts = testing::shared_facts();
    const auto back = back_of(piece);
    REQUIRE(back);
    // In the middle only the board is there: 250 mm of it.
    const auto middle = lean_back(piece, facts, *back, 0.6, 450);
    REQUIRE(middle.size() == 1);
    CHECK_THAT(middle[0].force, WithinAbs(450, 1e-9));
    CHECK_THAT(middle[0].to - middle[0].from, WithinAbs(0.25, 1e-12));
    CHECK(middle[0].direction == Point{0, 1, 0});
    // Over a post: 25 to 275 mm along. Post 40 × 200 mm of the pad, board (275 − 140) × 100 mm.
    const auto end = lean_back(piece, facts, *back, 0.15, 450);
    REQUIRE(end.size() == 2);
    double post = 0, all = 0;
    for (const CopyLoad& load : end) {
        all += load.force;
        if (piece.part_of(load.copy).id == "post") post += load.force;
    }
    CHECK_THAT(all, WithinAbs(450, 1e-9));
    CHECK_THAT(post, WithinAbs(450 * (40.0 * 200) / (40.0 * 200 + 135.0 * 100), 1e-9));
}

TEST_CASE("People lean on a back just short of tipping the seat", "[back-rest][load-cases]")
{
    const auto bench = bench_of(plank_seat(posts(400) + board(700)));
    std::size_t found = 0, found_often = 0;
    for (const LoadCase& c : bench->prepared.statics.cases.cases) {
        if (c.name.find("leaning on the back") == std::string::npos) continue;
        const bool often = c.kind == DemandKind::durability;
        (often ? found_often : found) += 1;
        CHECK((often || c.kind == DemandKind::proof));
        CHECK(c.feet_stopped);
        CHECK_FALSE(c.feet_free);
        CHECK_FALSE(c.counts_for_sag);
        double level = 0, down = 0, moment = 0;
        for (const CopyLoad& load : c.loads) {
            level += load.force * load.direction[1];
            down -= load.force * load.direction[2];
            if (load.direction[1] > 0) moment += load.force * 0.75;
        }
        const double people = down / (often ? 1000 : 1300), push = often ? 300 : 450; // of a place, at home
        CHECK_THAT(people, WithinAbs(std::round(people), 1e-9));
        CHECK(level <= people * push * (1 + 1e-9));
        // Sitting with the middle of the thighs 175 mm before the back, 0.37 m: 175 mm inside the middle of the back feet, at 0.37 m too.
        const Footing footing = footing_of(bench->prepared);
        // The back's board touches the posts and is joined to nothing: it hangs behind, and does not help to hold the seat down.
        const auto moment_of = [](double weight, double at) { return weight * (0.37 - at); };
        const double holds = 0.9 * (down * 0.175 + moment_of(footing.weight, footing.centre[1]) +
                                    moment_of(footing.unborne.down, footing.unborne.at[1]));
        CHECK_THAT(moment, WithinRel(std::min(people * push * 0.75, holds), 1e-3));
    }
    CHECK(found == 4);       // the middle, both ends, two side by side
    CHECK(found_often == 3); // one place at a time
}

TEST_CASE("One who leans back onto the rear feet holds the seat in balance there", "[back-rest][load-cases]")
{
    const auto tilted_in = [](const std::string& text) {
        std::vector<LoadCase> tilted;
        for (const LoadCase& c : bench_of(text)->prepared.statics.cases.cases)
            if (c.feet_free) tilted.push_back(c);
        return tilted;
    };
    const std::string text = plank_seat(posts(400) + board(700));
    const auto tilted = tilted_in(text);
    REQUIRE(tilted.size() == 1);
    const LoadCase& c = tilted.front();
    CHECK(c.kind == DemandKind::service);
    CHECK(c.duration == LoadDuration::short_term);
    CHECK(*c.feet_free == Side::front);
    CHECK(c.feet_stopped);
    CHECK(c.proof); // not asked whether it stands
    CHECK_FALSE(c.counts_for_sag);
    double level = 0, down = 0;
    for (const CopyLoad& load : c.loads) {
        level += load.force * load.direction[1];
        down -= load.force * load.direction[2];
    }
    CHECK_THAT(down, WithinRel(127 * 9.80665, 1e-9));
    // H = W a/h: the sitter 175 mm before the rear feet at 0.37 m, the piece's own weight before them too; the back pressed at 0.75 m.
    const auto bench = bench_of(text);
    const Footing footing = footing_of(bench->prepared);
    CHECK_THAT(level * 0.75, WithinRel(down * 0.175 + footing.weight * (0.37 - footing.centre[1]), 1e-3));

    // Without a back nobody leans.
    CHECK(tilted_in(plank_seat()).empty());
    // Two cannot tilt what takes more than the test of the back; one place is tilted whatever it takes.
    const std::string heavy = load_text("trunk", "plank", 1500, "[600, 200]", "patch = [300, 300]\nlasting = true");
    CHECK(tilted_in(text + heavy).empty());
    CHECK(tilted_in(text + heavy + "[limits]\nseats = 1\n").size() == 1);
}

TEST_CASE("Leaning back tips a seat about its back feet only", "[back-rest][tip]")
{
    const auto bench = bench_of(plank_seat(posts(400) + board(700)));
    const auto findings = run_check("tip", bench->prepared);
    REQUIRE(findings.size() == 1);
    const Finding& f = findings.front();
    CHECK(f.where == "a person leaning on the back");
    // 285.7 N/m × (1 − 0.45) m at 0.75 m against 600 N at 0.4 − (0.37 − 0.175) m and the piece's own weight.
    const Footing footing = footing_of(bench->prepared);
    const double over = 285.7 * 0.55 * 0.75, holds = 600 * (0.4 - 0.195) + footing.weight * (0.4 - footing.centre[1]);
    REQUIRE(f.utilisation);
    CHECK_THAT(value_of(f, "overturning_ratio"), WithinRel(over / holds, 1e-9));
    CHECK_THAT(*f.utilisation, WithinRel(over / holds / 0.8, 1e-9));
}
