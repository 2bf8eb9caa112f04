// Stubs, pulls and thrusts along a part, and small loads on wide boards.

#include "catch.hpp"
#include "checks/trestle.hpp"
#include "judging/members/member_strength.hpp"
#include "mechanics/structure/read_beam.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>
#include <numbers>

using namespace checked;

namespace {

/// A rail screwed to the wall with a post tenoned to its right end, which reaches so far above the rail's middle.
std::unique_ptr<Bench> stub(double above, const char* direction, double newtons)
{
    const double top = 300 + above;
    return bench_of(design({
        head_text({.name = "Stub", .wall = {"rail"}}),
        wood_text("red oak"),
        part_text("rail", {500, 30, 22}, "x", "y", "[0, 14, 285]"),
        part_text("post", {top, 50, 45}, "z", "y", "[500, 5, 0]"),
        joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 30, width = 20, thickness = 9 }"),
        load_text("pull", "post", newtons, fmt::format("[525, 27.5, {}]", top), fmt::format("direction = {}", direction)),
    }));
}

const PostResult& post_of(const Bench& bench, std::size_t load_case)
{
    for (const PostResult& p : bench.prepared.statics.posts)
        if (p.load_case == load_case) return p;
    throw std::logic_error("no post");
}

const MemberResult& board_of(const Bench& bench, const std::string& label, std::size_t load_case)
{
    const std::size_t copy = bench.copy(label);
    for (const MemberResult& m : bench.prepared.statics.members)
        if (m.copy == copy && m.load_case == load_case) return m;
    throw std::logic_error("no result of " + label);
}

} // namespace

TEST_CASE("A load on the stub of a post bends it by the whole of its lever, however short that is", "[statics][leg]")
{
    for (const double above : {16.0, 24.9, 25.3, 44.9, 45.3, 80.0}) {
        CAPTURE(above);
        const auto bench = stub(above, "[1, 0, 0]", 400);
        const PostResult& p = post_of(*bench, 1);
        CHECK_THAT(p.moment_width, WithinRel(400 * above * 1e-3, 1e-3)); // the width lies along x
        CHECK_THAT(p.at, WithinAbs(0.300, 1e-6));
        CHECK_THAT(p.shear_stress, WithinRel(1.5 * 400 / (0.050 * 0.045 - 0.009 * 0.030), 1e-3)); // beside the mortise
    }
}

TEST_CASE("A load at the end of a board bends the short end beyond its bearing", "[statics]")
{
    // 300 N 20 mm beyond the middle of the bearing, and 20 mm of the board's own weight.
    Trestle t;
    t.more = point_load("300", "1000");
    const auto bench = bench_of(t.text());
    const double q = bench->prepared.masses[bench->copy("board")] * kStandardGravity;
    const MemberResult& m = board_of(*bench, "board", 0);
    CHECK_THAT(m.moment, WithinRel(-(300 * 0.020 + q * 0.020 * 0.020 / 2), 1e-4));
    CHECK_THAT(m.stress_at, WithinAbs(0.980, 1e-6));
}

TEST_CASE("What pulls a rail along its grain is carried to both its ends and adds to the bending", "[statics]")
{
    // A rail tenoned between two posts on the wall; 900 N along it, 250 mm from the left shoulder, 22 mm above its middle.
    const auto bench = bench_of(design({
        head_text({.name = "Tie", .wall = {"post"}}),
        wood_text("red oak"),
        part_text("post", {450, 50, 50}, "z", "x", "[0, 0, 0]", "copies = [ { at = [850, 0, 0] } ]"),
        part_text("rail", {800, 63.5, 22.2}, "x", "y", "[50, 14, 200]"),
        joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 38, thickness = 9.5 }"),
        load_text("tug", "rail", 900, "[300, 25, 232]", "direction = [1, 0, 0]"),
    }));
    const std::size_t copy = bench->copy("rail");
    std::vector<CopyLoad> loads = bench->prepared.statics.cases.lasting, on;
    for (const CopyLoad& l : bench->prepared.statics.cases.cases[1].loads) loads.push_back(l);
    for (const CopyLoad& l : loads)
        if (l.copy == copy) on.push_back(l);
    const Structure& frame = *bench->prepared.statics.frame;
    double least = 0, most = 0;
    for (const LineForces& f : line_forces(frame, copy, on, frame.solve({loads}).front())) {
        least = std::min(least, f.tension);
        most = std::max(most, f.tension);
    }
    CHECK_THAT(most - least, WithinRel(900.0, 1e-6));
    CHECK(most > 450); // the nearer end takes more of it
    const MemberResult& m = board_of(*bench, "rail", 1);
    const double area = 0.0635 * 0.0222;
    CHECK_THAT(m.axial_stress, WithinRel(m.axial / area, 1e-9));
    CHECK_THAT(m.stress, WithinRel(6 * std::abs(m.moment) / (area * 0.0635) + 6 * std::abs(m.side_moment) / (area * 0.0222) +
                                       std::abs(m.axial) / area,
                                   1e-6));
    const Finding f = finding_of(run_check("bending", bench->prepared), "bending", "rail");
    CHECK(has_value(f, "axial_force"));
}

