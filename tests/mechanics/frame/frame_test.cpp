// Closed forms for the frame: cantilever, built-in beam, portal, springs, plates, contacts that only press.

#include "catch.hpp"
#include "mechanics/frame/frame.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <cmath>
#include <random>

using namespace jointwright::kernel;

namespace {

constexpr double kE = 12e9, kG = 0.75e9;

BeamSection rectangle(double y, double z, double shear = 5.0 / 6)
{
    const double area = y * z;
    return {kE * area, kE * z * y * y * y / 12, kE * y * z * z * z / 12, kG * area * shear, kG * area * shear, kG * 1e-8};
}

Tie clamp(const Frame& frame, int node, double stiffness = 1e13)
{
    return {frame.place(node), {{{node, 1.0}}}, {}, Mat6::Identity() * stiffness};
}

Eigen::VectorXd nothing(const Frame& frame) { return Eigen::VectorXd::Zero(frame.unknowns()); }

} // namespace

TEST_CASE("a cantilever bends by P L³/(3 E I) + P L/(G A')", "[mechanics]")
{
    Frame frame;
    const double l = 0.8, y = 0.07, z = 0.02, p = 300;
    std::vector<int> nodes;
    for (int k = 0; k <= 3; ++k) nodes.push_back(frame.add_node({l * k / 3, 0, 0}));
    for (std::size_t k = 0; k < 3; ++k) frame.add_beam(nodes[k], nodes[k + 1], {0, 1, 0}, rectangle(y, z));
    frame.add_tie(clamp(frame, nodes[0]));
    frame.factor();
    CHECK_FALSE(frame.free_motion());
    Eigen::VectorXd loads = nothing(frame);
    loads(6 * nodes[3] + 1) = p;
    const auto solved = frame.solve(loads);
    const double inertia = z * y * y * y / 12, shear = kG * y * z * 5 / 6;
    CHECK_THAT(solved.movement(6 * nodes[3] + 1), WithinRel(p * l * l * l / (3 * kE * inertia) + p * l / shear, 1e-6));
    const Vec12 forces = frame.beam(0).end_forces(frame.beam_movement(0, solved.movement));
    CHECK_THAT(forces(5), WithinRel(-p * l, 1e-7)); // what the wall gives the beam
    CHECK_THAT(frame.tie_force(0, solved.movement)(1), WithinRel(p, 1e-9));
    CHECK_THAT(frame.tie_force(0, solved.movement)(5), WithinRel(p * l, 1e-7));
}

TEST_CASE("a beam built in at both ends carries a spread load with w L²/12 at the ends", "[mechanics]")
{
    Frame frame;
    const double l = 1.2, w = 500;
    std::vector<int> nodes;
    for (int k = 0; k <= 4; ++k) nodes.push_back(frame.add_node({0, l * k / 4, 0}));
    const BeamSection s = rectangle(0.02, 0.05);
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(6 * 5);
    for (std::size_t k = 0; k < 4; ++k) {
        frame.add_beam(nodes[k], nodes[k + 1], {1, 0, 0}, s);
        const Vec12 f = frame.beam(static_cast<int>(k)).spread(0, 1, {0, 0, -w * l / 4}, 0);
        loads.segment<6>(6 * nodes[k]) += f.head<6>();
        loads.segment<6>(6 * nodes[k + 1]) += f.tail<6>();
    }
    frame.add_tie(clamp(frame, nodes[0]));
    frame.add_tie(clamp(frame, nodes[4]));
    frame.factor();
    const auto solved = frame.solve(loads);
    CHECK_THAT(solved.movement(6 * nodes[2] + 2),
               WithinRel(-(w * std::pow(l, 4) / (384 * s.bending_z) + w * l * l / (8 * s.shear_z)), 1e-6));
    CHECK_THAT(std::abs(frame.tie_force(0, solved.movement)(3)), WithinRel(w * l * l / 12, 1e-6));
}

