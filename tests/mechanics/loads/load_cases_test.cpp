// The loads that a use brings.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/joints/worst_forces.hpp"

#include <numeric>
#include <tuple>

using namespace checked;

namespace {

/// Slats 400 mm long over a row of the given length, on two bearers.
std::unique_ptr<Bench> seat(const std::string& more = "", const char* use = "seat", int count = 21)
{
    return bench_of(design({
        head_text({.name = "Seat", .use = use, .carries = {"slat"}, .made = 8, .air = "heated, cold winters"}),
        wood_text("white oak", ""),
        part_text("bearer", {1300, 300, 20}, "x", "y", "[0, 20, 0]", "copies = [ { at = [0, 360, 0] } ]"),
        part_text("slat", {400, 50, 20}, "y", "z", "[0, 0, 300]",
                  fmt::format("repeat = {{ count = {}, along = \"x\", gap = 10 }}", count)),
        more,
    }));
}

/// A load on a patch of 100 × 100 mm.
std::string pot_text(const char* name, double newtons, const char* at, const std::string& more = "")
{
    return load_text(name, "slat", newtons, at, "patch = [100, 100]\n" + more);
}

const LoadCase& case_named(const Bench& bench, std::string_view name)
{
    for (const LoadCase& c : bench.prepared.statics.cases.cases)
        if (c.name == name) return c;
    throw std::logic_error("no load case " + std::string(name));
}

std::size_t cases_with(const Bench& bench, std::string_view words)
{
    std::size_t n = 0;
    for (const LoadCase& c : bench.prepared.statics.cases.cases) n += c.name.find(words) != std::string::npos ? 1 : 0;
    return n;
}

/// All cases whose name begins so.
std::vector<const LoadCase*> cases_of(const Bench& bench, std::string_view words)
{
    std::vector<const LoadCase*> found;
    for (const LoadCase& c : bench.prepared.statics.cases.cases)
        if (c.name.find(words) == 0) found.push_back(&c);
    if (found.empty()) throw std::logic_error("no load case " + std::string(words));
    return found;
}

double sum_of(const LoadCase& load_case)
{
    return std::accumulate(load_case.loads.begin(), load_case.loads.end(), 0.0,
                           [](double sum, const CopyLoad& load) { return sum + load.force; });
}

constexpr double kSitter = 127 * 9.80665; // N
constexpr const char* kOnePerson = "one person sitting ";
constexpr const char* kHardSitter = "one person sitting down hard";

/// Sitting as usual, not down hard.
std::vector<const LoadCase*> sitters_of(const Bench& bench)
{
    auto found = cases_of(bench, kOnePerson);
    std::erase_if(found, [](const LoadCase* c) { return c->name.find(kHardSitter) == 0; });
    return found;
}

} // namespace

TEST_CASE("Places on a seat: a length of 600 mm each, rounded down, at least one", "[load-cases]")
{
    CHECK(seats_of(seat()->piece, testing::shared_facts()) == 2);               // 1250 mm
    CHECK(seats_of(seat("", "seat", 20)->piece, testing::shared_facts()) == 1); // 1190 mm
    CHECK(seats_of(seat("", "seat", 3)->piece, testing::shared_facts()) == 1);
    CHECK(seats_of(seat("[limits]\nseats = 3\n")->piece, testing::shared_facts()) == 3);
}

