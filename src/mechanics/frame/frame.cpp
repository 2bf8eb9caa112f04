// SI doubles: metres, newtons. Assembly and factoring of a frame; what opens under a load is in frame_contacts.cpp.

#include "mechanics/frame/frame.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright::kernel {

namespace {

// A hold so light that no load of use is felt by it, and yet above the rounding of the stiffest spring.
constexpr double kLightHold = 3e-8, kLightTurnHold = 3e-10; // N/m, N m/rad
constexpr double kSoftest = 1e-2;                           // N/m: a motion softer than this is free
constexpr double kTurnRadius = 0.1;                         // m: a turn counts as the movement it makes at this distance

using Entries = std::vector<Eigen::Triplet<double>>;

/// How a point fixed to a node moves with it.
Mat6 carried(const Vec3& arm)
{
    Mat6 t = Mat6::Identity();
    t.topRightCorner<3, 3>() = -cross_matrix(arm);
    return t;
}

/// Of a symmetric matrix the lower half is all that is factored.
void add_entry(Entries& entries, int row, int column, double value)
{
    if (value != 0 && row >= column) entries.emplace_back(row, column, value);
}

template <class Block>
void add_block(Entries& entries, int row_node, int column_node, const Block& block)
{
    if (row_node < column_node) return;
    for (int c = 0; c < 6; ++c)
        for (int r = 0; r < 6; ++r) add_entry(entries, 6 * row_node + r, 6 * column_node + c, block(r, c));
}

template <std::size_t N, class Matrix>
void add_element(Entries& entries, const std::array<int, N>& nodes, const Matrix& stiffness)
{
    for (std::size_t i = 0; i < N; ++i)
        for (std::size_t j = 0; j < N; ++j)
            add_block(entries, nodes[i], nodes[j],
                      stiffness.template block<6, 6>(6 * static_cast<int>(i), 6 * static_cast<int>(j)));
}

FreeMotion scaled(Eigen::VectorXd v)
{
    double largest = 0;
    for (Eigen::Index i = 0; i < v.size(); i += 6)
        largest = std::max({largest, v.segment<3>(i).norm(), kTurnRadius * v.segment<3>(i + 3).norm()});
    v /= std::max(largest, 1e-300);
    return {std::move(v)};
}

} // namespace

int Frame::add_node(const Vec3& at)
{
    places_.push_back(at);
    return nodes() - 1;
}

int Frame::add_beam(int from, int to, const Vec3& y, const BeamSection& section)
{
    beams_.push_back({{from, to}, BeamElement(place(from), place(to), y, section)});
    return static_cast<int>(beams_.size()) - 1;
}

int Frame::add_plate(const std::array<int, 4>& nodes, double length_x, double length_y, const Mat3& axes,
                     const PlateSection& section)
{
    plates_.push_back({nodes, PlateElement(length_x, length_y, axes, section)});
    return static_cast<int>(plates_.size()) - 1;
}

int Frame::add_tie(Tie tie)
{
    ties_.push_back(std::move(tie));
    return static_cast<int>(ties_.size()) - 1;
}

int Frame::add_press(Press press)
{
    presses_.push_back(std::move(press));
    return presses() - 1;
}

int Frame::add_grip(Grip grip)
{
    grips_.push_back(std::move(grip));
    return grips() - 1;
}

double Frame::yielding_stiffness(int i) const
{
    if (i < presses()) return presses_[static_cast<std::size_t>(i)].stiffness;
    return grips_[static_cast<std::size_t>((i - presses()) / 2)].stiffness;
}

void Frame::factor()
{
    const int n = unknowns();
    Entries entries;
    entries.reserve(beams_.size() * 60 + plates_.size() * 300 + ties_.size() * 60 + static_cast<std::size_t>(n));
    for (const Beam& b : beams_) add_element(entries, b.nodes, b.element.stiffness());
    for (const Plate& p : plates_) add_element(entries, p.nodes, p.element.stiffness());
    for (const Tie& tie : ties_) {
        std::vector<std::pair<int, Mat6>> rows; // movement of a against b
        for (const auto& [anchor, sign] : {std::pair{&tie.a, 1.0}, std::pair{&tie.b, -1.0}}) {
            const Mat6 moved = carried(tie.at - middle_of(*anchor));
            for (const Anchor::Share& s : anchor->shares) rows.emplace_back(s.node, sign * s.weight * moved);
        }
        for (const auto& [i, ti] : rows)
            for (const auto& [j, tj] : rows)
                if (i >= j) add_block(entries, i, j, Mat6(ti.transpose() * tie.stiffness * tj));
    }
    for (int i = 0; i < n; ++i) entries.emplace_back(i, i, i % 6 < 3 ? kLightHold : kLightTurnHold);

    Entries rows;
    for (int p = 0; p < presses(); ++p) {
        const Press& press = presses_[static_cast<std::size_t>(p)];
        for (const auto& [anchor, sign] : {std::pair{&press.b, 1.0}, std::pair{&press.a, -1.0}}) {
            Vec6 row;
            row << press.direction, (press.at - middle_of(*anchor)).cross(press.direction);
            for (const Anchor::Share& s : anchor->shares)
                for (int k = 0; k < 6; ++k)
                    if (row(k) != 0) rows.emplace_back(p, 6 * s.node + k, sign * s.weight * row(k));
        }
    }
    for (int g = 0; g < grips(); ++g) {
        const Grip& grip = grips_[static_cast<std::size_t>(g)];
        for (int d = 0; d < 2; ++d) {
            const Vec3& way = grip.directions[static_cast<std::size_t>(d)];
            Vec6 row;
            row << way, (grip.at - middle_of(grip.a)).cross(way);
            for (const Anchor::Share& s : grip.a.shares)
                for (int k = 0; k < 6; ++k)
                    if (row(k) != 0) rows.emplace_back(presses() + 2 * g + d, 6 * s.node + k, s.weight * row(k));
        }
    }
    gaps_.resize(yielding(), n);
    gaps_.setFromTriplets(rows.begin(), rows.end());
    using Row = Eigen::SparseMatrix<double, Eigen::RowMajor>::InnerIterator;
    for (int p = 0; p < yielding(); ++p)
        for (Row r(gaps_, p); r; ++r)
            for (Row c(gaps_, p); c; ++c)
                add_entry(entries, static_cast<int>(r.col()), static_cast<int>(c.col()),
                          yielding_stiffness(p) * r.value() * c.value());
    Sparse stiffness(n, n);
    stiffness.setFromTriplets(entries.begin(), entries.end());
    factor_ = std::make_shared<Eigen::SimplicialLDLT<Sparse>>(stiffness);
    responses_.assign(static_cast<std::size_t>(yielding()), {});
}

