// SI doubles: metres, newtons. Contacts that can only press: which of them part under a load.
//
// The energy of a frame whose contacts push back only while they are pressed is convex and made of pieces of parabolas. Its lowest point is
// looked for by Newton steps from the frame with all contacts closed: with z the forces that parted contacts no longer give,
//     u = u0 + K⁻¹ Gᵀ z,   g = G u,   z = k max(g, 0),
// so that one factored stiffness serves every state of the contacts. Along each step the energy is searched exactly; each round lowers it, and
// there are finitely many states, so that the rounds end.

#include "mechanics/frame_kernel.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace jointwright::kernel {

namespace {

constexpr int kMostRounds = 200;
constexpr double kGape = 1e-13;   // m: less is rounding
constexpr double kFliesOff = 0.5; // m: no piece bends so far and is still one

} // namespace

const Eigen::VectorXd& Frame::response_of(int press) const
{
    Eigen::VectorXd& kept = responses_[static_cast<std::size_t>(press)];
    if (kept.size() == 0) kept = factor_->solve(Eigen::VectorXd(gaps_.row(press).transpose()));
    return kept;
}

void Frame::open_what_pulls(FrameSolution& solution) const
{
    const int m = presses();
    const Eigen::VectorXd closed_gaps = gaps_ * solution.movement;
    Eigen::VectorXd z = Eigen::VectorXd::Zero(m), gaps = closed_gaps;
    std::vector<Eigen::VectorXd> columns(static_cast<std::size_t>(m)); // of G K⁻¹ Gᵀ
    const auto column = [&](int i) -> const Eigen::VectorXd& {
        Eigen::VectorXd& c = columns[static_cast<std::size_t>(i)];
        if (c.size() == 0) c = gaps_ * response_of(i);
        return c;
    };
    const auto spring = [this](int i) { return presses_[static_cast<std::size_t>(i)].stiffness; };

    std::vector<int> open, before;
    bool whole_step = false; // only then do the forces fit the contacts they were worked out for
    for (solution.rounds = 0; solution.rounds < kMostRounds; ++solution.rounds) {
        open.clear();
        for (int i = 0; i < m; ++i)
            if (gaps(i) > kGape) open.push_back(i);
        if (whole_step && open == before) break;
        before = open;
        // Newton: the forces that the open contacts would need to give none.
        const int n = static_cast<int>(open.size());
        Eigen::VectorXd next = Eigen::VectorXd::Zero(m);
        if (n > 0) {
            Eigen::MatrixXd a(n, n);
            Eigen::VectorXd right(n);
            for (int c = 0; c < n; ++c) {
                const Eigen::VectorXd& whole = column(open[static_cast<std::size_t>(c)]);
                for (int r = 0; r < n; ++r) a(r, c) = -whole(open[static_cast<std::size_t>(r)]);
                a(c, c) += 1 / spring(open[static_cast<std::size_t>(c)]);
                right(c) = closed_gaps(open[static_cast<std::size_t>(c)]);
            }
            const Eigen::VectorXd forces = a.ldlt().solve(right);
            for (int c = 0; c < n; ++c) next(open[static_cast<std::size_t>(c)]) = forces(c);
        }
        const Eigen::VectorXd step = next - z;
        Eigen::VectorXd gap_step = Eigen::VectorXd::Zero(m);
        for (int i = 0; i < m; ++i)
            if (step(i) != 0) gap_step += step(i) * column(i);
        // Slope of the energy along the step; it grows along it, since the energy is convex.
        const auto slope = [&](double t) {
            double s = 0;
            for (int i = 0; i < m; ++i)
                s += (z(i) + t * step(i) - spring(i) * std::max(0.0, gaps(i) + t * gap_step(i))) * gap_step(i);
            return s;
        };
        double t = 1;
        if (slope(1) > 0 && slope(0) < 0) {
            double low = 0, high = 1;
            for (int k = 0; k < 60; ++k) {
                t = (low + high) / 2;
                (slope(t) > 0 ? high : low) = t;
            }
            if (slope(1) < 1e-9 * std::abs(slope(0))) t = 1;
        }
        whole_step = t == 1;
        z += t * step;
        gaps += t * gap_step;
    }
    for (int i = 0; i < m; ++i)
        if (z(i) != 0) solution.movement += z(i) * response_of(i);
    solution.open = std::move(open);
    if (solution.rounds == kMostRounds) solution.settled = false;
}

FrameSolution Frame::solve(const Eigen::VectorXd& loads) const { return std::move(solve_all(loads).front()); }

std::vector<FrameSolution> Frame::solve_all(const Eigen::MatrixXd& loads) const
{
    const Eigen::MatrixXd movements = factor_->solve(loads);
    std::vector<FrameSolution> solutions(static_cast<std::size_t>(loads.cols()));
    for (int c = 0; c < loads.cols(); ++c) {
        FrameSolution& s = solutions[static_cast<std::size_t>(c)];
        s.movement = movements.col(c);
        if (presses() > 0 && (gaps_ * s.movement).maxCoeff() > kGape) open_what_pulls(s);
        // With every contact closed a frame may bend as far as it likes: that is for its strength to judge.
        for (int i = 0; i < unknowns() && s.settled && !s.open.empty(); i += 6)
            if (!(s.movement.segment<3>(i).norm() < kFliesOff)) s.settled = false;
    }
    return solutions;
}

} // namespace jointwright::kernel