TEST_CASE("a portal built in at its feet sways as the textbook says", "[mechanics]")
{
    // Slope deflection, no shear and stretch: with k = I_b h/(I_c L), sway = P h³/(12 E I_c) (2 + 3 k)... of (1 + 6 k): δ = P h³ (2 + 3k)/(12 E I (1 + 6k)).
    Frame frame;
    const double h = 0.45, l = 0.9, p = 200;
    BeamSection s = rectangle(0.04, 0.04, 1);
    s.shear_y = s.shear_z = 0;
    s.axial = 1e12;
    const int a = frame.add_node({0, 0, 0}), b = frame.add_node({0, 0, h}), c = frame.add_node({l, 0, h}),
              d = frame.add_node({l, 0, 0});
    frame.add_beam(a, b, {0, 1, 0}, s);
    frame.add_beam(b, c, {0, 1, 0}, s);
    frame.add_beam(c, d, {0, 1, 0}, s);
    frame.add_tie(clamp(frame, a));
    frame.add_tie(clamp(frame, d));
    frame.factor();
    Eigen::VectorXd loads = nothing(frame);
    loads(6 * b) = p;
    const auto solved = frame.solve(loads);
    const double k = h / l;
    CHECK_THAT(solved.movement(6 * c), WithinRel(p * h * h * h * (2 + 3 * k) / (12 * s.bending_z * (1 + 6 * k)), 1e-5));
}

TEST_CASE("a beam on springs, and its own equilibrium", "[mechanics]")
{
    Frame frame;
    const double l = 1.0, p = 400, spring = 2e5;
    const BeamSection s = rectangle(0.02, 0.06);
    const int a = frame.add_node({0, 0, 0}), m = frame.add_node({l / 2, 0, 0}), b = frame.add_node({l, 0, 0});
    frame.add_beam(a, m, {0, 1, 0}, s);
    frame.add_beam(m, b, {0, 1, 0}, s);
    Vec6 held;
    held << 1e9, 1e9, spring, 1e6, 0, 1e6; // free to turn about y
    for (const int n : {a, b}) frame.add_tie({frame.place(n), {{{n, 1.0}}}, {}, held.asDiagonal()});
    frame.factor();
    Eigen::VectorXd loads = nothing(frame);
    loads(6 * m + 2) = -p;
    const auto solved = frame.solve(loads);
    CHECK_THAT(-solved.movement(6 * m + 2),
               WithinRel(p / 2 / spring + p * l * l * l / (48 * s.bending_z) + p * l / (4 * s.shear_z), 1e-7));
    CHECK_THAT(-frame.tie_force(0, solved.movement)(2) - frame.tie_force(1, solved.movement)(2), WithinRel(p, 1e-9));
}

TEST_CASE("a tapered cantilever in many short steps agrees with the integral of M m/(E I)", "[mechanics]")
{
    const double l = 0.4, p = 250, deep = 0.045, thin = 0.025, breadth = 0.04;
    const auto depth = [&](double x) { return deep + (thin - deep) * x / l; };
    Frame frame;
    int last = frame.add_node({0, 0, 0});
    frame.add_tie(clamp(frame, last));
    constexpr int steps = 48;
    for (int k = 0; k < steps; ++k) {
        const int next = frame.add_node({l * (k + 1) / steps, 0, 0});
        frame.add_beam(last, next, {0, 1, 0}, rectangle(breadth, depth(l * (k + 0.5) / steps)));
        last = next;
    }
    frame.factor();
    Eigen::VectorXd loads = nothing(frame);
    loads(6 * last + 2) = -p;
    const double exact = boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
        [&](double x) {
            const double d = depth(x), arm = l - x;
            return p * arm * arm / (kE * breadth * d * d * d / 12) + p / (kG * breadth * d * 5 / 6);
        },
        0, l, 8, 1e-12);
    CHECK_THAT(-frame.solve(loads).movement(6 * last + 2), WithinRel(exact, 1e-3)); // 48 steps: their error falls with the square
}