TEST_CASE("People on a seat: side by side, one at every place, one standing on every slat", "[load-cases]")
{
    const auto bench = seat();
    // 800 mm of 1250: at both ends and in the middle, each in the middle of the depth and at both edges of it.
    const auto side_by_side = cases_of(*bench, "2 people side by side");
    CHECK(side_by_side.size() == 9);
    for (const LoadCase* c : side_by_side) {
        CAPTURE(c->name);
        CHECK(c->kind == DemandKind::service);
        CHECK_FALSE(c->proof);
        CHECK(c->duration == LoadDuration::sitting);
        CHECK(c->counts_for_sag);
        CHECK(c->loads.size() >= 13); // 800 mm of slats at 60 mm
        CHECK(c->loads.size() <= 15);
        CHECK_THAT(sum_of(*c), WithinRel(2 * 114 * 9.80665, 1e-9));
        CHECK_THAT(c->total, WithinRel(2 * 114 * 9.80665, 1e-9));
    }
    CHECK(cases_with(*bench, "2 people side by side, their middle 400 mm from the left end") == 3);
    CHECK(cases_with(*bench, "their middle 850 mm from the left end, nearer the back edge") == 1);
    CHECK(cases_with(*bench, "3 people") == 0);
    CHECK(sitters_of(*bench).size() >= 3 * 4);
    CHECK(sitters_of(*bench).size() <= 3 * 9);
    CHECK(cases_with(*bench, "one person standing") == 3 * 21);
    const LoadCase& standing = case_named(*bench, "one person standing on slat #5, at its middle");
    CHECK(standing.proof);
    CHECK_FALSE(standing.counts_for_sag);
    REQUIRE(standing.loads.size() == 1);
    CHECK(standing.loads[0].copy == bench->copy("slat #5"));
    CHECK_THAT(standing.loads[0].force, WithinRel(1300.0, 1e-9)); // home
    CHECK_THAT(standing.loads[0].to - standing.loads[0].from, WithinRel(0.100, 1e-9));
    CHECK_THAT((standing.loads[0].to + standing.loads[0].from) / 2, WithinRel(0.200, 1e-9));
}

TEST_CASE("A sitter bears on what is under him, by area", "[load-cases]")
{
    const auto bench = seat();
    for (const LoadCase* c : sitters_of(*bench)) {
        CAPTURE(c->name);
        CHECK_THAT(sum_of(*c), WithinRel(kSitter, 1e-9));
        CHECK(c->loads.size() >= 6); // 400 mm of seat: slats at 60 mm
        CHECK(c->loads.size() <= 8);
        for (const CopyLoad& load : c->loads) CHECK(load.to - load.from <= 0.350 + 1e-9);
    }
}

TEST_CASE("The more people sit the less each of them weighs, unless the design says what", "[load-cases]")
{
    const auto bench = seat("[limits]\nseats = 3\n"), stated = seat("[limits]\nseats = 3\nsitter = \"80 kg\"\n");
    // 95th percentiles, alone and of the mean of two and three.
    for (const auto& [words, kilograms, people] :
         {std::tuple{kOnePerson, 127.0, 1}, std::tuple{"2 people", 114.0, 2}, std::tuple{"3 people", 108.0, 3}}) {
        CHECK_THAT(cases_of(*bench, words).front()->total, WithinRel(people * kilograms * kStandardGravity, 1e-9));
        CHECK_THAT(cases_of(*stated, words).front()->total, WithinRel(people * 80 * kStandardGravity, 1e-9));
        CHECK_THAT(cases_of(*stated, words).front()->source, ContainsSubstring("[limits] sitter"));
    }
}

TEST_CASE("One sits down hard wherever one sits, and that is a load of its own kind", "[load-cases]")
{
    const auto bench = seat();
    const auto hard = cases_of(*bench, kHardSitter), soft = sitters_of(*bench);
    REQUIRE(hard.size() == soft.size());
    for (std::size_t i = 0; i < hard.size(); ++i) {
        CHECK(hard[i]->kind == DemandKind::hard_sitting);
        CHECK(hard[i]->proof); // neither sag nor standing is asked of it
        CHECK_FALSE(hard[i]->counts_for_sag);
        CHECK_THAT(hard[i]->total, WithinRel(2.13 * soft[i]->total, 1e-9));
        REQUIRE(hard[i]->loads.size() == soft[i]->loads.size());
        for (std::size_t k = 0; k < hard[i]->loads.size(); ++k) {
            CHECK(hard[i]->loads[k].copy == soft[i]->loads[k].copy);
            CHECK(hard[i]->loads[k].from == soft[i]->loads[k].from);
        }
    }
    for (const JointForce* force : worst_joint_forces(bench->prepared, 0, {[](const JointForce& f) { return -f.force[2]; }}))
        CHECK(bench->prepared.statics.cases.cases[force->load_case].kind != DemandKind::hard_sitting);
}

