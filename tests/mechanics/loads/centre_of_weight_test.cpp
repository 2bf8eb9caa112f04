// Where the weight of a part acts: the centre of its volume, held against closed forms.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/loads/footing.hpp"

#include <cmath>
#include <numbers>

using namespace checked;

namespace {

const DesignHead kHead{.name = "Part"};

Point centre_of(const std::string& part)
{
    const auto bench = bench_of(design({head_text(kHead), wood_text("white oak"), part}));
    return bench->layout.centres.front();
}

/// Of a section that tapers in a straight line in both directions, w and t from one end to the other: Simpson's rule, exact to the third power.
struct Tapered {
    double w0, w1, t0, t1;
    template <class F>
    double integral(F f) const
    {
        const auto at = [&](double s) { return f(s, w0 + s * (w1 - w0), t0 + s * (t1 - t0)); };
        return (at(0) + 4 * at(0.5) + at(1)) / 6;
    }
    double area() const
    {
        return integral([](double, double w, double t) { return w * t; });
    }
};

const std::string kTaperedLeg = "taper = { end = \"bottom\", width = 20, thickness = 30, flat = [\"left\"] }";

} // namespace

TEST_CASE("A leg tapered unevenly has its centre where its volume does", "[footing][centre]")
{
    // 50 wide (y) and 60 thick (x) at the top, 20 and 30 at the foot, 400 high; its left side stays straight, front and back taper alike.
    const Point c = centre_of(part_text("leg", {400, 50, 60}, "z", "x", "[100, 200, 0]", kTaperedLeg));
    const Tapered leg{0.020, 0.050, 0.030, 0.060};
    const double x = leg.integral([](double, double w, double t) { return w * t * t / 2; }) / leg.area();
    const double z = leg.integral([](double s, double w, double t) { return s * w * t; }) / leg.area() * 0.400;
    CHECK_THAT(c[0], WithinAbs(0.100 + x, 1e-9));
    CHECK_THAT(c[1], WithinAbs(0.225, 1e-9));
    CHECK_THAT(c[2], WithinAbs(z, 1e-9));
    CHECK(z > 0.22); // not the middle of its corners
}

TEST_CASE("A turned leg takes its centre with it", "[footing][centre]")
{
    const std::string leg = part_text("leg", {400, 50, 60}, "z", "x", "[100, 200, 0]", kTaperedLeg);
    const Point straight = centre_of(leg), turned = centre_of(leg + "turn = { about = \"y\", degrees = 12 }\n");
    // Right-handed about y, through the middle of the box (130, 225, 200): z turns towards x.
    const double angle = 12 * std::numbers::pi / 180, x = straight[0] - 0.130, z = straight[2] - 0.200;
    CHECK_THAT(turned[0], WithinAbs(0.130 + x * std::cos(angle) + z * std::sin(angle), 1e-9));
    CHECK_THAT(turned[1], WithinAbs(straight[1], 1e-9));
    CHECK_THAT(turned[2], WithinAbs(0.200 - x * std::sin(angle) + z * std::cos(angle), 1e-9));
}

TEST_CASE("Notches off the middle move the centre by their volume", "[footing][centre]")
{
    // 1000 × 100 × 50 lying flat; two notches 20 deep, 80 wide from above, from 60 and from 200: middles at 100 and 240, at 40 high.
    const Point c =
        centre_of(part_text("board", {1000, 100, 50}, "x", "z", "[0, 0, 0]",
                            "notches = [ { from = \"top\", depth = 20, width = 80, first = 60, step = 140, count = 2 } ]"));
    const double whole = 1.0 * 0.1 * 0.05, notch = 0.08 * 0.1 * 0.02, left = whole - 2 * notch;
    CHECK_THAT(c[0], WithinAbs((whole * 0.5 - notch * (0.1 + 0.24)) / left, 1e-9));
    CHECK_THAT(c[1], WithinAbs(0.05, 1e-9));
    CHECK_THAT(c[2], WithinAbs((whole * 0.025 - 2 * notch * 0.04) / left, 1e-9));
}

TEST_CASE("A mortise off the middle takes wood from the leg and the tenon brings it back to the rail", "[footing][centre]")
{
    const auto bench =
        bench_of(design({head_text(kHead), wood_text("white oak"), part_text("leg", {500, 60, 60}, "z", "x", "[0, 0, 0]"),
                         part_text("rail", {400, 80, 30}, "x", "y", "[60, 10, 350]"),
                         joint_text("rail", "leg", "tenon", "PVA", "tenon = { length = 30, width = 50, thickness = 10 }")}));
    const Point& leg = bench->layout.centres[bench->copy("leg")];
    const Point& rail = bench->layout.centres[bench->copy("rail")];
    // The tenon, 30 × 10 × 50, has its middle at x 45, y 25, z 390.
    const double tenon = 0.030 * 0.010 * 0.050, post = 0.5 * 0.06 * 0.06, board = 0.4 * 0.08 * 0.03;
    CHECK_THAT(leg[0], WithinAbs((post * 0.030 - tenon * 0.045) / (post - tenon), 1e-9));
    CHECK_THAT(leg[1], WithinAbs((post * 0.030 - tenon * 0.025) / (post - tenon), 1e-9));
    CHECK_THAT(leg[2], WithinAbs((post * 0.250 - tenon * 0.390) / (post - tenon), 1e-9));
    CHECK_THAT(rail[0], WithinAbs((board * 0.260 + tenon * 0.045) / (board + tenon), 1e-9));
    CHECK_THAT(rail[2], WithinAbs(0.390, 1e-9));
}

TEST_CASE("A row of tiny grooves does not move the centre of a piece", "[footing][centre][tip]")
{
    // A board that stands out to the right; thirty grooves 1 mm deep and 2 mm wide under its far end weigh some 10 g.
    const auto ratio = [](const std::string& grooves) {
        const auto bench =
            bench_of(design({head_text({.name = "Bench", .use = "seat", .carries = {"seat"}}), wood_text("white oak"),
                             part_text("slab", {420, 300, 30}, "z", "x", "[100, 0, 0]", "copies = [ { at = [800, 0, 0] } ]"),
                             part_text("seat", {1000, 300, 30}, "x", "z", "[0, 0, 420]", grooves),
                             joint_text("slab", "seat", "dowel", "PVA", "dowels = { diameter = 8, length = 40, count = 3 }")}));
        return value_of(finding_of(run_check("tip", bench->prepared), "tip"), "overturning_ratio");
    };
    const double plain = ratio(""),
                 grooved = ratio("notches = [ { from = \"bottom\", depth = 1, width = 2, first = 840, step = 5, count = 30 } ]");
    CHECK(plain > 0.1);
    CHECK_THAT(grooved, WithinRel(plain, 0.01));
    CHECK(grooved != plain);
}
