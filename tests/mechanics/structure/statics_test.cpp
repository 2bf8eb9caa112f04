// Loads handed down to the floor, and what they do to lying parts on the way.

#include "catch.hpp"
#include "checks/design_text.hpp"
#include "checks/trestle.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>

using namespace checked;

namespace {

const MemberResult& member(const Bench& bench, std::string_view copy, std::size_t load_case)
{
    for (const MemberResult& m : bench.prepared.statics.members)
        if (m.copy == bench.copy(copy) && m.load_case == load_case) return m;
    throw std::logic_error("no such member");
}

/// A board without weight to speak of: only the load bends it.
std::unique_ptr<Bench> light_trestle(const std::string& load)
{
    Trestle t;
    t.more = load;
    std::string text = t.text();
    text.replace(text.find("species = \"white oak\"\n"), 22,
                 "species = \"white oak\"\nproperties = { density = \"0.001 kg/m3\" }\n");
    return bench_of(text);
}

} // namespace

TEST_CASE("What is laid on a piece reaches the floor, in every case", "[statics][identity]")
{
    for (const char* name : {"boot-bench", "hall-table-glued-top", "window-seat-metric"}) {
        CAPTURE(name);
        const auto bench = bench_of(built_in_design(name));
        const Statics& statics = bench->prepared.statics;
        double lasting = 0;
        for (const CopyLoad& load : statics.cases.lasting) lasting += load.force;
        CHECK(lasting >= bench->prepared.whole_mass() * kStandardGravity * (1 - 1e-9));
        REQUIRE(statics.on_floor.size() == statics.cases.cases.size());
        for (std::size_t c = 0; c < statics.on_floor.size(); ++c) {
            CAPTURE(statics.cases.cases[c].name);
            CHECK_THAT(statics.on_floor[c], WithinRel(lasting + statics.cases.cases[c].total, 1e-9));
        }
    }
}

TEST_CASE("A point load bends a board by P a b/L, wherever it stands", "[statics]")
{
    for (const int x : {40, 123, 250, 333, 500, 617, 871, 958}) {
        CAPTURE(x);
        const auto bench = light_trestle(point_load("300", std::to_string(x), true, "60"));
        const MemberResult& m = member(*bench, "board #1", 0);
        const double a = x * 1e-3 - kTrestleOverhang, b = kTrestleSpan - a;
        CHECK_THAT(m.moment, WithinRel(300 * a * b / kTrestleSpan, 1e-5));
        CHECK_THAT(m.stress, WithinRel(6 * m.moment / (0.120 * 0.020 * 0.020), 1e-5));
        CHECK_THAT(m.stress_at, WithinAbs(x * 1e-3, 1e-6));
        CHECK_THAT(m.shear, WithinRel(300 * std::max(a, b) / kTrestleSpan, 1e-5));
    }
}

TEST_CASE("A load spread over a patch bends less than at a point", "[statics]")
{
    // Over c about the middle: P (2L − c)/8.
    for (const int c : {50, 120, 400}) {
        CAPTURE(c);
        const auto bench =
            light_trestle(load_text("box", "board", 300, "[500, 60]", fmt::format("patch = [{}, 120]\nlasting = true", c)));
        CHECK_THAT(member(*bench, "board #1", 0).moment, WithinRel(300 * (2 * kTrestleSpan - c * 1e-3) / 8, 1e-5));
    }
}

namespace {

/// The board with its right post moved in: 320 mm of it stand out.
std::unique_ptr<Bench> overhanging(const std::string& newtons)
{
    std::string text = Trestle{}.text() + point_load(newtons, "1000");
    text.replace(text.find("copies = [ { at = [960, 0, 0] } ]"), 33, "copies = [ { at = [660, 0, 0] } ]");
    return bench_of(text);
}

} // namespace

