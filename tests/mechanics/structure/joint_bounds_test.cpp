// Joints as good as hinges and joints that do not turn at all, each kind against closed forms.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/structure/read_member.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>

using namespace checked;

namespace {

/// Two posts and a rail between them, or two boards and a shelf: red oak at 12 % without weight to speak of, 450 high. The posts are deep, so that
/// they stand by themselves square to the gate, and turn on their feet in its plane.
struct Gate {
    PartSize post{450, 120, 50}, rail{800, 63.5, 22.2};
    std::string face = "y", at = "{ left = 50, front = 48.9, top = 450 }";
    std::string joint = joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 38, thickness = 9.5 }");
    std::string more; ///< loads
    std::unique_ptr<Bench> bench() const
    {
        return bench_of(design({
            head_text({.name = "Gate"}),
            wood_text("red oak", "flat", "properties = { density = \"0.001 kg/m3\" }"),
            part_text("post", post, "z", "x", "{ left = 0, front = 0, bottom = 0 }",
                      "copies = [ { at = { right = 900, front = 0, bottom = 0 } } ]"),
            part_text("rail", rail, "x", face, at),
            joint,
            more,
        }));
    }
};

/// A board case of one shelf: sides 300 × 25, the shelf housed 8 deep with its middle at 400.
Gate board_case()
{
    Gate g;
    g.joint = joint_text("rail", "post", "housing", "PVA");
    g.post = {450, 300, 25};
    g.rail = {866, 300, 25};
    g.face = "z";
    g.at = "{ left = 17, front = 0, bottom = 387.5 }";
    return g;
}

constexpr double kMid = 0.450; // m: middle of the gate

/// The rail's result in a solution with that share of the joints' resistance to turning.
MemberResult rail_with(const Bench& bench, double share, std::size_t load_case)
{
    const Statics& statics = bench.prepared.statics;
    const Structure frame = statics.frame->with_stiffness(share);
    std::vector<CopyLoad> loads = statics.cases.lasting;
    const auto& own = statics.cases.cases[load_case].loads;
    loads.insert(loads.end(), own.begin(), own.end());
    const auto solved = frame.solve({loads}).front();
    const std::size_t rail = bench.copy("rail #1");
    std::vector<CopyLoad> on;
    for (const CopyLoad& l : loads)
        if (l.copy == rail) on.push_back(l);
    std::vector<ElementLoad> elements;
    if (!frame.lines()[rail].plate) elements = frame.element_loads(rail, on);
    return read_member(frame, bench.prepared, rail, elements, true, solved);
}

double modulus(const Bench& bench) { return bench.prepared.parts[0].loaded.modulus_along->value.value(); }

std::string middle_load(int z) { return load_text("weight", "rail", 500, fmt::format("[450, 60, {}]", z)); }

constexpr double kFree = 1e-6, kStiff = 1e3;

} // namespace

TEST_CASE("A rail in joints of any kind: P L/4 where they turn freely, a portal's share of it where they do not",
          "[joint-bounds]")
{
    Gate gate;
    gate.more = middle_load(440);
    gate.joint = GENERATE(joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 38, thickness = 9.5 }"),
                          joint_text("rail", "post", "dowel", "PVA", "dowels = { diameter = 8, length = 60, count = 2 }"),
                          joint_text("rail", "post", "screws", "", "screws = { diameter = 6, length = 90, count = 2 }"));
    CAPTURE(gate.joint);
    const auto bench = gate.bench();
    REQUIRE(bench->prepared.statics.loose.empty());
    const double p = 500, l = 0.850, e = modulus(*bench), rail = 0.0222 * std::pow(0.0635, 3) / 12,
                 post = 0.120 * std::pow(0.050, 3) / 12, h = 0.450 - 0.03175;
    // Hinged feet, no sway: M = 3 P L/(8 (2 k + 3)) at the corners, k = I_b h/(I_c L).
    const double corner = 3 * p * l / (8 * (2 * rail * h / (post * l) + 3));
    const MemberResult free = rail_with(*bench, kFree, 1), stiff = rail_with(*bench, kStiff, 1),
                       between = rail_with(*bench, 1, 1);
    CHECK_THAT(free.stress_at, WithinAbs(kMid - 0.050, 1e-6));
    CHECK_THAT(free.moment, WithinRel(p * l / 4, 0.001));
    const double shear = bench->prepared.statics.frame->stiffness()[bench->copy("rail #1")].shear_width * 0.0222 * 0.0635 * 5 / 6;
    // Hinges stand in the middles of the posts; sag counts from shoulder to shoulder, 25 mm within.
    const auto sag_at = [&](double x) { return p * x * (3 * l * l - 4 * x * x) / (48 * e * rail) + p * x / (2 * shear); };
    CHECK_THAT(free.most_sag, WithinRel(sag_at(l / 2) - sag_at(0.025), 0.005));
    // Shear of rail and posts, which the formula leaves out, shifts a little.
    CHECK_THAT(stiff.moment, WithinRel(p * l / 4 - corner, 0.03));
    CHECK(between.moment < free.moment);
    CHECK(between.moment > stiff.moment * 0.999);
    CHECK(between.most_sag < free.most_sag);
}