TEST_CASE("A seat place and a table are loaded by the ten thousand, as often as the level says", "[load-cases]")
{
    for (const auto& [level, times] :
         {std::pair{"home", "25,000"}, std::pair{"contract", "100,000"}, std::pair{"severe", "200,000"}}) {
        CAPTURE(level);
        const std::string limits = std::string("[limits]\nlevel = \"") + level + "\"\n";
        const auto bench = seat(limits), table = seat(limits, "table");
        std::size_t places = 0, pushes = 0;
        for (const LoadCase& c : bench->prepared.statics.cases.cases) {
            if (c.kind != DemandKind::durability) continue;
            ++places;
            CHECK_THAT(c.total, WithinRel(1000.0, 1e-9));
            CHECK_THAT(c.name, ContainsSubstring(std::string(times) + " times"));
        }
        CHECK(places >= 4);
        for (const LoadCase& c : table->prepared.statics.cases.cases) {
            if (c.kind != DemandKind::durability) continue;
            ++pushes;
            CHECK(c.push);
            CHECK(c.feet_stopped);
            CHECK_THAT(c.total, WithinRel(50 * kStandardGravity, 1e-9));
            CHECK_THAT(c.name, ContainsSubstring(std::string(times) + " times"));
        }
        CHECK(pushes == 4);
    }
}

TEST_CASE("The level of use sets the proof loads, the design its sitter", "[load-cases]")
{
    for (const auto& [level, newtons] : {std::pair{"home", 1300.0}, std::pair{"contract", 1600.0}, std::pair{"severe", 2000.0}}) {
        CAPTURE(level);
        const auto bench = seat(std::string("[limits]\nlevel = \"") + level + "\"\n");
        CHECK_THAT(case_named(*bench, "one person standing on slat #1, at its middle").total, WithinRel(newtons, 1e-9));
        for (const LoadCase* c : cases_of(*bench, "proof load on 2 places side by side")) {
            CHECK(c->kind == DemandKind::proof);
            CHECK_THAT(c->total, WithinRel(2 * newtons, 1e-9));
        }
    }
    const auto light = seat("[limits]\nsitter = \"80 kg\"\nseats = 1\n");
    for (const LoadCase* c : sitters_of(*light)) {
        CHECK_THAT(c->total, WithinRel(80 * kStandardGravity, 1e-9));
        CHECK_THAT(c->source, ContainsSubstring("[limits] sitter"));
    }
}

TEST_CASE("A table bears goods for years and people who lean on it", "[load-cases]")
{
    const auto bench = seat("", "table");
    const LoadCase& goods = case_named(*bench, "goods spread over the top");
    CHECK(goods.duration == LoadDuration::lasting);
    CHECK_THAT(sum_of(goods), WithinRel(50 * kStandardGravity, 1e-9));
    const LoadCase& leaning = case_named(*bench, "a person leaning on the front left corner");
    CHECK_FALSE(leaning.proof);
    CHECK_THAT(sum_of(leaning), WithinRel(600.0, 1e-9));
    const LoadCase& proof = case_named(*bench, "proof load on the middle of the top");
    CHECK(proof.proof);
    CHECK_THAT(sum_of(proof), WithinRel(1000.0, 1e-9));
}

TEST_CASE("A shelf is loaded along its length, for years", "[load-cases]")
{
    const auto usual = seat("", "shelf");
    const LoadCase& books = case_named(*usual, "every shelf loaded");
    CHECK(books.duration == LoadDuration::lasting);
    CHECK_THAT(sum_of(books) / (21 * 0.400), WithinRel(25 * kNewtonsPerPoundForce / 0.3048, 1e-9)); // 25 lbf/ft
    const auto stated = seat("[limits]\nshelf_load = \"500 N/m\"\n", "shelf");
    CHECK_THAT(sum_of(case_named(*stated, "every shelf loaded")), WithinRel(500 * 21 * 0.400, 1e-9));
}