TEST_CASE("two beams crossing share a load by their stiffness", "[mechanics]")
{
    Frame frame;
    const double lx = 0.9, ly = 0.5, p = 500;
    const BeamSection x = rectangle(0.06, 0.02), y = rectangle(0.04, 0.016);
    const int c = frame.add_node({0, 0, 0});
    const int x0 = frame.add_node({-lx / 2, 0, 0}), x1 = frame.add_node({lx / 2, 0, 0});
    const int y0 = frame.add_node({0, -ly / 2, 0}), y1 = frame.add_node({0, ly / 2, 0});
    frame.add_beam(x0, c, {0, 1, 0}, x);
    frame.add_beam(c, x1, {0, 1, 0}, x);
    frame.add_beam(y0, c, {1, 0, 0}, y);
    frame.add_beam(c, y1, {1, 0, 0}, y);
    Vec6 lies;
    lies << 0, 0, 1e12, 0, 0, 0;
    for (const int n : {x0, x1, y0, y1}) frame.add_tie({frame.place(n), {{{n, 1.0}}}, {}, lies.asDiagonal()});
    Vec6 steady;
    steady << 1e3, 1e3, 0, 0, 0, 1e3;
    frame.add_tie({frame.place(c), {{{c, 1.0}}}, {}, steady.asDiagonal()});
    frame.factor();
    Eigen::VectorXd loads = nothing(frame);
    loads(6 * c + 2) = -p;
    const auto give = [](double l, const BeamSection& s) { return l * l * l / (48 * s.bending_z) + l / (4 * s.shear_z); };
    const double kx = 1 / give(lx, x), ky = 1 / give(ly, y);
    CHECK_THAT(-frame.solve(loads).movement(6 * c + 2), WithinRel(p / (kx + ky), 1e-6));
}

TEST_CASE("what nothing holds is found as a free motion", "[mechanics]")
{
    Frame frame;
    const BeamSection s = rectangle(0.03, 0.03);
    const int a = frame.add_node({0, 0, 0}), b = frame.add_node({0.5, 0, 0}), c = frame.add_node({0.9, 0, 0});
    frame.add_beam(a, b, {0, 1, 0}, s);
    frame.add_beam(b, c, {0, 1, 0}, s);
    const int d = frame.add_node({0.9, 0, 0}), e = frame.add_node({0.9, 0.3, 0});
    frame.add_beam(d, e, {1, 0, 0}, s);
    frame.add_tie(clamp(frame, a, 1e9));
    Vec6 hinge;
    hinge << 1e9, 1e9, 1e9, 1e6, 1e6, 0; // nothing keeps the last beam from swinging about z
    frame.add_tie({frame.place(c), {{{c, 1.0}}}, {{{d, 1.0}}}, hinge.asDiagonal()});
    frame.factor();
    const auto motion = frame.free_motion();
    REQUIRE(motion);
    CHECK_THAT(motion->movement.segment<3>(6 * e).norm(), WithinAbs(1, 1e-6));
    CHECK(motion->movement.segment<3>(6 * c).norm() < 1e-6);
}

TEST_CASE("plates pass the patch tests: stretching, bending and twisting come out even", "[mechanics]")
{
    // A rectangle of 2 × 2 unlike cells, its edge nodes moved as the even state asks; the middle node must follow by itself.
    const PlateSection section{0.02, 11e9, 0.8e9, 0.7e9, 0.7e9, 0.3e9, 0.35};
    const std::array<double, 3> xs{0, 0.13, 0.3}, ys{0, 0.07, 0.2};
    const auto state = GENERATE(0, 1, 2, 3);
    const auto wanted = [&](double x, double y) {
        Vec6 u = Vec6::Zero();
        const double e = 1e-3;
        if (state == 0) u << e * x + 0.3 * e * y, 0.2 * e * x - 0.5 * e * y, 0, 0, 0, (0.2 - 0.3) * e / 2; // membrane
        if (state == 1) u << 0, 0, -e * x * x / 2, 0, e * x, 0;                                            // bent along the grain
        if (state == 2) u << 0, 0, -e * y * y / 2, -e * y, 0, 0;                                           // bent across it
        if (state == 3) u << 0, 0, e * x * y, e * x, -e * y, 0;                                            // twisted
        return u;
    };
    Frame frame;
    std::array<std::array<int, 3>, 3> n{};
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) n[i][j] = frame.add_node({xs[i], ys[j], 0});
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = 0; j < 2; ++j)
            frame.add_plate({n[i][j], n[i + 1][j], n[i + 1][j + 1], n[i][j + 1]}, xs[i + 1] - xs[i], ys[j + 1] - ys[j],
                            Mat3::Identity(), section);
    constexpr double held = 1e14;
    Eigen::VectorXd loads = nothing(frame);
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) {
            if (i == 1 && j == 1) continue;
            frame.add_tie({frame.place(n[i][j]), {{{n[i][j], 1.0}}}, {}, Mat6::Identity() * held});
            loads.segment<6>(6 * n[i][j]) = held * wanted(xs[i], ys[j]);
        }
    frame.factor();
    const auto solved = frame.solve(loads);
    const Vec6 middle = solved.movement.segment<6>(6 * n[1][1]), expected = wanted(xs[1], ys[1]);
    for (int k = 0; k < 6; ++k) CHECK_THAT(middle(k), WithinAbs(expected(k), 1e-9));
    // The forces of the even state, everywhere alike.
    const PlateForces f = frame.plate(0).forces_at(0, 0, frame.plate_movement(0, solved.movement));
    const double t3 = std::pow(0.02, 3) / 12, d = 1 - 0.35 * 0.35 * 0.8 / 11;
    if (state == 1) CHECK_THAT(f.m_x, WithinRel(11e9 / d * t3 * 1e-3, 1e-6));
    if (state == 2) CHECK_THAT(f.m_y, WithinRel(0.8e9 / d * t3 * 1e-3, 1e-6));
    if (state == 3) CHECK_THAT(std::abs(f.m_xy), WithinRel(0.7e9 * t3 * 2e-3, 1e-6));
}

