// Cup and diamonds: worked figures, the strain field integrated step by step, and the laws of plane strain.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "wood/distortion.hpp"

#include <cmath>
#include <vector>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

/// Red oak drying by 3.6 points: C_T 0.00369, C_R 0.00158 (Wood Handbook FPL-GTR-190, table 13-5).
constexpr RingStrain kOakDrying{-0.00369 * 3.6, -0.00158 * 3.6};

EndGrain board(double width_mm, double radius_mm, double rings_degrees = 0)
{
    return {millimetres(width_mm), millimetres(radius_mm), degrees(rings_degrees)};
}

/// Strain at a place of the end grain, pith at the origin, in Cartesian components.
struct Strain {
    double xx, yy, xy;
};
Strain strain_at(const RingStrain& s, double x, double y)
{
    const double r2 = x * x + y * y; // the radial direction is (x, y)/r
    return {(s.radial * x * x + s.tangential * y * y) / r2, (s.radial * y * y + s.tangential * x * x) / r2,
            (s.radial - s.tangential) * x * y / r2};
}

/// Cup from the field of small strains alone: along the face v'' = 2 ∂ε_sn/∂s − ∂ε_ss/∂n, integrated twice. Knows nothing of polar maps.
double cup_by_integration(const EndGrain& grain, const RingStrain& strain)
{
    const double w = in_metres(grain.width), r = in_metres(grain.ring_radius), c = std::cos(grain.rings.value()),
                 s = std::sin(grain.rings.value());
    // Along the face (c, s), out of it towards the bark (-s, c).
    const auto local = [&](double along, double out) {
        const Strain e = strain_at(strain, along * c - out * s, r + along * s + out * c);
        return Strain{c * c * e.xx + 2 * s * c * e.xy + s * s * e.yy, s * s * e.xx - 2 * s * c * e.xy + c * c * e.yy,
                      (c * c - s * s) * e.xy + s * c * (e.yy - e.xx)};
    };
    const int steps = 4000;
    const double h = w / steps, d = 1e-6;
    std::vector<double> v(static_cast<std::size_t>(steps) + 1, 0.0);
    double slope = 0;
    for (int i = 0; i < steps; ++i) {
        const double at = -w / 2 + (i + 0.5) * h;
        const double bend =
            2 * (local(at + d, 0).xy - local(at - d, 0).xy) / (2 * d) - (local(at, d).xx - local(at, -d).xx) / (2 * d);
        v[static_cast<std::size_t>(i) + 1] = v[static_cast<std::size_t>(i)] + (slope + bend * h / 2) * h;
        slope += bend * h;
    }
    double depth = 0;
    for (int i = 0; i <= steps; ++i) {
        const double gap = v.back() * i / steps - v[static_cast<std::size_t>(i)]; // chord over face
        if (std::abs(gap) > std::abs(depth)) depth = gap;
    }
    return depth;
}

} // namespace

TEST_CASE("Cup of a flat-sawn red oak board, 200 mm wide, that dries by 3.6 points", "[cup][published]")
{
    // Worked out beside the program, to two decimals of a millimetre and of a percent.
    const Cup wide_ring = cup_of(board(200, 300), kOakDrying), narrow_ring = cup_of(board(200, 100), kOakDrying);
    CHECK_THAT(in_millimetres(wide_ring.depth), WithinAbs(0.24, 0.005));
    CHECK_THAT(in_millimetres(narrow_ring.depth), WithinAbs(0.59, 0.005));
    CHECK_THAT(in_millimetres(cup_by_curvature(board(200, 300), kOakDrying)), WithinAbs(0.25, 0.005));
    CHECK_THAT(in_millimetres(cup_by_curvature(board(200, 100), kOakDrying)), WithinAbs(0.76, 0.005));
    CHECK_THAT(100 * narrow_ring.width_strain, WithinAbs(-1.17, 0.005)); // where C_T alone gives 1.33 %
    CHECK_THAT(100 * kOakDrying.tangential, WithinAbs(-1.33, 0.005));
}

TEST_CASE("Cup agrees with the strain field integrated along the face", "[cup]")
{
    // The field is one of small strains: the two differ by about the strain itself, 1.3 %.
    for (const double rings : {0.0, 20.0, 45.0, 60.0})
        for (const double radius : {60.0, 100.0, 300.0, 900.0}) {
            CAPTURE(rings, radius);
            const EndGrain grain = board(180, radius, rings);
            if (radius * std::cos(rings * kRadiansPerDegree) < 20) continue;
            CHECK_THAT(in_metres(cup_of(grain, kOakDrying).depth), WithinRel(cup_by_integration(grain, kOakDrying), 0.02));
        }
}

