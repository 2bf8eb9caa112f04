// Mitres: a worked example, and the corner drawn point by point.

#include "catch.hpp"

#include "mechanics/seasons/mitre.hpp"

#include <cmath>
#include <complex>

using namespace jointwright;

namespace {

MitreMember member(double along_mm, double across_mm, double strain_along, double strain_across)
{
    return {millimetres(along_mm), millimetres(across_mm), strain_along, strain_across};
}

} // namespace

TEST_CASE("Flat-sawn white oak, 75 mm wide, drying by 4 points", "[mitre][published]")
{
    // C_T 0.00365 (Wood Handbook FPL-GTR-190, table 13-5), 0.00005 along: 0.0144 rad, 0.83 degrees, 1.53 mm.
    const MitreMember oak = member(75, 75, -0.00005 * 4, -0.00365 * 4);
    const MitreOpening opening = mitre_opening(oak, oak);
    CHECK_THAT(opening.angle.value(), WithinAbs(0.0144, 0.0002)); // e_w - e_l for small strains; exact 0.0145
    CHECK_THAT(in_degrees(opening.angle), WithinAbs(0.83, 0.005));
    CHECK_THAT(in_millimetres(opening.gap), WithinAbs(1.53, 0.005));
}

TEST_CASE("The gap is that between the inner ends of the two cuts, drawn in place", "[mitre]")
{
    using Place = std::complex<double>;
    for (const double e_w : {-0.03, -0.01, -0.002}) {
        // The outer corner at the origin, one member to the right, one upwards; each cut ends at its own inner corner.
        const Place right = Place(60 * 1.001, 60 * (1 + e_w)), up = Place(60 * (1 + e_w), 60 * 1.001);
        const MitreMember m = member(60, 60, 0.001, e_w);
        const MitreOpening opening = mitre_opening(m, m);
        CAPTURE(e_w);
        CHECK(opening.angle.value() > 0); // drying: open inside
        CHECK_THAT(in_millimetres(opening.gap), WithinRel(std::abs(right - up), 1e-12));
        CHECK_THAT(opening.angle.value(), WithinRel(std::arg(up) - std::arg(right), 1e-12));
    }
}

TEST_CASE("Members of unlike width: each cut turns by half the sine of twice its angle", "[mitre]")
{
    const double e_w = 1e-5;
    const MitreMember one = member(40, 90, 0, e_w), other = member(90, 40, 0, e_w);
    const double angle = std::atan2(90.0, 40.0);
    CHECK_THAT(mitre_opening(one, other).angle.value(), WithinRel(-std::sin(2 * angle) * e_w, 1e-4)); // both cuts, outside
    CHECK_THAT(in_metres(mitre_opening(one, other).gap), WithinRel(std::hypot(0.040, 0.090) * std::sin(2 * angle) * e_w, 1e-4));
}

TEST_CASE("Laws of the mitre", "[mitre]")
{
    const MitreMember flat = member(70, 70, 0, 0.01), quarter = member(70, 70, 0, 0.004);
    CHECK(mitre_opening(flat, flat).angle.value() < 0); // swelling: open outside
    CHECK(in_metres(mitre_opening(flat, flat).gap) > 0);
    CHECK(mitre_opening(flat, quarter).angle == mitre_opening(quarter, flat).angle);
    CHECK_THAT(mitre_opening(flat, quarter).angle.value(),
               WithinRel((mitre_opening(flat, flat).angle.value() + mitre_opening(quarter, quarter).angle.value()) / 2, 1e-12));
    CHECK(in_metres(mitre_opening(member(70, 50, 0.01, 0.01), member(50, 70, 0.01, 0.01)).gap) < 1e-15);
}
