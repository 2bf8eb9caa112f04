// A piece turned as a whole carries, sways and tips as before.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>
#include <map>

using namespace checked;

namespace {

struct Stick {
    const char *id, *grain, *face;
    double length, width, thickness, x, y, z;
};

/// A stool of four legs, four rails and five slats screwed on; every part by itself, and turned about the corner of the piece where asked.
std::string stool(double degrees_turned)
{
    std::string text =
        head_text({.name = "Stool", .use = "seat", .carries = {"s1", "s2", "s3", "s4", "s5"}}) + wood_text("white oak");
    const std::string turn =
        degrees_turned != 0 ? fmt::format("turn = {{ about = \"z\", degrees = {}, at = [0, 0, 0] }}", degrees_turned) : "";
    const Stick sticks[] = {{"l1", "z", "y", 420, 40, 40, 0, 0, 0},     {"l2", "z", "y", 420, 40, 40, 660, 0, 0},
                            {"l3", "z", "y", 420, 40, 40, 0, 310, 0},   {"l4", "z", "y", 420, 40, 40, 660, 310, 0},
                            {"r1", "x", "y", 620, 60, 22, 40, 9, 360},  {"r2", "x", "y", 620, 60, 22, 40, 319, 360},
                            {"e1", "y", "x", 270, 60, 22, 9, 40, 360},  {"e2", "y", "x", 270, 60, 22, 669, 40, 360},
                            {"s1", "y", "z", 350, 90, 18, 60, 0, 420},  {"s2", "y", "z", 350, 90, 18, 180, 0, 420},
                            {"s3", "y", "z", 350, 90, 18, 305, 0, 420}, {"s4", "y", "z", 350, 90, 18, 430, 0, 420},
                            {"s5", "y", "z", 350, 90, 18, 550, 0, 420}};
    for (const Stick& s : sticks)
        text +=
            part_text(s.id, {s.length, s.width, s.thickness}, s.grain, s.face, fmt::format("[{}, {}, {}]", s.x, s.y, s.z), turn);
    for (const auto& [rail, a, b] : {std::tuple{"r1", "l1", "l2"}, {"r2", "l3", "l4"}, {"e1", "l1", "l3"}, {"e2", "l2", "l4"}})
        for (const char* leg : {a, b})
            text += joint_text(rail, leg, "tenon", "PVA", "tenon = { length = 18, width = 45, thickness = 7 }");
    for (const char* slat : {"s1", "s2", "s3", "s4", "s5"})
        for (const char* rail : {"r1", "r2"})
            text += joint_text(slat, rail, "screws", "", "screws = { diameter = 5, length = 50, count = 1 }");
    return text;
}

/// What a piece comes to, by part: the largest stress and sag of all cases, the largest stress of legs, the sways in rising order.
struct Outcomes {
    std::map<std::string, std::pair<double, double>> members;
    double posts = 0;
    std::vector<double> sways;
    std::size_t cases = 0;
};

Outcomes outcomes_of(const Bench& bench)
{
    Outcomes o;
    const Statics& statics = bench.prepared.statics;
    o.cases = statics.cases.cases.size();
    for (const MemberResult& m : statics.members) {
        auto& [stress, sag] = o.members[bench.piece.part_of(m.copy).id];
        stress = std::max(stress, m.stress);
        if (statics.cases.cases[m.load_case].counts_for_sag) sag = std::max(sag, m.most_sag);
    }
    for (const PostResult& p : statics.posts) o.posts = std::max(o.posts, p.bending_stress + p.thrust_stress);
    for (const SwayResult& s : statics.sways) o.sways.push_back(s.sway);
    std::sort(o.sways.begin(), o.sways.end());
    return o;
}

} // namespace

