// Twist of rectangles, and of parts whose loads lie beside their middle.

#include "mechanics/beam/torsion.hpp"

#include "catch.hpp"
#include "checks/trestle.hpp"
#include "mechanics/structure/read_beam.hpp"
#include "mechanics/structure/section_stress.hpp"
#include "mechanics/structure/structure.hpp"

#include <cmath>

using namespace checked;

namespace {

/// The one copy of that label in the case of that name.
const MemberResult& member_of(const Bench& bench, const std::string& label, const std::string& load_case)
{
    const std::size_t copy = bench.copy(label);
    for (const MemberResult& m : bench.prepared.statics.members)
        if (m.copy == copy && bench.prepared.statics.cases.cases[m.load_case].name == load_case) return m;
    throw std::logic_error("no result of " + label);
}

} // namespace

TEST_CASE("Twist of a rectangle comes to the printed constants", "[mechanics][published]")
{
    // Timoshenko and Goodier, Theory of Elasticity, §109, from memory: b/c, J/(b c³), torque over largest stress and b c²; three digits.
    struct Row {
        double ratio, constant, modulus;
    };
    const Row rows[] = {{1, 0.1406, 0.208}, {1.2, 0.166, 0.219}, {1.5, 0.196, 0.231}, {2, 0.229, 0.246}, {2.5, 0.249, 0.258},
                        {3, 0.263, 0.267},  {4, 0.281, 0.282},   {5, 0.291, 0.291},   {10, 0.312, 0.312}};
    for (const Row& row : rows) {
        CAPTURE(row.ratio);
        const double c = 0.02, b = row.ratio * c;
        const RectangleTorsion upright = torsion_of(b, c), level = torsion_of(c, b);
        CHECK_THAT(upright.constant / (b * c * c * c), WithinAbs(row.constant, row.ratio > 1 ? 0.0005 : 0.00005));
        // Half a digit; of five to one the fourth digit is a 5.
        CHECK_THAT(upright.modulus_a / (b * c * c), WithinAbs(row.modulus, 0.000501));
        CHECK_THAT(level.modulus_b, WithinRel(upright.modulus_a, 1e-5));
        CHECK_THAT(level.modulus_a, WithinRel(upright.modulus_b, 1e-5));
        CHECK(upright.modulus_b >= upright.modulus_a * (1 - 1e-9)); // the longer sides bear most
    }
    // Of a very thin strip the shorter sides bear 0.743 of it: 8/π² of Catalan's constant.
    CHECK_THAT(torsion_of(0.5, 0.005).modulus_a / torsion_of(0.5, 0.005).modulus_b, WithinRel(0.7425, 1e-3));
}

TEST_CASE("Shear and twist add up where they meet, and only there", "[mechanics]")
{
    // 70 × 22 mm, 900 N along its depth, 300 N across, 12 N m of twist. τ_T at the long sides 12/(α 0.070 0.022²), r = 3.18: α 0.270.
    NetStretch deep{0, 1, 0.022, 0.070, 0, 0.022 * 0.070, 0.035}, flat{0, 1, 0.070, 0.022, 0, 0.022 * 0.070, 0.011};
    ShearReader reader;
    const SectionShear s = reader.at(deep, flat, 900, -300, -12);
    const double twist = 12 / (0.270 * 0.070 * 0.022 * 0.022), area = 0.022 * 0.070;
    CHECK_THAT(s.twist_stress, WithinRel(twist, 0.004));
    CHECK_THAT(s.stress, WithinRel(1.5 * 900 / area + s.twist_stress, 1e-9));
    CHECK(s.force == 900);
    // Without twist the middle of the section governs, with both forces.
    CHECK_THAT(reader.at(deep, flat, 900, -300, 0).stress, WithinRel(1.5 * std::hypot(900, 300) / area, 1e-9));
    // Far more level than upright, the short sides govern, where twist is less.
    const SectionShear level = reader.at(deep, flat, 0, 60000, 12);
    CHECK(level.force == 60000);
    CHECK(level.twist_stress < 0.8 * s.twist_stress);
    // A mortise that takes a third of the area leaves 4/9 of the resistance to twist.
    NetStretch cut = deep;
    cut.area *= 2.0 / 3;
    ShearReader other;
    CHECK_THAT(other.at(cut, flat, 0, 0, 12).twist_stress, WithinRel(9.0 / 4 * s.twist_stress, 1e-6));
}

TEST_CASE("A load beside the middle of a board twists it, and the finding says so", "[mechanics][shear]")
{
    // A board of 110 × 30 mm on posts whose middles stand 960 mm apart; 500 N at 320 mm from the left one, 35 mm beside its middle: 17.5 N m, of
    // which the nearer post takes two thirds, 11.7 N m, as a bar held against twist at both ends. α of 110 : 30 is 0.277; at the short sides,
    // where transverse shear is largest, twist makes 0.745 of what it makes at the long ones.
    //     τ_T = 0.745 · 11.7/(0.277 · 0.110 · 0.030²) = 0.317 MPa, and of shear 1.5 · 333/(0.110 · 0.030) = 0.152 MPa: more than the
    //     0.425 MPa of twist alone at the long sides
    Trestle board;
    board.width_mm = 110;
    board.thickness_mm = 30;
    const auto at = [&](const char* y) {
        Trestle t = board;
        t.more = std::string("[[load]]\nname = \"bracket\"\non = \"board\"\nforce = \"500 N\"\nat = [340, ") + y + ", 430]\n";
        return bench_of(t.text());
    };
    const auto off = at("90"), middle = at("55");
    const MemberResult &twisted = member_of(*off, "board", "bracket"), &plain = member_of(*middle, "board", "bracket");
    CHECK(std::abs(plain.torsion) < 0.01);
    CHECK_THAT(std::abs(twisted.torsion), WithinRel(500 * 0.035 * 2 / 3, 0.05)); // the bearings give a little
    CHECK_THAT(twisted.torsion_stress, WithinRel(0.745 * std::abs(twisted.torsion) / (0.277 * 0.110 * 0.030 * 0.030), 0.005));
    CHECK_THAT(twisted.shear_stress, WithinRel(plain.shear_stress + twisted.torsion_stress, 0.01));

    // The torque of the load is what the two sides differ by.
    const std::size_t copy = off->copy("board"), index = twisted.load_case;
    std::vector<CopyLoad> loads = off->prepared.statics.cases.lasting;
    for (const CopyLoad& l : off->prepared.statics.cases.cases[index].loads) loads.push_back(l);
    std::vector<CopyLoad> on;
    for (const CopyLoad& l : loads)
        if (l.copy == copy) on.push_back(l);
    const Structure& frame = *off->prepared.statics.frame;
    double least = 0, most = 0;
    for (const LineForces& f : line_forces(frame, copy, on, frame.solve({loads}).front())) {
        least = std::min(least, f.torsion);
        most = std::max(most, f.torsion);
    }
    CHECK_THAT(most - least, WithinRel(500 * 0.035, 1e-6));

    const auto findings = run_check("shear", off->prepared);
    const Finding& f = finding_of(findings, "shear", "board");
    CHECK_THAT(value_of(f, "torsion_stress"), WithinRel(twisted.torsion_stress, 1e-9));
    CHECK(std::any_of(f.working.begin(), f.working.end(),
                      [](const WorkingStep& s) { return s.formula.find("T/(α b c²)") != std::string::npos; }));
    CHECK(*f.utilisation > 2.5 * *finding_of(run_check("shear", middle->prepared), "shear", "board").utilisation);
}
