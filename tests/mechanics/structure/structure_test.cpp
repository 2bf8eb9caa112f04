// Whole pieces as one frame: balance, symmetry, Betti, superposition, mechanisms, dry stacks.

#include "catch.hpp"
#include "checks/design_text.hpp"
#include "checks/trestle.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <cmath>
#include <random>

using namespace checked;
using kernel::FrameSolution;
using kernel::Vec3;

namespace {

using Loads = std::vector<CopyLoad>;

const Structure& frame_of(const Bench& bench) { return *bench.prepared.statics.frame; }

std::string built_in_text(const std::string& path)
{
    const std::string* text = testing::shared_facts().text(path);
    if (!text) throw std::logic_error("no such design: " + path);
    return *text;
}

/// Lasting loads and those of a case.
Loads loads_of(const Statics& statics, std::size_t index)
{
    Loads all = statics.cases.lasting;
    const Loads& own = statics.cases.cases[index].loads;
    all.insert(all.end(), own.begin(), own.end());
    return all;
}

Loads together(Loads a, const Loads& b)
{
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

/// A force on a small place of a copy; `share` of the way along its grain as drawn, across its middle.
CopyLoad force_on(const Bench& bench, const std::string& name, double share, double force, const Point& direction = {0, 0, -1})
{
    CopyLoad load;
    load.copy = bench.copy(name);
    const Copy& copy = bench.piece.copies[load.copy];
    const Axis grain = bench.piece.part_of(load.copy).grain;
    load.from = load.to = copy.box.lo[index_of(grain)] + share * copy.box.size(grain);
    load.across = copy.box.middle(grain == Axis::x ? Axis::y : Axis::x);
    load.force = force;
    load.direction = direction;
    return load;
}

/// What the floor or the wall gets: force, and moment about the origin.
std::pair<Vec3, Vec3> to_ground(const Structure& structure, const FrameSolution& solution)
{
    Vec3 force = Vec3::Zero(), moment = Vec3::Zero();
    const auto add = [&](const kernel::Vec6& f, const Vec3& at) {
        force += f.head<3>();
        moment += f.tail<3>() + at.cross(f.head<3>());
    };
    for (const Foot& foot : structure.feet()) {
        add(structure.frame().tie_force(foot.tie, solution.movement), foot.at);
        if (foot.press >= 0) add(structure.frame().press_force(foot.press, solution.movement), foot.at);
        if (foot.grip < 0) continue;
        kernel::Vec6 level = kernel::Vec6::Zero();
        level.head<3>() = structure.frame().grip_force(foot.grip, solution.movement);
        add(level, foot.at);
    }
    return {force, moment};
}

FrameSolution solve(const Structure& structure, const Loads& loads) { return structure.solve({loads}).front(); }

} // namespace

TEST_CASE("What the floor gets balances the loads, in force and in moment, in every case", "[structure][identity]")
{
    const auto* const path = GENERATE(
        "designs/boot-bench.toml", "designs/hall-table-glued-top.toml", "designs/window-seat-metric.toml",
        "designs/garden-bench-interior-pva.toml", "designs/wide-shelf-bookcase.toml", "designs/breadboard-glued-middle.toml",
        "patterns/dado-bookcase.toml", "patterns/garden-bench.toml", "patterns/panel-table.toml", "patterns/slatted-bench.toml");
    CAPTURE(path);
    const auto bench = bench_of(built_in_text(path));
    const Statics& statics = bench->prepared.statics;
    REQUIRE(statics.frame);
    CHECK(statics.loose.empty());
    std::vector<Loads> cases;
    for (std::size_t c = 0; c < statics.cases.cases.size(); ++c) cases.push_back(loads_of(statics, c));
    const auto solved = frame_of(*bench).solve(cases);
    for (std::size_t c = 0; c < cases.size(); ++c) {
        CAPTURE(statics.cases.cases[c].name);
        REQUIRE(solved[c].movement.allFinite());
        CHECK(solved[c].rounds < 12);
        if (!solved[c].settled) continue;
        Eigen::VectorXd nodal = Eigen::VectorXd::Zero(frame_of(*bench).frame().unknowns());
        frame_of(*bench).add_loads(nodal, cases[c]);
        Vec3 force = Vec3::Zero(), moment = Vec3::Zero();
        double size = 0;
        for (int n = 0; n < frame_of(*bench).frame().nodes(); ++n) {
            const Vec3 f = nodal.segment<3>(6 * n), at = frame_of(*bench).frame().place(n);
            force += f;
            moment += nodal.segment<3>(6 * n + 3) + at.cross(f);
            size += f.norm();
        }
        const auto [ground_force, ground_moment] = to_ground(frame_of(*bench), solved[c]);
        CHECK((ground_force - force).norm() < 1e-9 * size);
        CHECK((ground_moment - moment).norm() < 1e-9 * size);
        // And the nodal forces are those of the case.
        Vec3 stated = Vec3::Zero();
        for (const CopyLoad& l : cases[c]) stated += l.force * Vec3(l.direction[0], l.direction[1], l.direction[2]);
        CHECK((force - stated).norm() < 1e-9 * size);
    }
}

TEST_CASE("A bench alike from both ends moves alike under mirrored loads", "[structure][identity]")
{
    const auto bench = bench_of(built_in_design("boot-bench"));
    const Structure& frame = frame_of(*bench);
    const Loads own = bench->prepared.statics.cases.lasting;
    const auto slat = [](int k) { return fmt::format("slat #{}", k); };
    // As seen from the left: a person near the front of slat 3 and a push to the right; from the right: slat 15, to the left.
    const auto a = solve(frame,
                         together(own, {force_on(*bench, slat(3), 0.2, 900), force_on(*bench, slat(9), 0.5, 200, {1, 0, 0})})),
               b = solve(frame,
                         together(own, {force_on(*bench, slat(15), 0.2, 900), force_on(*bench, slat(9), 0.5, 200, {-1, 0, 0})}));
    double largest = 0;
    for (int k = 1; k <= 17; ++k)
        for (const double share : {0.0, 0.3, 0.5, 0.9}) {
            const std::size_t left = bench->copy(slat(k)), right = bench->copy(slat(18 - k));
            const double s = share * frame.lines()[left].length;
            const Vec3 u = frame.movement(left, s, 0, a), v = frame.movement(right, s, 0, b);
            largest = std::max(largest, u.norm());
            CHECK((u - Vec3(-v.x(), v.y(), v.z())).norm() < 1e-6 * largest);
        }
    CHECK(largest > 1e-4);
}

TEST_CASE("Loads on a bench answer each other alike and add up while it stands on all feet", "[structure][identity]")
{
    const auto bench = bench_of(built_in_design("boot-bench"));
    const Structure& frame = frame_of(*bench);
    const Loads own = bench->prepared.statics.cases.lasting;
    const CopyLoad p = force_on(*bench, "slat #5", 0.4, 300), q = force_on(*bench, "long rail #1", 0.7, 60, {0.6, 0.64, -0.48});
    const auto none = solve(frame, own), with_p = solve(frame, together(own, {p})), with_q = solve(frame, together(own, {q})),
               both = solve(frame, together(own, {p, q}));
    for (const auto* s : {&none, &with_p, &with_q, &both}) REQUIRE(s->open.empty());
    // Work of each on what the other alone moves.
    Eigen::VectorXd fp = Eigen::VectorXd::Zero(frame.frame().unknowns()), fq = fp;
    frame.add_loads(fp, {p});
    frame.add_loads(fq, {q});
    const Eigen::VectorXd up = with_p.movement - none.movement, uq = with_q.movement - none.movement;
    CHECK(std::abs(fp.dot(uq)) > 1e-6);
    CHECK_THAT(fp.dot(uq), WithinRel(fq.dot(up), 1e-8));
    CHECK((both.movement - none.movement - up - uq).norm() < 1e-8 * (up.norm() + uq.norm()));
}

namespace {

/// A post on the floor with an arm that is held at one end only, glued end grain to its side or tenoned.
std::string post_with_arm(const std::string& joint)
{
    return design({
        head_text({.name = "Coat stand"}),
        wood_text("white oak"),
        part_text("post", {900, 120, 120}, "z", "y", "[0, 0, 0]"),
        part_text("arm", {400, 40, 30}, "x", "z", "[120, 40, 700]"),
        load_text("coat", "arm", 5, "[500, 60, 730]", "lasting = true"), // 3 N m with the arm; the post's 9 kg bear 5
        joint,
    });
}

} // namespace

TEST_CASE("A part that can swing is named, and nothing comes out that is no number", "[structure]")
{
    const auto held =
        bench_of(post_with_arm(joint_text("arm", "post", "tenon", "PVA", "tenon = { length = 40, width = 30, thickness = 10 }")));
    CHECK(held->prepared.statics.loose.empty());
    CHECK(held->prepared.statics.settled.front());
    const auto swings = bench_of(post_with_arm(joint_text("arm", "post", "butt", "PVA")));
    const Statics& statics = swings->prepared.statics;
    REQUIRE(statics.loose.size() == 1);
    CHECK(swings->piece.label(statics.loose.front()) == swings->piece.label(swings->copy("arm #1")));
    CHECK_FALSE(statics.settled.front());
    for (const MemberResult& m : statics.members) {
        CHECK(std::isfinite(m.stress));
        CHECK(std::isfinite(m.sag));
    }
    for (const SwayResult& s : statics.sways) CHECK(std::isfinite(s.sway));
}

namespace {

/// Boards laid dry on three posts and on each other, crosswise layer by layer, at random places, loaded at random.
std::string dry_stack(std::mt19937& random)
{
    const auto pick = [&](int lo, int hi) { return std::uniform_int_distribution(lo, hi)(random); };
    const int third = pick(600, 900), second = pick(200, 500); // in this order with every compiler
    std::string text = head_text({.name = "Stack"}) + wood_text("white oak") +
                       part_text("post", {300, 500, 60}, "z", "x", "[0, 0, 0]",
                                 fmt::format("copies = [ {{ at = [{}, 0, 0] }}, {{ at = [{}, 0, 0] }} ]", second, third));
    int z = 300;
    for (int layer = 0; layer < 4; ++layer) {
        const bool along = layer % 2 == 0;
        const int count = pick(2, 4), thick = pick(14, 30);
        std::string copies, loads;
        for (int k = 0; k < count; ++k) {
            const int place = k * (along ? 500 : 960) / count + pick(0, 30), back = pick(-60, 0);
            const int x = along ? back : place, y = along ? place : back;
            const std::string at = fmt::format("[{}, {}, {}]", x, y, z);
            if (k == 0)
                text += part_text(fmt::format("layer{}", layer), {along ? 1020.0 : 600.0, 1.0 * pick(50, 90), 1.0 * thick},
                                  along ? "x" : "y", "z", at);
            else
                copies += (copies.empty() ? "{ at = " : ", { at = ") + at + " }";
            if (pick(0, 1) == 0) continue;
            const int off = pick(30, along ? 990 : 570);
            loads += load_text(fmt::format("load {} {}", layer, k), fmt::format("layer{}", layer), pick(20, 400),
                               fmt::format("[{}, {}, {}]", along ? x + off : x + 20, along ? y + 20 : y + off, z + thick));
        }
        text += "copies = [ " + copies + " ]\n" + loads;
        z += thick;
    }
    return text;
}

} // namespace

TEST_CASE("Dry stacks at random come to rest in few rounds", "[structure]")
{
    std::mt19937 random(11);
    int most = 0, opened = 0, at_rest = 0, rounds = 0;
    for (int trial = 0; trial < 25; ++trial) {
        CAPTURE(trial);
        const auto bench = bench_of(dry_stack(random));
        const Statics& statics = bench->prepared.statics;
        if (!statics.frame) continue;
        std::vector<Loads> cases;
        for (std::size_t c = 0; c < statics.cases.cases.size(); ++c) cases.push_back(loads_of(statics, c));
        for (const FrameSolution& s : frame_of(*bench).solve(cases)) {
            CHECK(s.movement.allFinite());
            opened += s.open.empty() ? 0 : 1;
            if (!s.settled) continue; // a board has tipped off
            ++at_rest;
            rounds += s.rounds;
            most = std::max(most, s.rounds);
            // What is closed presses, what is open gapes.
            for (int p = 0; p < frame_of(*bench).frame().presses(); ++p) {
                const bool open = std::find(s.open.begin(), s.open.end(), p) != s.open.end();
                CHECK((frame_of(*bench).frame().gap(p, s.movement) > 0) == open);
            }
        }
    }
    CHECK(opened > 50); // contacts did part
    CHECK(at_rest > 50);
    CHECK(most < 80); // fewer than there are contacts
    CHECK(rounds < 12 * at_rest);
}

TEST_CASE("A slat screwed or glued between two rails by its ends does not spin", "[structure]")
{
    const std::string joint =
        GENERATE(joint_text("side", "slat", "screws", "", "screws = { diameter = 4.5, length = 70, count = 2 }"),
                 joint_text("side", "slat", "screws", "PVA", "screws = { diameter = 4.5, length = 70, count = 2 }"),
                 joint_text("side", "slat", "dowel", "PVA", "dowels = { diameter = 8, length = 40, count = 2 }"));
    CAPTURE(joint);
    const auto bench = bench_of(design({
        head_text({.name = "Slats between rails", .use = "seat", .carries = {"slat"}, .made = 8, .air = "heated, cold winters"}),
        wood_text("white oak", ""),
        part_text("side", {500, 300, 24}, "x", "y", "[0, 0, 0]", "copies = [ { at = [0, 324, 0] } ]"),
        part_text("slat", {300, 60, 22}, "y", "z", "[100, 24, 250]"),
        part_text("back", {300, 200, 20}, "y", "x", "[300, 24, 20]"),
        joint_text("side", "back", "dowel", "PVA", "dowels = { diameter = 8, length = 40, count = 3 }"),
        joint,
    }));
    CHECK(bench->prepared.statics.loose.empty());
}