TEST_CASE("A stool turned by a quarter or a half in plan is the same stool", "[turned][identity]")
{
    const auto straight = bench_of(stool(0));
    const Outcomes plain = outcomes_of(*straight);
    REQUIRE(plain.members.size() == 9);
    const double tipping = value_of(finding_of(content_of(stool(0)).findings, "tip"), "overturning_ratio");
    for (const double angle : {90.0, 180.0, -90.0}) {
        CAPTURE(angle);
        const auto turned = bench_of(stool(angle));
        CHECK(turned->prepared.statics.loose.empty());
        const Outcomes other = outcomes_of(*turned);
        CHECK(other.cases == plain.cases);
        for (const auto& [part, values] : plain.members) {
            CAPTURE(part);
            CHECK_THAT(other.members.at(part).first, WithinRel(values.first, 1e-6));
            CHECK_THAT(other.members.at(part).second, WithinRel(values.second, 1e-6) || WithinAbs(values.second, 1e-9));
        }
        CHECK_THAT(other.posts, WithinRel(plain.posts, 1e-6));
        REQUIRE(other.sways.size() == plain.sways.size());
        for (std::size_t k = 0; k < plain.sways.size(); ++k) CHECK_THAT(other.sways[k], WithinRel(plain.sways[k], 1e-6));
        CHECK_THAT(value_of(finding_of(content_of(stool(angle)).findings, "tip"), "overturning_ratio"), WithinRel(tipping, 1e-9));
    }
}

TEST_CASE("A stool turned askew is tipped at the edges of its wood, not of the box round it", "[turned][tip]")
{
    // By 45°: the corners of the box hold no wood. Whoever sits down does so over an edge or a corner of the slats, as before.
    const double straight = value_of(finding_of(content_of(stool(0)).findings, "tip"), "overturning_ratio");
    const Finding askew = finding_of(content_of(stool(45)).findings, "tip");
    CHECK_THAT(value_of(askew, "overturning_ratio"), WithinRel(straight, 1e-6));
}

namespace {

/// A seat board on two pairs of legs that splay along x by so many degrees; the legs' lines meet the board at the same places.
std::string splayed(double angle)
{
    std::string text = head_text({.name = "Splayed", .use = "seat", .carries = {"board"}}) + wood_text("white oak", "") +
                       part_text("board", {600, 300, 40}, "x", "z", "[0, 0, 400]");
    int n = 0;
    for (const double x : {150.0, 450.0})
        for (const double y : {40.0, 260.0}) {
            const std::string leg = fmt::format("leg{}", ++n);
            text += part_text(leg, {420, 40, 40}, "z", "y", fmt::format("[{}, {}, 0]", x - 20, y - 20),
                              fmt::format("turn = {{ about = \"y\", degrees = {}, at = [{}, {}, 400] }}",
                                          x < 300 ? angle : -angle, x, y)) +
                    joint_text(leg, "board", "tenon", "PVA", "tenon = { length = 30, width = 30, thickness = 30 }");
        }
    return text;
}

} // namespace

TEST_CASE("Splayed legs stand where their feet are, for tipping and for pushing", "[turned][tip]")
{
    const auto feet_of_piece = [](const Bench& bench) {
        double least = 1e9, most = -1e9;
        for (const Foot& foot : bench.prepared.statics.frame->feet()) {
            least = std::min(least, foot.at.x());
            most = std::max(most, foot.at.x());
        }
        return std::pair{least, most};
    };
    // The leg's line reaches 400 mm down from the board at 12°; the middle of its sole lies within half a foot beside its end.
    const double angle = 12 * 3.14159265358979 / 180, end = 0.150 - 0.400 * std::sin(angle);
    const auto bench = bench_of(splayed(12));
    const auto [least, most] = feet_of_piece(*bench);
    CHECK_THAT(least, WithinAbs(end, 0.020));
    CHECK_THAT(least + most, WithinAbs(0.600, 1e-6));
    const auto upright = bench_of(splayed(0));
    CHECK_THAT(feet_of_piece(*upright).first, WithinAbs(0.150, 1e-6));
    // A person on the end of the board levers less the farther out the feet stand.
    const Finding wide = finding_of(content_of(splayed(12)).findings, "tip"),
                  narrow = finding_of(content_of(splayed(0)).findings, "tip");
    CHECK(value_of(wide, "overturning_ratio") < value_of(narrow, "overturning_ratio"));
}