TEST_CASE("The curvature at mid-width is within 4 % up to a width of 0.7 radii, and tends to the cup of a narrow board", "[cup]")
{
    // Small strains; a strain of 1 % adds as much again.
    constexpr RingStrain kSlight{kOakDrying.tangential / 100, kOakDrying.radial / 100};
    const auto ratio = [&](double width, double rings) {
        const EndGrain grain = board(width, 100, rings);
        return cup_by_curvature(grain, kSlight).value() / cup_of(grain, kSlight).depth.value();
    };
    for (const double width : {10.0, 40.0, 70.0}) CHECK(std::abs(ratio(width, 0) - 1) < 0.04);
    CHECK(ratio(200, 0) > 1.2);
    for (const double rings : {0.0, 15.0, 45.0, 70.0}) CHECK_THAT(ratio(2, rings), WithinAbs(1, 0.002));
}

TEST_CASE("Laws of cup", "[cup]")
{
    const EndGrain grain = board(150, 120, 30);
    CHECK_THAT(in_metres(cup_of(grain, {0.01, 0.01}).depth), WithinAbs(0, 1e-12)); // moving alike all round: larger, not bent
    CHECK_THAT(cup_of(grain, {0.01, 0.01}).width_strain, WithinAbs(0.01, 1e-12));
    CHECK(in_metres(cup_of(grain, {-0.012, -0.005}).depth) > 0); // drying: hollow on the bark side
    CHECK(in_metres(cup_of(grain, {0.012, 0.005}).depth) < 0);
    CHECK_THAT(in_metres(cup_of(board(150, 120, 90), kOakDrying).depth), WithinAbs(0, 1e-12));
    CHECK_THAT(in_metres(cup_of(grain, {0, 0}).depth), WithinAbs(0, 1e-15));
    CHECK_THAT(cup_of(board(10, 1000, 0), kOakDrying).width_strain, WithinRel(kOakDrying.tangential, 1e-3));
    CHECK_THAT(cup_of(board(10, 1000, 90), kOakDrying).width_strain, WithinRel(kOakDrying.radial, 1e-3));
}

TEST_CASE("Strains at 0, 45 and 90 degrees to the rings, and what stays at every angle", "[movement][cup]")
{
    const MovementLaw law = std::get<MovementLaw>(movement_law(shared_facts(), shared_facts().find_wood("red oak")));
    const auto from = MoistureContent::percent(8), to = MoistureContent::percent(12);
    const double t = 0.00369 * 4, r = 0.00158 * 4;
    const RingStrain ring = ring_strain(law, from, to);
    CHECK_THAT(ring.tangential, WithinRel(t, 1e-12));
    CHECK_THAT(ring.radial, WithinRel(r, 1e-12));
    const auto at = [&](double d) { return board_strain(law, degrees(d), from, to); };
    CHECK_THAT(at(0).width, WithinRel(t, 1e-12));
    CHECK_THAT(at(0).thickness, WithinRel(r, 1e-12));
    CHECK_THAT(at(0).shear, WithinAbs(0, 1e-15));
    CHECK_THAT(at(45).width, WithinRel((t + r) / 2, 1e-12));
    CHECK_THAT(at(45).thickness, WithinRel((t + r) / 2, 1e-12));
    CHECK_THAT(at(45).shear, WithinRel(t - r, 1e-12)); // the largest
    CHECK_THAT(at(90).width, WithinRel(r, 1e-12));
    CHECK_THAT(at(90).thickness, WithinRel(t, 1e-12));
    CHECK_THAT(at(90).shear, WithinAbs(0, 1e-15));
    for (int d = 0; d <= 90; d += 5) {
        CAPTURE(d);
        const BoardStrain s = at(d);
        CHECK_THAT(s.width + s.thickness, WithinRel(t + r, 1e-12));
        CHECK_THAT(s.width * s.thickness - s.shear * s.shear / 4, WithinRel(t * r, 1e-12));
        CHECK_THAT(shear_of_section(degrees(d), ring).value(), WithinAbs(s.shear, 1e-15));
    }
}

TEST_CASE("A rift square: its diagonals change as the rings do", "[cup]")
{
    // A square of side 1 with its rings along one diagonal becomes a rhombus whose diagonals are √2 (1 + ε_T) and √2 (1 + ε_R).
    const double acute = 2 * std::atan((1 + kOakDrying.tangential) / (1 + kOakDrying.radial));
    const double exact = acute - std::acos(0.0); // the corners on the other diagonal open by this
    CHECK_THAT(shear_of_section(degrees(45), kOakDrying).value(), WithinRel(exact, 0.01)); // small angles: to the strain
}
