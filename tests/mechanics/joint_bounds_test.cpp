// Joints that turn freely and joints that do not turn at all, each kind against closed forms.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/member_results.hpp"
#include "mechanics/structure.hpp"

#include <cmath>

using namespace checked;

namespace {

/// Two posts and a rail between them, or two boards and a shelf: red oak at 12 % without weight to speak of, 450 high.
struct Gate {
    PartSize post{450, 50, 50}, rail{800, 63.5, 22.2};
    std::string face = "y", at = "{ left = 50, front = 14, top = 450 }";
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
    const Structure frame = statics.frame->with_turning(share);
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
    return read_member(frame, bench.piece, statics, rail, elements, true, solved);
}

double modulus(const Bench& bench) { return bench.prepared.parts[0].loaded.modulus_along->value.value(); }

std::string middle_load(int z) { return load_text("weight", "rail", 500, fmt::format("[450, 25, {}]", z)); }

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
                 post = std::pow(0.050, 4) / 12, h = 0.450 - 0.03175;
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
    const std::size_t contact = bench->prepared.statics.path.bearings[bench->copy("rail #1")].front().contact;
    const Statics& statics = bench->prepared.statics;
    const auto moment = [&](double share) {
        const Structure frame = statics.frame->with_turning(share);
        std::vector<CopyLoad> loads = statics.cases.lasting;
        loads.insert(loads.end(), statics.cases.cases[1].loads.begin(), statics.cases.cases[1].loads.end());
        const ContactForce f = frame.contact_force(contact, frame.solve({loads}).front());
        return f.moment.y();
    };
    CHECK(std::abs(moment(kStiff)) > 5);
    CHECK(std::abs(moment(kFree)) < 0.05);
}

TEST_CASE("A gate whose joints turn freely folds, and its feet alone answer the push", "[joint-bounds]")
{
    const auto push = [](const std::string& at) {
        return load_text("push", "rail", 40, at, "direction = [1, 0, 0]") +
               load_text("ballast", "rail", 300, at, "lasting = true");
    };
    Gate posts, boards = board_case();
    posts.more = push("[450, 25, 420]");
    boards.more = push("[450, 150, 400]");
    for (const Gate* gate : {&posts, &boards}) {
        const auto bench = gate->bench();
        const Statics& statics = bench->prepared.statics;
        std::vector<CopyLoad> loads = statics.cases.lasting;
        loads.insert(loads.end(), statics.cases.cases[1].loads.begin(), statics.cases.cases[1].loads.end());
        const double h = gate == &posts ? 0.450 - 0.03175 : 0.400, l = gate == &posts ? 0.850 : 0.875;
        const auto at_feet = [&](const Structure& frame) {
            const auto solved = frame.solve({loads}).front();
            double sum = 0;
            for (const Foot& foot : frame.feet()) sum += frame.frame().tie_force(foot.tie, solved.movement)(4);
            return std::pair{sum, solved.movement};
        };
        // Free: hinges at the joints, so that each post is a lever about its foot.
        const auto [levers, far] = at_feet(statics.frame->with_turning(kFree));
        CHECK_THAT(std::abs(levers), WithinRel(40 * h, 0.01));
        // Stiff: P h³/(12 E I_c) (2 + I_c L/(I_b h)) on hinged feet, less what the breadth of the feet holds.
        const double e = modulus(*bench);
        const double post = gate == &posts ? std::pow(0.050, 4) / 12 : 0.300 * std::pow(0.025, 3) / 12,
                     rail = gate == &posts ? 0.0222 * std::pow(0.0635, 3) / 12 : 0.300 * std::pow(0.025, 3) / 12;
        const Structure stiff = statics.frame->with_turning(kStiff);
        const auto [held, near] = at_feet(stiff);
        const double by_hand = 40 * h * h * h / (12 * e * post) * (2 + post * l / (rail * h)) -
                               std::abs(held) * (h * l / (12 * e * rail) + h * h / (4 * e * post));
        const std::size_t rail_copy = bench->copy("rail #1");
        const kernel::Vec3 moved = stiff.movement(rail_copy, stiff.lines()[rail_copy].length / 2, 0, {near, {}, 0, true});
        CAPTURE(moved.x(), by_hand);
        CHECK_THAT(moved.x(), WithinRel(by_hand, 0.08)); // shear is left out of the formula, and it is a trifle softer for it
        CHECK(far.cwiseAbs().maxCoeff() > 10 * near.cwiseAbs().maxCoeff());
    }
}

TEST_CASE("A housed shelf sags as on hinges where its housings turn freely, and less where they do not", "[joint-bounds]")
{
    Gate gate = board_case();
    gate.more = load_text("books", "rail", 300, "[450, 150]", "patch = [866, 300]");
    const auto bench = gate.bench();
    const double q = 300 / 0.866, e = modulus(*bench), inertia = 0.300 * std::pow(0.025, 3) / 12;
    const double shear = bench->prepared.statics.frame->stiffness()[bench->copy("rail #1")].shear_face * 0.300 * 0.025 * 5 / 6;
    const MemberResult free = rail_with(*bench, kFree, 1), stiff = rail_with(*bench, kStiff, 1),
                       between = rail_with(*bench, 1, 1);
    // Hinges stand in the middles of the housings' faces.
    const double l = 0.900 - 2 * bench->prepared.statics.frame->contact_middle(0).x();
    CHECK(l > 0.850);
    CHECK(l < 0.867);
    const double hinged = 5 * q * std::pow(l, 4) / (384 * e * inertia) + q * l * l / (8 * shear);
    CHECK_THAT(free.most_sag, WithinRel(hinged, 0.02));
    // Portal on hinged feet, even load: q L²/(4 (2 k + 3)) at the corners, less what the weight levers from the housing to the middle of the
    // side; they lift the middle by M L²/(8 E I).
    const double wide = 0.875, corner = q * wide * wide / (4 * (2 * 0.400 / wide + 3)) - 150 * (wide - l) / 2;
    CHECK_THAT(stiff.most_sag, WithinRel(hinged - corner * l * l / (8 * e * inertia), 0.04));
    CHECK(between.most_sag < free.most_sag);
    CHECK(between.most_sag > stiff.most_sag);
}

TEST_CASE("A piece that its joints alone hold upright says that it would fold, and shows no number for it", "[joint-bounds]")
{
    const auto findings = content_of(built_in_design("boot-bench")).findings;
    const Finding& f = finding_of(findings, "rack");
    CHECK_FALSE(has_value(f, "sway_joints_free"));
    CHECK(has_value(f, "sway_joints_stiff"));
    bool said = false;
    for (const WorkingStep& w : f.working) said = said || w.says.find("would fold up") != std::string::npos;
    CHECK(said);
    // Its long rails have rails and legs to lean on: what they sag with free joints is a number.
    const Finding& sag = finding_of(findings, "sag", "long rail");
    CHECK(value_of(sag, "deflection_joints_free") > value_of(sag, "deflection"));
    CHECK(value_of(sag, "deflection_joints_stiff") < value_of(sag, "deflection"));
}