TEST_CASE("Wide rails turn freely on their legs though they are held over their width", "[joint-bounds]")
{
    // 160 × 20: a plate to the frame, held at two places over each end. On edge it spans from face to face of the posts.
    Gate gate;
    gate.rail = {800, 160, 20};
    gate.joint = joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 140, thickness = 7 }");
    gate.more = middle_load(300);
    const auto bench = gate.bench();
    const MemberLine& line = bench->prepared.statics.frame->lines()[bench->copy("rail #1")];
    REQUIRE(line.plate);
    const std::size_t contact = bench->prepared.layout->path.bearings[bench->copy("rail #1")].front().contact;
    const Statics& statics = bench->prepared.statics;
    const auto moment = [&](double share) {
        const Structure frame = statics.frame->with_stiffness(share);
        std::vector<CopyLoad> loads = statics.cases.lasting;
        loads.insert(loads.end(), statics.cases.cases[1].loads.begin(), statics.cases.cases[1].loads.end());
        const ContactForce f = frame.contact_force(contact, frame.solve({loads}).front());
        return f.moment.y();
    };
    CHECK(std::abs(moment(kStiff)) > 5);
    CHECK(std::abs(moment(kFree)) < 0.05);
}

TEST_CASE("A gate sways on stiff joints as a portal on hinged feet, and far more on soft ones", "[joint-bounds]")
{
    Gate posts;
    posts.more = load_text("push", "rail", 40, "[450, 60, 420]", "direction = [1, 0, 0]") +
                 load_text("ballast", "rail", 300, "[450, 60, 420]", "lasting = true");
    const auto bench = posts.bench();
    const Statics& statics = bench->prepared.statics;
    REQUIRE(statics.loose.empty());
    std::vector<CopyLoad> loads = statics.cases.lasting;
    loads.insert(loads.end(), statics.cases.cases[1].loads.begin(), statics.cases.cases[1].loads.end());
    const std::size_t rail_copy = bench->copy("rail #1");
    const auto sway = [&](double share) {
        const Structure frame = statics.frame->with_stiffness(share);
        return frame.movement(rail_copy, frame.lines()[rail_copy].length / 2, 0, frame.solve({loads}).front()).x();
    };
    // P h³/(12 E I_c) (2 + I_c L/(I_b h)); shear is left out of the formula, and the frame is a trifle softer for it.
    const double h = 0.450 - 0.03175, l = 0.850, e = modulus(*bench), post = 0.120 * std::pow(0.050, 3) / 12,
                 rail = 0.0222 * std::pow(0.0635, 3) / 12;
    const double by_hand = 40 * h * h * h / (12 * e * post) * (2 + post * l / (rail * h));
    CHECK_THAT(sway(kStiff), WithinRel(by_hand, 0.08));
    CHECK(sway(1) > sway(3));
    CHECK(sway(1.0 / 3) > 1.5 * sway(1));
}

TEST_CASE("A housed shelf sags as on hinges where a back keeps the case square, and less where its housings must",
          "[joint-bounds]")
{
    Gate gate = board_case();
    gate.more = load_text("books", "rail", 300, "[450, 150]", "patch = [866, 300]");
    const auto open_case = gate.bench();
    gate.more += part_text("back", {880, 430, 10}, "x", "y", "{ left = 10, front = 300, bottom = 10 }") +
                 joint_text("back", "post", "screws", "", "screws = { diameter = 4, length = 30, count = 4 }");
    const auto backed = gate.bench();
    const double q = 300 / 0.866, e = modulus(*backed), inertia = 0.300 * std::pow(0.025, 3) / 12;
    const double shear = backed->prepared.statics.frame->stiffness()[backed->copy("rail #1")].shear_face * 0.300 * 0.025 * 5 / 6;
    // Hinges stand in the middles of the housings' faces.
    const double l = 0.900 - 2 * backed->prepared.statics.frame->contact_middle(0).x();
    CHECK(l > 0.850);
    CHECK(l < 0.867);
    const double hinged = 5 * q * std::pow(l, 4) / (384 * e * inertia) + q * l * l / (8 * shear);
    CHECK_THAT(rail_with(*backed, 1, 1).most_sag, WithinRel(hinged, 0.02));
    CHECK(rail_with(*open_case, 1, 1).most_sag < 0.98 * hinged);
    CHECK(rail_with(*open_case, kStiff, 1).most_sag < rail_with(*open_case, 1, 1).most_sag);
}

TEST_CASE("A result stands between softer and stiffer joints", "[joint-bounds]")
{
    const auto findings = content_of(built_in_design("boot-bench")).findings;
    const Finding& f = finding_of(findings, "rack");
    CHECK(value_of(f, "sway_joints_soft") > value_of(f, "sway"));
    CHECK(value_of(f, "sway_joints_stiff") < value_of(f, "sway"));
    const Finding& sag = finding_of(findings, "sag", "long rail");
    // Where slats hang softer they share their load with the other rail: within a hundredth it may go either way.
    CHECK(value_of(sag, "deflection_joints_soft") > 0.99 * value_of(sag, "deflection"));
    CHECK(value_of(sag, "deflection_joints_stiff") < value_of(sag, "deflection"));
    CHECK(value_of(sag, "deflection_no_friction") >= value_of(sag, "deflection") * (1 - 1e-9));
}