namespace {

/// A strip of plate along x on two lines of support, `cells` long and `wide` cells across.
struct Strip {
    Frame frame;
    std::vector<std::vector<int>> nodes;
    double length, width;
    Strip(double l, double w, int cells, int wide, const PlateSection& section, bool cantilever) : length(l), width(w)
    {
        for (int i = 0; i <= cells; ++i) {
            nodes.emplace_back();
            for (int j = 0; j <= wide; ++j) nodes.back().push_back(frame.add_node({l * i / cells, w * j / wide, 0}));
        }
        for (std::size_t i = 0; i < static_cast<std::size_t>(cells); ++i)
            for (std::size_t j = 0; j < static_cast<std::size_t>(wide); ++j)
                frame.add_plate({nodes[i][j], nodes[i + 1][j], nodes[i + 1][j + 1], nodes[i][j + 1]}, l / cells, w / wide,
                                Mat3::Identity(), section);
        Vec6 lies;
        lies << 1e9, 1e9, 1e12, 0, 0, 0;
        for (const int n : nodes.front())
            frame.add_tie(
                {frame.place(n), {{{n, 1.0}}}, {}, cantilever ? Mat6(Mat6::Identity() * 1e13) : Mat6(lies.asDiagonal())});
        if (!cantilever)
            for (const int n : nodes.back()) frame.add_tie({frame.place(n), {{{n, 1.0}}}, {}, lies.asDiagonal()});
        frame.factor();
    }
};

} // namespace

TEST_CASE("a strip of plate bends as the beam it is, with few cells", "[mechanics]")
{
    PlateSection section{0.018, 11e9, 0.6e9, 0.7e9, 0.8e9, 0.2e9, 0};
    const double l = 0.9, w = 0.28, q = 1200; // N in all
    Strip strip(l, w, 4, 3, section, false);
    Eigen::VectorXd loads = nothing(strip.frame);
    for (int e = 0; e < 12; ++e) {
        const Vec24 f = strip.frame.plate(e).spread({-1, -1}, {1, 1}, {0, 0, -q / 12});
        for (int k = 0; k < 4; ++k)
            loads.segment<6>(6 * strip.frame.plate_nodes(e)[static_cast<std::size_t>(k)]) += f.segment<6>(6 * k);
    }
    const auto solved = strip.frame.solve(loads);
    const double inertia = w * std::pow(0.018, 3) / 12, shear = 0.8e9 * w * 0.018 * 5 / 6;
    const double exact = 5 * q * l * l * l / (384 * 11e9 * inertia) + q * l / (8 * shear);
    // Exact but for what the free edges' contraction adds, of which there is none without Poisson's ratio.
    for (const int n : strip.nodes[2]) CHECK_THAT(-solved.movement(6 * n + 2), WithinRel(exact, 1e-6));
}

