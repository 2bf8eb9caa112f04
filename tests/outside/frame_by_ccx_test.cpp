// Frames of beams against a general-purpose finite-element program. Both numbers are printed.

#include "catch.hpp"
#include "outside/ccx.hpp"

#include <fmt/core.h>

#include <cmath>

using namespace outside;
using kernel::Frame;
using kernel::Mat6;
using kernel::Vec3;
using kernel::Vec6;

namespace {

constexpr double kE = 12e9, kG = 0.75e9; // a hardwood: E/16
constexpr double kSame = 0.005;          // beams against beams
constexpr double kHeld = 1e13;

void hold(Frame& frame, int node, const Vec6& stiffness)
{
    frame.add_tie({frame.place(node), {{{node, 1.0}}}, {}, stiffness.asDiagonal()});
}

kernel::NodeLoad force(int node, double x, double y, double z)
{
    kernel::NodeLoad load;
    load.node = node;
    load.load.head<3>() = Vec3(x, y, z);
    return load;
}

/// Movements of every node under every case within 0.5 % of the largest movement of that case; prints those of the node that is loaded first.
void compare(const std::string& what, Frame& frame, const ForceCases& cases)
{
    frame.factor();
    const Movements theirs = ccx_movements(frame, cases);
    REQUIRE(theirs.size() == cases.size());
    for (std::size_t c = 0; c < cases.size(); ++c) {
        Eigen::VectorXd loads = Eigen::VectorXd::Zero(frame.unknowns());
        for (const auto& l : cases[c]) loads.segment<6>(6 * l.node) += l.load;
        const Eigen::VectorXd ours = frame.solve(loads).movement;
        double largest = 0, apart = 0;
        for (int n = 0; n < frame.nodes(); ++n) {
            largest = std::max(largest, theirs[c][static_cast<std::size_t>(n)].norm());
            apart = std::max(apart, (ours.segment<3>(6 * n) - theirs[c][static_cast<std::size_t>(n)]).norm());
        }
        const int loaded = cases[c].front().node;
        const Vec3 &direction = cases[c].front().load.head<3>().normalized(),
                   &other = theirs[c][static_cast<std::size_t>(loaded)];
        fmt::print(
            "{}, case {}: along the load {:.5f} mm here, {:.5f} mm by ccx; farthest apart {:.3f} % of the largest movement\n",
            what, c + 1, 1e3 * ours.segment<3>(6 * loaded).dot(direction), 1e3 * other.dot(direction), 100 * apart / largest);
        CHECK(largest > 0);
        CHECK(apart < kSame * largest);
    }
}

} // namespace

TEST_CASE("a portal moves as an outside program says", "[mechanics][outside]")
{
    if (!ccx_program()) {
        WARN(kSkipped);
        return;
    }
    const double h = 0.45, l = 0.9;
    const auto leg = solid_section(kE, kG, 0.035, 0.045), rail = solid_section(kE, kG, 0.022, 0.07);
    Frame frame;
    const int a = frame.add_node({0, 0, 0}), b = frame.add_node({0, 0, h}), m = frame.add_node({l / 3, 0, h}),
              c = frame.add_node({l, 0, h}), d = frame.add_node({l, 0, 0});
    frame.add_beam(a, b, {0, 1, 0}, leg);
    frame.add_beam(b, m, {0, 1, 0}, rail);
    frame.add_beam(m, c, {0, 1, 0}, rail);
    frame.add_beam(c, d, {0, 1, 0}, leg);
    hold(frame, a, Vec6::Constant(kHeld));
    hold(frame, d, Vec6::Constant(kHeld));
    compare("portal", frame, {{force(b, 200, 0, 0)}, {force(m, 0, 0, -1300)}, {force(m, 60, 0, -400), force(c, 90, 0, 0)}});
}

TEST_CASE("a bench of legs, rails and slats moves as an outside program says", "[mechanics][outside]")
{
    if (!ccx_program()) {
        WARN(kSkipped);
        return;
    }
    // Square sections twist without warping: what a knot of several beams does to warping, and beam theory leaves out, plays no part.
    const double l = 1.05, w = 0.30, h = 0.40, lift = 0.0375;
    const auto leg = solid_section(kE, kG, 0.041, 0.041), rail = solid_section(kE, kG, 0.045, 0.045),
               slat = solid_section(0.8 * kE, kG, 0.03, 0.03);
    constexpr int slats = 7;
    Frame frame;
    const auto tie = [&](int x, int y) { frame.add_tie({frame.place(x), {{{x, 1.0}}}, {{{y, 1.0}}}, Mat6::Identity() * kHeld}); };
    std::array<std::array<int, 2>, 2> top{};
    Vec6 stands;
    stands << kHeld, kHeld, kHeld, 0, 0, 0;
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = 0; j < 2; ++j) {
            const double x = i == 0 ? 0 : l, y = j == 0 ? 0 : w;
            const int foot = frame.add_node({x, y, 0});
            top[i][j] = frame.add_node({x, y, h});
            frame.add_beam(foot, top[i][j], {1, 0, 0}, leg);
            hold(frame, foot, stands);
        }
    for (std::size_t i = 0; i < 2; ++i) { // side rails, joined by stiff ties at one place
        const int from = frame.add_node(frame.place(top[i][0])), to = frame.add_node(frame.place(top[i][1]));
        frame.add_beam(from, to, {1, 0, 0}, rail);
        tie(top[i][0], from);
        tie(top[i][1], to);
    }
    std::array<std::array<int, slats>, 2> on_rail{};
    for (std::size_t j = 0; j < 2; ++j) {
        int before = top[0][j];
        for (std::size_t s = 0; s < slats; ++s) {
            const double x = l * (static_cast<double>(s) + 1) / (slats + 1);
            on_rail[j][s] = frame.add_node({x, j == 0 ? 0 : w, h});
            frame.add_beam(before, on_rail[j][s], {0, 1, 0}, rail);
            before = on_rail[j][s];
        }
        frame.add_beam(before, top[1][j], {0, 1, 0}, rail);
    }
    std::array<std::array<int, 5>, slats>
        of_slat{}; // front end, front rail, middle, back rail, back end; they lie above the rails
    for (std::size_t s = 0; s < slats; ++s) {
        const double x = frame.place(on_rail[0][s]).x();
        const std::array<double, 5> ys{-0.03, 0, w / 2, w, w + 0.03};
        for (std::size_t k = 0; k < 5; ++k) {
            of_slat[s][k] = frame.add_node({x, ys[k], h + lift});
            if (k > 0) frame.add_beam(of_slat[s][k - 1], of_slat[s][k], {1, 0, 0}, slat);
        }
        tie(on_rail[0][s], of_slat[s][1]);
        tie(on_rail[1][s], of_slat[s][3]);
    }
    // Loads stand over the rails and between them, not on the stubs beyond: a stub as long as it is deep is no beam, and solids give there by half
    // as much again as shear alone, 0.8 % of the whole movement.
    compare("bench", frame,
            {{force(of_slat[3][2], 0, 0, -1300)},
             {force(of_slat[1][1], 0, 0, -1300)},
             {force(top[0][0], 300, 0, 0)},
             {force(top[1][1], 0, 300, 0)},
             {force(of_slat[5][3], 50, -80, -700), force(of_slat[2][2], 0, 30, -900), force(top[0][1], -100, 60, 0)}});
}