TEST_CASE("A load beyond the support bends the overhang", "[statics]")
{
    const auto bench = overhanging("5");
    const MemberResult& m = member(*bench, "board #1", 0);
    const double q = bench->prepared.masses[bench->copy("board #1")] * kStandardGravity, arm = 0.320;
    CHECK(bench->prepared.statics.settled[0]);
    CHECK_THAT(m.moment, WithinRel(-(5 * arm + q * arm * arm / 2), 1e-5));
    CHECK_THAT(m.stress_at, WithinAbs(0.680, 1e-3));
    CHECK_THAT(m.sag_span, WithinRel(2 * arm, 1e-6)); // twice the overhang
    // What is left on the far support: moments about the near one; the board's middle is 0.18 m inside.
    double far = 0;
    for (const BearingForce& f : bench->prepared.statics.forces)
        if (f.load_case == 0 && f.below == bench->copy("post #1")) far = f.force;
    CHECK_THAT(far, WithinRel((q * 0.180 - 5 * arm) / 0.660, 5e-3)); // the breadth of the feet takes a trifle
}

TEST_CASE("A board that only lies on its posts tips off under a load beyond them", "[statics]")
{
    const auto bench = overhanging("100");
    CHECK_FALSE(bench->prepared.statics.settled[0]);
    for (const BearingForce& f : bench->prepared.statics.forces)
        if (f.load_case == 0 && f.below == bench->copy("post #1")) CHECK(f.force == 0); // it pulls nothing
}

TEST_CASE("Slats hand their loads to the rails by the lever", "[statics]")
{
    // One person on the boot bench's middle slat, at its front end: most of it on the front rail.
    const auto bench = bench_of(built_in_design("boot-bench"));
    const Statics& statics = bench->prepared.statics;
    std::size_t standing = 0;
    for (std::size_t c = 0; c < statics.cases.cases.size(); ++c)
        if (statics.cases.cases[c].name == "one person standing on slat #9, at its front end") standing = c;
    REQUIRE(standing > 0);
    double front = 0, back = 0, own_front = 0, own_back = 0;
    for (const BearingForce& f : statics.forces) {
        if (f.upper != bench->copy("slat #9")) continue;
        const bool is_front = f.below == bench->copy("long rail #1");
        if (f.load_case == standing) (is_front ? front : back) += f.force;
        if (f.load_case == 0) (is_front ? own_front : own_back) += f.force;
    }
    front -= own_front;
    back -= own_back;
    CHECK_THAT(front + back, WithinRel(1300.0, 1e-9));
    const auto& bearings = bench->layout.path.bearings[bench->copy("slat #9")];
    REQUIRE(bearings.size() == 2);
    const double at_front = std::min((bearings[0].from + bearings[0].to) / 2, (bearings[1].from + bearings[1].to) / 2);
    const double at_back = std::max((bearings[0].from + bearings[0].to) / 2, (bearings[1].from + bearings[1].to) / 2);
    const double load = bench->piece.copies[bench->copy("slat #9")].box.lo[1] + 0.050; // the middle of a foot of 100 mm
    // The glued housings hold the slat's ends a little against turning: that moves the shares by well under a hundredth.
    CHECK_THAT(front / 1300, WithinAbs((at_back - load) / (at_back - at_front), 0.01));
}

TEST_CASE("A board over three posts is a continuous beam", "[statics]")
{
    // Two equal spans, evenly loaded: −q L²/8 over the middle post; it bears 5/4 q L.
    std::string text = Trestle{}.text() + point_load("0.001", "500");
    text.replace(text.find("copies = [ { at = [960, 0, 0] } ]"), 33, "copies = [ { at = [480, 0, 0] }, { at = [960, 0, 0] } ]");
    const auto bench = bench_of(text);
    const double q = bench->prepared.masses[bench->copy("board #1")] * kStandardGravity, l = kTrestleSpan / 2,
                 over = q * kTrestleOverhang * kTrestleOverhang / 2;
    const MemberResult& m = member(*bench, "board #1", 0);
    // Shear deflection, 20 mm of 480, moves this by a few parts in a hundred at most; the overhangs take off half of their own moment.
    CHECK_THAT(m.moment, WithinRel(-(q * l * l / 8 - over / 2), 0.03));
    CHECK_THAT(m.span, WithinRel(l, 1e-6));
    double middle = 0;
    for (const BearingForce& f : bench->prepared.statics.forces)
        if (f.below == bench->copy("post #2")) middle += f.force;
    CHECK_THAT(middle, WithinRel(1.25 * q * l, 0.03));
}

TEST_CASE("Upright parts are no beams and have no sections", "[statics]")
{
    const auto bench = bench_of(Trestle{}.text() + point_load("100", "500"));
    CHECK(bench->prepared.statics.is_beam[bench->copy("board #1")]);
    CHECK_FALSE(bench->prepared.statics.is_beam[bench->copy("post #1")]);
    CHECK(bench->prepared.statics.stretches[bench->copy("post #1")].empty());
}

