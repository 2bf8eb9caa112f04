// Feet that slide, on a portal whose thrust is known by hand.

#include "catch.hpp"
#include "mechanics/frame/frame.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::kernel;

namespace {

constexpr double kHeight = 0.4, kSpan = 1.2, kShare = 0.25;

/// A stiff-jointed portal on two feet that press and grip; each corner and the place of the load is a node.
struct Portal {
    Frame frame;
    int load_node = 0, beam_before_load = 0;
    explicit Portal(double load_at)
    {
        BeamSection s;
        s.axial = 1e9;
        s.bending_y = s.bending_z = 12e9 * std::pow(0.04, 4) / 12;
        s.twisting = 1e5;
        const int a = frame.add_node({0, 0, 0}), b = frame.add_node({0, 0, kHeight}), p = frame.add_node({load_at, 0, kHeight}),
                  c = frame.add_node({kSpan, 0, kHeight}), d = frame.add_node({kSpan, 0, 0});
        load_node = p;
        frame.add_beam(a, b, {0, 1, 0}, s);
        beam_before_load = frame.add_beam(b, p, {0, 1, 0}, s);
        frame.add_beam(p, c, {0, 1, 0}, s);
        frame.add_beam(c, d, {0, 1, 0}, s);
        for (const int foot : {a, d}) {
            Vec6 aside;
            aside << 0, 1e8, 0, 1e6, 0, 1e6; // out of its plane
            const Anchor anchor{{{foot, 1.0}}};
            frame.add_tie({frame.place(foot), anchor, {}, aside.asDiagonal()});
            const int press = frame.add_press({frame.place(foot), anchor, {}, Vec3(0, 0, -1), 1e8});
            frame.add_grip({frame.place(foot), anchor, {Vec3::UnitX(), Vec3::UnitY()}, 1e8, press});
        }
        frame.factor();
    }
    FrameSolution solve(double force, bool slides) const
    {
        Eigen::VectorXd loads = Eigen::VectorXd::Zero(frame.unknowns());
        loads(6 * load_node + 2) = -force;
        FloorState floor;
        floor.slides = slides;
        floor.share = kShare;
        return frame.solve(loads, floor);
    }
    double moment_at_load(const FrameSolution& solution) const
    {
        return std::abs(frame.beam(beam_before_load).end_forces(frame.beam_movement(beam_before_load, solution.movement))(10));
    }
};

} // namespace

TEST_CASE("Feet that slide thrust with their share of what presses on them, wherever the load stands", "[mechanics]")
{
    // The thrust is alike at both feet, so that of the lighter one rules: H = 0.25 P b/L for a load at a, b = L − a the longer. Under the load the
    // moment is P a b/L − H h. Held against stops the thrust would be larger.
    const double p = 1000;
    for (const double a : {0.6, 0.58, 0.4, 0.2}) {
        CAPTURE(a);
        const Portal portal(a);
        const double b = kSpan - a, lighter = p * std::min(a, b) / kSpan;
        const FrameSolution slides = portal.solve(p, true), holds = portal.solve(p, false);
        REQUIRE(slides.settled);
        CHECK_THAT(portal.moment_at_load(slides), WithinRel(p * a * b / kSpan - kShare * lighter * kHeight, 1e-3));
        CHECK(portal.moment_at_load(holds) < portal.moment_at_load(slides) - 5);
        CHECK(holds.slid.empty());
        CHECK(slides.slid.size() == (a == 0.6 ? 2 : 1));
    }
}

TEST_CASE("A foot on the brink of sliding slides into it without a jump", "[mechanics]")
{
    double before = 0;
    for (int k = 0; k <= 60; ++k) {
        const double a = 0.57 + 0.001 * k, moment = Portal(a).moment_at_load(Portal(a).solve(1000, true));
        if (k > 0)
            CHECK(std::abs(moment - before) < 0.6); // N m: of 245; P (L − 2 a)/L a millimetre, and the lighter foot's thrust
        before = moment;
    }
}