TEST_CASE("A rail pressed along its grain is charged as a column, one that is pulled as bending's stretched side", "[bending]")
{
    const auto bench = bench_of(design({
        head_text({.name = "Strut", .wall = {"post"}}),
        wood_text("red oak"),
        part_text("post", {450, 50, 50}, "z", "x", "[0, 0, 0]", "copies = [ { at = [850, 0, 0] } ]"),
        part_text("rail", {800, 45, 22.2}, "x", "y", "[50, 14, 200]"),
        joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 38, thickness = 9.5 }"),
        load_text("weight", "rail", 100, "[300, 25, 232]", "lasting = true"),
    }));
    const std::size_t part = bench->piece.copies[bench->copy("rail")].part;
    const WoodState& oak = bench->prepared.parts[part].loaded;
    Prepared& prepared = bench->prepared;
    prepared.statics.members.resize(1);
    MemberResult& m = prepared.statics.members.front();
    m.copy = bench->copy("rail");
    m.load_case = 0;
    m.stress = 10e6;
    m.depth = 0.045;
    m.stress_at = 0.25;
    m.axial_stress = 4e6;
    // Hardwood for years: bending f05 0.9/2.3, V 16 %; along the grain 0.9/2.1, V 18 %; E05 with V 22 %; 45 mm deep: no depth factor.
    const double bends = oak.bending_strength->value.value() * (1 - 1.645 * 0.16) * 0.9 / 2.3;
    CHECK_THAT(governing_case(prepared, part, StrengthKind::bending)->use, WithinRel(10e6 / bends, 1e-6));
    m.axial_stress = -4e6;
    const double crushed = oak.compression_along->value.value() * (1 - 1.645 * 0.18) * 0.9 / 2.1,
                 slender = 0.8 / (0.0222 / std::sqrt(12.0)),
                 buckles = std::numbers::pi * std::numbers::pi * oak.modulus_along->value.value() * (1 - 1.645 * 0.22) /
                           (slender * slender);
    CHECK_THAT(governing_case(prepared, part, StrengthKind::bending)->use,
               WithinRel(6e6 / bends + 4e6 * (1 / crushed + 1 / buckles), 1e-6));
    CHECK(buckles < crushed);
}

TEST_CASE("A foot on a wide board bends it as on a far finer grid", "[statics][plate]")
{
    // Crumbs of a thousandth of a newton round the load make the grid finer and weigh nothing.
    const auto top = [](double x, double y, double patch, bool crumbs) {
        std::string more = load_text("foot", "top", 900, fmt::format("[{}, {}]", x, y),
                                     patch > 0 ? fmt::format("patch = [{0}, {0}]\nlasting = true", patch) : "lasting = true");
        const double crumb = patch > 0 ? 0.4 * patch : 8;
        for (int i = -2; crumbs && i <= 2; ++i)
            for (int j = -2; j <= 2; ++j) {
                const double cx = std::clamp(x + i * crumb, crumb / 2, 900 - crumb / 2),
                             cy = std::clamp(y + j * crumb, crumb / 2, 420 - crumb / 2);
                more += load_text(fmt::format("crumb {} {}", i, j), "top", 0.001, fmt::format("[{}, {}]", cx, cy),
                                  fmt::format("patch = [{0}, {0}]\nlasting = true", crumb));
            }
        return bench_of(design({
            head_text({.name = "Top"}),
            wood_text("black cherry"),
            part_text("end", {400, 420, 40}, "z", "x", "[0, 0, 0]", "copies = [ { at = [860, 0, 0] } ]"),
            part_text("top", {900, 420, 20}, "x", "z", "[0, 0, 400]"),
            more,
        }));
    };
    const auto [x, y, patch] = GENERATE(std::tuple{450.0, 210.0, 100.0}, std::tuple{330.0, 290.0, 100.0},
                                        std::tuple{450.0, 50.0, 100.0}, std::tuple{260.0, 180.0, 60.0});
    CAPTURE(x, y, patch);
    const auto plain = top(x, y, patch, false), fine = top(x, y, patch, true);
    const auto cells = [](const Bench& b) {
        const StructureMember& m = b.prepared.statics.frame->member(b.copy("top"));
        return static_cast<double>((m.along.size() - 1) * (m.across.size() - 1));
    };
    CHECK(cells(*fine) > 2.5 * cells(*plain));
    CHECK(cells(*plain) < 350);
    const MemberResult &a = board_of(*plain, "top", 0), &b = board_of(*fine, "top", 0);
    CHECK_THAT(a.stress, WithinRel(b.stress, 0.03));
    // Across the grain a load at the edge bends most over the corners of its supports, where no grid comes to an end.
    if (y > 100) CHECK_THAT(a.across_stress, WithinRel(b.across_stress, 0.06));
}