std::optional<FreeMotion> Frame::free_motion() const
{
    const int n = unknowns();
    if (n == 0) return std::nullopt;
    Eigen::VectorXd mass(n), v(n);
    for (int i = 0; i < n; ++i) {
        mass(i) = i % 6 < 3 ? 1 : kTurnRadius * kTurnRadius;
        v(i) = std::sin(1.0 + 0.7 * i * i + 3.1 * i); // no pattern that a symmetric frame could be blind to
    }
    double softness = 0;
    for (int round = 0; round < 4; ++round) {
        v /= std::sqrt(v.dot(mass.cwiseProduct(v)));
        const Eigen::VectorXd force = mass.cwiseProduct(v);
        v = factor_->solve(force);
        softness = std::sqrt(v.dot(mass.cwiseProduct(v)));
    }
    if (softness < 1 / kSoftest) return std::nullopt;
    return scaled(std::move(v));
}

FreeMotion free_motion_of(const FrameSolution& solution) { return scaled(solution.movement); }

double FreeMotion::at(int node) const
{
    return std::max(movement.segment<3>(6 * node).norm(), kTurnRadius * movement.segment<3>(6 * node + 3).norm());
}

Vec3 Frame::middle_of(const Anchor& anchor) const
{
    Vec3 middle = Vec3::Zero();
    for (const Anchor::Share& s : anchor.shares) middle += s.weight * place(s.node);
    return middle;
}

Vec6 Frame::movement_at(const Anchor& anchor, const Vec3& at, const Eigen::VectorXd& movement) const
{
    Vec6 sum = Vec6::Zero();
    for (const Anchor::Share& s : anchor.shares) sum += s.weight * movement.segment<6>(6 * s.node);
    sum.head<3>() += sum.tail<3>().cross(at - middle_of(anchor));
    return sum;
}

Vec3 Frame::grip_force(int grip, const Eigen::VectorXd& movement) const
{
    const Grip& g = grips_[static_cast<std::size_t>(grip)];
    Vec3 force = Vec3::Zero();
    for (int d = 0; d < 2; ++d)
        force += g.stiffness * gaps_.row(presses() + 2 * grip + d).dot(movement) * g.directions[static_cast<std::size_t>(d)];
    return force;
}

Vec6 Frame::tie_movement(int tie, const Eigen::VectorXd& movement) const
{
    const Tie& t = ties_[static_cast<std::size_t>(tie)];
    return movement_at(t.a, t.at, movement) - movement_at(t.b, t.at, movement);
}

Vec6 Frame::tie_force(int tie, const Eigen::VectorXd& movement) const
{
    return ties_[static_cast<std::size_t>(tie)].stiffness * tie_movement(tie, movement);
}

double Frame::gap(int press, const Eigen::VectorXd& movement) const { return gaps_.row(press).dot(movement); }

Vec6 Frame::press_force(int press, const Eigen::VectorXd& movement) const
{
    const Press& p = presses_[static_cast<std::size_t>(press)];
    Vec6 force = Vec6::Zero();
    force.head<3>() = p.stiffness * std::max(0.0, -gap(press, movement)) * p.direction;
    return force;
}

Vec12 Frame::beam_movement(int beam, const Eigen::VectorXd& movement) const
{
    const auto& nodes = beam_nodes(beam);
    Vec12 u;
    u << movement.segment<6>(6 * nodes[0]), movement.segment<6>(6 * nodes[1]);
    return u;
}

Vec24 Frame::plate_movement(int plate, const Eigen::VectorXd& movement) const
{
    Vec24 u;
    for (int k = 0; k < 4; ++k) u.segment<6>(6 * k) = movement.segment<6>(6 * plate_nodes(plate)[static_cast<std::size_t>(k)]);
    return u;
}

} // namespace jointwright::kernel