TEST_CASE("What the design states lasts or passes", "[load-cases]")
{
    const auto passing = seat(pot_text("pot", 200, "[300, 200]", "lasting = false"), "none");
    CHECK(passing->prepared.statics.cases.cases.size() == 2);
    CHECK_THAT(sum_of(case_named(*passing, "pot")), WithinRel(200.0, 1e-9));
    const auto lasting = seat(pot_text("pot", 200, "[300, 200]", "lasting = true"), "none");
    CHECK(lasting->prepared.statics.cases.cases.size() == 1);
    double stays = 0;
    for (const CopyLoad& load : lasting->prepared.statics.cases.lasting) stays += load.force;
    CHECK_THAT(stays, WithinRel(200.0 + lasting->prepared.whole_mass() * kStandardGravity, 1e-9));
}

TEST_CASE("A stated load lies on each part where its patch does", "[load-cases]")
{
    // Slats 50 mm wide every 60 mm; the patch, 250 to 350 mm, covers 240 to 290, 300 to 350 in part and in full.
    const auto bench = seat(pot_text("pot", 200, "[300, 200]"), "none");
    const LoadCase& pot = case_named(*bench, "pot");
    REQUIRE(pot.loads.size() == 2);
    CHECK_THAT(pot.loads[0].across, WithinAbs(0.270, 1e-9));
    CHECK_THAT(pot.loads[0].breadth, WithinAbs(0.040, 1e-9));
    CHECK_THAT(pot.loads[1].across, WithinAbs(0.325, 1e-9));
    CHECK_THAT(pot.loads[1].breadth, WithinAbs(0.050, 1e-9));
    // Slats that only lie there do not roll over under it.
    for (const bool settled : bench->prepared.statics.settled) CHECK(settled);
}

TEST_CASE("Stated loads that pass may all be there at once", "[load-cases]")
{
    const auto bench = seat(pot_text("one", 200, "[300, 200]") + pot_text("other", 300, "[700, 200]"), "none");
    CHECK(bench->prepared.statics.cases.cases.size() == 4);
    CHECK_THAT(sum_of(case_named(*bench, "all stated loads together")), WithinRel(500.0, 1e-9));
}

TEST_CASE("A load that is not upright pushes as it is stated", "[load-cases]")
{
    const auto bench = seat(pot_text("pull", 200, "[300, 200]", "direction = [3, 0, -4]"), "none");
    const LoadCase& pull = case_named(*bench, "pull");
    CHECK_THAT(sum_of(pull), WithinRel(200.0, 1e-9));
    CHECK_THAT(pull.total, WithinRel(160.0, 1e-9)); // down
    for (const CopyLoad& load : pull.loads) {
        CHECK_THAT(load.direction[0], WithinAbs(0.6, 1e-12));
        CHECK_THAT(load.direction[2], WithinAbs(-0.8, 1e-12));
    }
    // What does not go down goes sideways into the feet, and the floor gives it back.
    CHECK_THAT(bench->prepared.statics.on_floor[1], WithinRel(bench->prepared.statics.on_floor[0] + 160.0, 1e-6));
}

TEST_CASE("A piece for no use and without loads has no cases", "[load-cases]")
{
    CHECK(seat("", "none")->prepared.statics.cases.cases.empty());
}

TEST_CASE("A loaded seat is pushed both ways along both axes, short of tipping it", "[load-cases]")
{
    const auto bench = seat();
    const auto& cases = bench->prepared.statics.cases;
    int pushes = 0;
    double weight = 0;
    for (const CopyLoad& load : cases.lasting) weight += load.force;
    for (const LoadCase& c : cases.cases) {
        if (!c.push) continue;
        ++pushes;
        CHECK(c.kind == DemandKind::proof);
        CHECK(c.feet_stopped);
        CHECK_FALSE(c.counts_for_sag);
        CHECK_THAT(c.total, WithinRel(1000.0, 1e-9)); // down
        double x = 0, y = 0;
        for (const CopyLoad& load : c.loads) {
            x += load.force * load.direction[0];
            y += load.force * load.direction[1];
        }
        // EN 12520, from memory: 300 N sideways along the bench, 400 N to front and back.
        if (std::abs(x) > 0) {
            CHECK_THAT(std::abs(x), WithinRel(300.0, 1e-9));
            CHECK(y == 0);
        } else {
            // Bearers on edge, their middles 180 mm from the middle of the seat, 320 mm high: the weights hold (W + 1000) 0.18/0.32, × 0.9.
            const double tips = 0.9 * (weight + 1000) * 0.180 / 0.320;
            CHECK_THAT(std::abs(y), WithinRel(std::min(400.0, tips), 1e-3));
        }
    }
    CHECK(pushes == 4);
}