TEST_CASE("a plate standing on edge bends in its plane as a deep beam", "[mechanics]")
{
    PlateSection section{0.02, 11e9, 0.6e9, 0.7e9, 0.8e9, 0.2e9, 0};
    const double l = 1.0, w = 0.1, p = 900;
    Strip strip(l, w, 10, 2, section, true);
    Eigen::VectorXd loads = nothing(strip.frame);
    for (const int n : strip.nodes.back()) loads(6 * n + 1) += p / 3;
    const double inertia = 0.02 * w * w * w / 12, exact = p * l * l * l / (3 * 11e9 * inertia) + p * l * 1.2 / (0.7e9 * w * 0.02);
    CHECK_THAT(strip.frame.solve(loads).movement(6 * strip.nodes.back()[1] + 1),
               WithinRel(exact, 0.02)); // ten cells, end effects
}

namespace {

/// Sag at the middle and moment there of a square plate on four edges under an even load, both divided by what makes them pure numbers.
std::pair<double, double> square_plate(std::size_t n)
{
    const double e = 10e9, nu = 0.3, a = 1, t = 0.01, q = 1000, size = static_cast<double>(n);
    const double g = e / (2 * (1 + nu));
    const PlateSection section{t, e, e, g, g, g, nu};
    Frame frame;
    std::vector<std::vector<int>> at(n + 1, std::vector<int>(n + 1));
    for (std::size_t i = 0; i <= n; ++i)
        for (std::size_t j = 0; j <= n; ++j)
            at[i][j] = frame.add_node({a * static_cast<double>(i) / size, a * static_cast<double>(j) / size, 0});
    // An edge stays straight: nodes do not turn along it.
    Vec6 along_x, along_y;
    along_x << 1e9, 1e9, 1e12, 0, 1e9, 0;
    along_y << 1e9, 1e9, 1e12, 1e9, 0, 0;
    const auto hold = [&](int node, const Vec6& how) {
        frame.add_tie({frame.place(node), {{{node, 1.0}}}, {}, how.asDiagonal()});
    };
    for (std::size_t i = 0; i <= n; ++i)
        for (std::size_t j = 0; j <= n; ++j) {
            if (j == 0 || j == n) hold(at[i][j], along_x);
            if (i == 0 || i == n) hold(at[i][j], along_y);
        }
    std::vector<int> cells;
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j)
            cells.push_back(frame.add_plate({at[i][j], at[i + 1][j], at[i + 1][j + 1], at[i][j + 1]}, a / size, a / size,
                                            Mat3::Identity(), section));
    frame.factor();
    Eigen::VectorXd loads = nothing(frame);
    for (const int c : cells) {
        const Vec24 f = frame.plate(c).spread({-1, -1}, {1, 1}, {0, 0, -q / (size * size)});
        for (std::size_t k = 0; k < 4; ++k)
            loads.segment<6>(6 * frame.plate_nodes(c)[k]) += f.segment<6>(6 * static_cast<int>(k));
    }
    const auto solved = frame.solve(loads);
    const int middle = static_cast<int>(n / 2 * n + n / 2);
    const PlateForces f = frame.plate(middle).forces_at(-1, -1, frame.plate_movement(middle, solved.movement));
    return {-solved.movement(6 * at[n / 2][n / 2] + 2) * e * t * t * t / (12 * (1 - nu * nu)) / q, std::abs(f.m_x) / q};
}

} // namespace

TEST_CASE("a square plate on four edges comes to the series of Navier", "[mechanics]")
{
    // Thin plate, simply supported all round, even load: w = 0.00406 q a⁴/D and M = 0.0479 q a² at the middle (Timoshenko and
    // Woinowsky-Krieger, Theory of Plates and Shells, table 8, from memory). The error falls with the square of the cell.
    const auto [w8, m8] = square_plate(8);
    const auto [w16, m16] = square_plate(16);
    CHECK_THAT(w16 + (w16 - w8) / 3, WithinAbs(0.00406, 0.000005 + 0.00406 * 0.002)); // last digit, and 0.2 % for what is left
    CHECK_THAT(m16 + (m16 - m8) / 3, WithinAbs(0.0479, 0.00005 + 0.0479 * 0.01));
}

