// A notched rail and a plate against solids of a general-purpose finite-element program. Both numbers are printed.

#include "catch.hpp"
#include "checks/trestle.hpp"
#include "mechanics/structure/structure.hpp"
#include "outside/ccx.hpp"

#include <fmt/core.h>

#include <cmath>

using namespace outside;

namespace {

constexpr double kSagOfSolids = 0.03;
constexpr std::size_t kNotches = 15;
constexpr double kRailBreadth = 0.022, kNotchFrom = 0.0785, kNotchStep = 0.057, kNotchWide = 0.045;

/// Fine planes from each given one to the next, none farther apart than `step`.
std::vector<double> planes(const std::vector<double>& given, double step)
{
    std::vector<double> all{given.front()};
    for (std::size_t i = 1; i < given.size(); ++i) {
        const double l = given[i] - given[i - 1];
        const int n = std::max(1, static_cast<int>(std::ceil(l / step - 1e-6)));
        for (int k = 1; k <= n; ++k) all.push_back(given[i - 1] + l * k / n);
    }
    return all;
}

std::size_t plane_at(const std::vector<double>& all, double at)
{
    for (std::size_t i = 0; i < all.size(); ++i)
        if (std::abs(all[i] - at) < 1e-9) return i;
    throw std::logic_error("no such plane");
}

/// Along x the grain. The width of a board on edge looks along z, of one that lies along y.
SolidWood solid_wood(const jointwright::MemberStiffness& s, bool on_edge)
{
    SolidWood w{s.along, s.across, s.across, s.shear_width, s.shear_face, s.rolling};
    if (on_edge) std::swap(w.xy, w.xz);
    return w;
}

/// Sag at the middle of a rail on edge under an even load on the floors of its notches, in solids.
double sag_in_solids(double rail_depth, double notch_depth, double load, const SolidWood& wood, double step)
{
    using checked::kTrestleOverhang, checked::kTrestleSpan;
    const double length = kTrestleSpan + 2 * kTrestleOverhang;
    std::vector<double> ends{0, kTrestleOverhang};
    for (std::size_t n = 0; n < kNotches; ++n) {
        const double from = kNotchFrom + kNotchStep * static_cast<double>(n);
        ends.push_back(from);
        if (n == kNotches / 2) ends.push_back(from + kNotchWide / 2);
        ends.push_back(from + kNotchWide);
    }
    ends.insert(ends.end(), {length - kTrestleOverhang, length});
    const double left = rail_depth - notch_depth;
    const auto x = planes(ends, step),
               z = planes(notch_depth > 0 ? std::vector{0.0, left / 2, left, rail_depth} : std::vector{0.0, left / 2, left},
                          step);
    Bricks body(x, {0, kRailBreadth}, z, wood);
    const std::size_t top = plane_at(z, left), centre = plane_at(z, left / 2);
    for (std::size_t n = 0; n < kNotches; ++n) {
        const double from = kNotchFrom + kNotchStep * static_cast<double>(n);
        for (std::size_t i = plane_at(x, from); i < plane_at(x, from + kNotchWide); ++i) {
            if (notch_depth > 0)
                for (std::size_t k = top; k + 1 < z.size(); ++k) body.leave_out(i, 0, k);
            body.press_on(i, 0, (notch_depth > 0 ? top : z.size() - 1) - 1, load / (kNotches * kNotchWide * kRailBreadth));
        }
    }
    // Held at the middle of the depth, where the bearings press nothing together.
    for (const double at : {kTrestleOverhang, length - kTrestleOverhang})
        for (std::size_t j = 0; j <= 2; ++j) {
            const int n = body.node(2 * plane_at(x, at), j, 2 * centre);
            body.hold(n, 2);
            if (j == 1) body.hold(n, 1);
            if (j == 1 && at < length / 2) body.hold(n, 0);
        }
    const int middle = body.node(2 * plane_at(x, length / 2), 1, 2 * centre);
    const std::string input = body.input();
    return -run_ccx(input, body.nodes()).front()[static_cast<std::size_t>(middle)].z();
}

} // namespace