TEST_CASE("The stretched side is the one away from the load, or the top over a support", "[statics]")
{
    Trestle t;
    t.width_mm = 76;
    t.thickness_mm = 22;
    t.face = "y";
    t.more = point_load("300", "500");
    t.shape = "notches = [ { from = \"bottom\", depth = 10, width = 40, first = 480, step = 60, count = 1 } ]\n";
    CHECK(member(*bench_of(t.text()), "board #1", 0).tension_at_notch);
    t.shape = "notches = [ { from = \"top\", depth = 10, width = 40, first = 480, step = 60, count = 1 } ]\n";
    CHECK_FALSE(member(*bench_of(t.text()), "board #1", 0).tension_at_notch);
    CHECK(member(*bench_of(t.text()), "board #1", 0).notch_left == 0);
}

TEST_CASE("A top over posts and a rail that nearly line up sags no more than it moves", "[statics]")
{
    // The rail's middle stands 1 mm beside that of its posts: a line through both has no direction that the free end could be held against.
    const auto bench = bench_of(design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("post", {400, 60, 60}, "z", "y", "[100, 0, 0]",
                  "copies = [ { at = [840, 0, 0] }, { at = [100, 440, 0] }, { at = [840, 440, 0] } ]"),
        part_text("rail", {380, 60, 22}, "y", "x", "[120, 60, 340]", "copies = [ { at = [858, 60, 340] } ]"),
        part_text("top", {1000, 500, 20}, "x", "z", "[0, 0, 400]"),
        joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 30, width = 40, thickness = 8 }"),
        joint_text("top", "rail", "screws", "", "screws = { diameter = 5, length = 40, count = 2 }"),
        load_text("goods", "top", 500, "[500, 250]", "patch = [1000, 500]"),
    }));
    const auto& statics = bench->prepared.statics;
    const std::size_t top = bench->copy("top"), last = statics.cases.cases.size() - 1;
    std::vector<CopyLoad> loads = statics.cases.lasting;
    loads.insert(loads.end(), statics.cases.cases[last].loads.begin(), statics.cases.cases[last].loads.end());
    const auto solved = statics.frame->solve({loads});
    const auto& member = statics.frame->member(top);
    double lowest = 0, highest = 0;
    for (const double s : member.along)
        for (const double t : member.across) {
            const double z = statics.frame->movement(top, s, t, solved.front()).z();
            lowest = std::min(lowest, z);
            highest = std::max(highest, z);
        }
    bool read = false;
    for (const MemberResult& m : statics.members) {
        if (m.copy != top || m.load_case != last) continue;
        read = true;
        CHECK(m.sag > 0);
        CHECK(m.most_sag <= highest - lowest);
        CHECK(m.sag <= highest - lowest);
    }
    CHECK(read);
}

TEST_CASE("A rail drawn upright and turned to lie sags as one drawn lying", "[statics]")
{
    // The same stick on the same posts; its weight alone, and that of the loads that it has.
    const auto drawn = [](const std::string& board) {
        return bench_of(design({
            head_text({.name = "Turned rail"}),
            wood_text("white oak", ""),
            part_text("post", {400, 100, 100}, "z", "x", "[0, 0, 0]", "copies = [ { at = [900, 0, 0] } ]"),
            load_text("weight", "post", 1, "[50, 50, 400]", "lasting = true"),
            board,
        }));
    };
    const PartSize size{1000, 60, 20};
    const auto lying = drawn(part_text("board", size, "x", "z", "[0, 20, 400]")),
               turned = drawn(part_text("board", size, "z", "x", "[490, 20, -90]", "turn = { about = \"y\", degrees = 90 }"));
    const MemberResult &a = member(*lying, "board #1", 0), &b = member(*turned, "board #1", 0);
    CHECK_THAT(b.span, WithinRel(0.800, 1e-6)); // posts 100 wide, more than three depths: from edge to edge
    CHECK_THAT(b.sag, WithinRel(a.sag, 1e-6));
    CHECK_THAT(b.stress, WithinRel(a.stress, 1e-6));
    CHECK_THAT(b.moment, WithinRel(a.moment, 1e-6));
}