TEST_CASE("A piece on three feet is pushed only as far as the line between two of them lets it", "[load-cases]")
{
    // Feet at (200, 40), (40, 300) and (360, 300), drawn in to their middles; the seat's middle, and nearly all the weight, at (200, 200).
    const auto bench = bench_of(design({
        head_text({.name = "Three legs", .use = "seat", .carries = {"board"}, .made = 8, .air = "heated, cold winters"}),
        wood_text("white oak", ""),
        part_text("board", {400, 400, 30}, "x", "z", "[0, 0, 400]"),
        part_text("leg", {400, 40, 40}, "z", "y", "[180, 20, 0]", "copies = [ { at = [20, 280, 0] }, { at = [340, 280, 0] } ]"),
        joint_text("leg", "board", "tenon", "PVA", "tenon = { length = 25, width = 25, thickness = 25 }"),
    }));
    double weight = 1000, lever = 1000 * 0.200; // what sits on it, and its lever in y
    for (std::size_t i = 0; i < bench->piece.copies.size(); ++i) {
        const double w = bench->prepared.masses[i] * kStandardGravity;
        weight += w;
        lever += w * bench->piece.copies[i].box.middle(Axis::y);
    }
    // To the right it tips about the line from the front foot to the right one, 0.16 m across and 0.26 m deep.
    const double ahead = (lever / weight - 0.040) * 0.160 / 0.260;
    int sideways = 0;
    for (std::size_t k = 0; k < bench->prepared.statics.cases.cases.size(); ++k) {
        const LoadCase& c = bench->prepared.statics.cases.cases[k];
        if (!c.push) continue;
        CHECK(bench->prepared.statics.sways[k].sway < 0.02); // it stays on its feet
        double x = 0;
        for (const CopyLoad& load : c.loads) x += load.force * load.direction[0];
        if (std::abs(x) < 1) continue;
        ++sideways;
        CHECK_THAT(std::abs(x), WithinRel(0.9 * weight * ahead / 0.430, 1e-6));
    }
    CHECK(sideways == 2);
}

TEST_CASE("A piece is lifted by the edge of a slat with a jerk, and not quite off the floor", "[load-cases]")
{
    const auto bench = bench_of(built_in_design("boot-bench")); // its slats are glued: they do not come off
    const auto& cases = bench->prepared.statics.cases;
    const double weight = bench->prepared.whole_mass() * kStandardGravity; // the crate is taken off it first
    int lifts = 0;
    for (std::size_t k = 0; k < cases.cases.size(); ++k) {
        const LoadCase& c = cases.cases[k];
        if (!c.lift) continue;
        ++lifts;
        double up = 0, down = 0, off = 0;
        for (const CopyLoad& load : c.loads) (load.direction[2] > 0 ? up : load.force > 0 ? down : off) += load.force;
        CHECK_THAT(down, WithinRel(weight, 1e-9)); // a jerk of 2: once more its weight
        CHECK_THAT(off, WithinRel(-40 * 4.4482216, 1e-6));
        CHECK(up > 0.3 * 2 * weight);
        CHECK(up < 2 * weight);
        // What is left on the floor is what the hand does not take.
        CHECK_THAT(bench->prepared.statics.on_floor[k], WithinAbs(2 * weight - up, 1e-6 * weight));
    }
    CHECK(lifts == 3); // both end slats and the middle one
}