TEST_CASE("a rail with a row of notches sags as solids do", "[mechanics][outside]")
{
    if (!ccx_program()) {
        WARN(kSkipped);
        return;
    }
    const int notch = GENERATE(0, 6, 10, 20); // mm, of 76
    constexpr double load = 1500;
    checked::Trestle t;
    t.width_mm = 76;
    t.thickness_mm = 1e3 * kRailBreadth;
    t.face = "y";
    if (notch > 0)
        t.shape = fmt::format("notches = [ {{ from = \"top\", depth = {}, width = {}, first = {}, step = {}, count = {} }} ]\n",
                              notch, 1e3 * kNotchWide, 1e3 * kNotchFrom, 1e3 * kNotchStep, kNotches);
    t.more = fmt::format("[[load]]\nname = \"people\"\non = \"board\"\nforce = \"{} N\"\npatch = [{}, 22]\nat = [500, 11]\n",
                         load, 1e3 * (kNotchStep * (kNotches - 1) + kNotchWide));
    const auto bench = checked::bench_of(t.text());
    const auto& statics = bench->prepared.statics;
    const std::size_t rail = bench->copy("board #1");
    double sag = 0;
    for (const auto& m : statics.members)
        if (m.copy == rail && statics.cases.cases[m.load_case].total > 0) sag = std::max(sag, m.sag - m.lasting_sag);
    const double by_solids = sag_in_solids(0.076, 1e-3 * notch, load, solid_wood(statics.frame->stiffness()[rail], true), 0.0125);
    fmt::print("rail 76 mm deep, {} notches {} mm deep: sag {:.4f} mm here, {:.4f} mm in solids by ccx, {:+.2f} %\n",
               notch > 0 ? kNotches : 0, notch, 1e3 * sag, 1e3 * by_solids, 100 * (sag / by_solids - 1));
    CHECK_THAT(sag, WithinRel(by_solids, kSagOfSolids));
}

TEST_CASE("a shelf on three spots bends along and across as solids do", "[mechanics][outside]")
{
    if (!ccx_program()) {
        WARN(kSkipped);
        return;
    }
    // Boards this wide are plates: stiff along the grain, soft across it. A load on a part of it near one corner; little is alike on both sides.
    const double l = 0.9, w = 0.4, t = 0.02, load = 300;
    const SolidWood wood{12e9, 0.9e9, 0.9e9, 0.75e9, 0.8e9, 0.2e9};
    const int cells = 18, wide = 8;
    const auto x = planes({0, l}, l / cells), y = planes({0, w}, w / wide);
    constexpr std::array<std::array<std::size_t, 2>, 3> spots{{{0, 0}, {0, wide}, {cells, wide / 2}}};
    constexpr std::size_t loaded_from = 10, loaded_to = 14, across_to = 2; // cells
    const double cell_load = load / ((loaded_to - loaded_from) * across_to);

    kernel::Frame frame;
    for (const double s : x)
        for (const double r : y) frame.add_node({s, r, 0});
    const auto node = [&](std::size_t i, std::size_t j) { return static_cast<int>(i * y.size() + j); };
    const kernel::PlateSection section{t, wood.x, wood.y, wood.xy, wood.xz, wood.yz, 0};
    Bricks body(x, y, {0, t / 2, t}, wood);
    std::vector<std::pair<int, kernel::Vec24>> pressed;
    for (std::size_t i = 0; i < cells; ++i)
        for (std::size_t j = 0; j < wide; ++j) {
            const int plate = frame.add_plate({node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)}, x[i + 1] - x[i],
                                              y[j + 1] - y[j], kernel::Mat3::Identity(), section);
            if (i < loaded_from || i >= loaded_to || j >= across_to) continue;
            pressed.emplace_back(plate, frame.plate(plate).spread({-1, -1}, {1, 1}, {0, 0, -cell_load}));
            body.press_on(i, j, 1, cell_load / ((x[i + 1] - x[i]) * (y[j + 1] - y[j])));
        }
    for (const auto& [i, j] : spots) {
        kernel::Vec6 lies;
        lies << 1e9, 1e9, 1e12, 0, 0, 0;
        frame.add_tie({frame.place(node(i, j)), {{{node(i, j), 1.0}}}, {}, lies.asDiagonal()});
        const int at = body.node(2 * i, 2 * j, 2);
        body.hold(at, 2);
        if (i == 0) body.hold(at, 0);
        if (i == 0 && j == 0) body.hold(at, 1);
    }
    frame.factor();
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(frame.unknowns());
    for (const auto& [plate, f] : pressed)
        for (std::size_t k = 0; k < 4; ++k)
            loads.segment<6>(6 * frame.plate_nodes(plate)[k]) += f.segment<6>(6 * static_cast<int>(k));
    const Eigen::VectorXd ours = frame.solve(loads).movement;
    std::vector<std::array<std::size_t, 2>> places{{12, 0}, {9, 0}, {9, 4}, {9, 8}, {18, 0}, {18, 8}, {0, 4}};
    std::vector<int> in_body;
    for (const auto& [i, j] : places) in_body.push_back(body.node(2 * i, 2 * j, 2));
    const std::string input = body.input();
    const auto theirs = run_ccx(input, body.nodes()).front();
    const double largest = -theirs[static_cast<std::size_t>(in_body[0])].z();
    for (std::size_t k = 0; k < places.size(); ++k) {
        const double here = -ours(6 * node(places[k][0], places[k][1]) + 2),
                     there = -theirs[static_cast<std::size_t>(in_body[k])].z();
        fmt::print("shelf at {:.0f} mm, {:.0f} mm: down {:.4f} mm here, {:.4f} mm in solids by ccx\n", 1e3 * x[places[k][0]],
                   1e3 * y[places[k][1]], 1e3 * here, 1e3 * there);
        CHECK_THAT(here, WithinAbs(there, kSagOfSolids * largest));
    }
}