TEST_CASE("contacts that only press: rounds end where every state tried by hand ends", "[mechanics]")
{
    // A beam on five props of unlike stiffness, loaded up and down: the state found is the only consistent one of all 32.
    std::mt19937 random(7);
    std::uniform_real_distribution<double> force(-300, 300), stiffness(1e4, 1e6);
    for (int trial = 0; trial < 40; ++trial) {
        std::array<double, 5> k{}, f{};
        for (std::size_t i = 0; i < 5; ++i) {
            k[i] = stiffness(random);
            f[i] = force(random) - 120;
        }
        const auto build = [&](unsigned closed, bool pressing) {
            Frame frame;
            const BeamSection s = rectangle(0.02, 0.03);
            std::array<int, 5> n{};
            for (std::size_t i = 0; i < 5; ++i) n[i] = frame.add_node({0.3 * static_cast<double>(i), 0, 0});
            for (std::size_t i = 0; i < 4; ++i) frame.add_beam(n[i], n[i + 1], {0, 1, 0}, s);
            Vec6 steady;
            steady << 1e3, 1e3, 2e3, 1e3, 1e2, 1e3; // a soft spring so that it does not fly off
            frame.add_tie({frame.place(n[2]), {{{n[2], 1.0}}}, {}, steady.asDiagonal()});
            for (std::size_t i = 0; i < 5; ++i) {
                if (pressing)
                    frame.add_press({frame.place(n[i]), {{{n[i], 1.0}}}, {}, {0, 0, -1}, k[i]});
                else if (closed & (1u << i)) {
                    Vec6 prop = Vec6::Zero();
                    prop(2) = k[i];
                    frame.add_tie({frame.place(n[i]), {{{n[i], 1.0}}}, {}, prop.asDiagonal()});
                }
            }
            frame.factor();
            return frame;
        };
        Eigen::VectorXd loads = Eigen::VectorXd::Zero(30);
        for (int i = 0; i < 5; ++i) loads(6 * i + 2) = f[static_cast<std::size_t>(i)];
        const auto found = build(0, true).solve(loads);
        int consistent = 0;
        for (unsigned closed = 0; closed < 32; ++closed) {
            const auto tried = build(closed, false).solve(loads);
            bool fits = true;
            for (unsigned i = 0; i < 5; ++i)
                fits = fits && (tried.movement(6 * static_cast<int>(i) + 2) < 0) == ((closed >> i & 1u) != 0);
            if (!fits) continue;
            ++consistent;
            CHECK((tried.movement - found.movement).norm() < 1e-7 * tried.movement.norm() + 1e-12);
        }
        CHECK(consistent == 1);
        CHECK(found.rounds < 12);
    }
}

TEST_CASE("turning a frame with its loads turns what comes out, and loads answer each other alike", "[mechanics]")
{
    const Mat3 turn = (Eigen::AngleAxisd(0.7, Vec3(1, 2, 3).normalized())).toRotationMatrix();
    const auto solve = [&](const Mat3& r, int at, const Vec3& force) {
        Frame frame;
        const std::array<Vec3, 4> places{Vec3{0, 0, 0}, Vec3{0, 0, 0.4}, Vec3{0.7, 0.1, 0.45}, Vec3{0.7, 0.1, 0}};
        std::array<int, 4> n{};
        for (std::size_t i = 0; i < 4; ++i) n[i] = frame.add_node(r * places[i]);
        for (std::size_t i = 0; i < 3; ++i) frame.add_beam(n[i], n[i + 1], r * Vec3(0.2, 1, 0.1), rectangle(0.03, 0.05));
        frame.add_tie(clamp(frame, n[0], 1e10));
        frame.add_tie(clamp(frame, n[3], 1e10));
        frame.factor();
        Eigen::VectorXd loads = nothing(frame);
        loads.segment<3>(6 * n[static_cast<std::size_t>(at)]) = r * force;
        return frame.solve(loads).movement;
    };
    const Vec3 f(30, -80, 150), g(-60, 20, 90);
    const Eigen::VectorXd plain = solve(Mat3::Identity(), 1, f), turned = solve(turn, 1, f);
    for (int i = 0; i < 4; ++i) CHECK((turn * plain.segment<3>(6 * i) - turned.segment<3>(6 * i)).norm() < 1e-9 * plain.norm());
    // Betti: the work of the first load on the movement of the second is that of the second on the movement of the first.
    const Eigen::VectorXd other = solve(Mat3::Identity(), 2, g);
    CHECK_THAT(f.dot(other.segment<3>(6)), WithinRel(g.dot(plain.segment<3>(12)), 1e-9));
    // Superposition, all closed.
    const Eigen::VectorXd twice = solve(Mat3::Identity(), 1, 2 * f);
    CHECK((twice - 2 * plain).norm() < 1e-9 * twice.norm());
}
