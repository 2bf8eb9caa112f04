// SI doubles: metres, newtons. Springs that give way under a load: contacts that can only press, and feet that slide.
//
// The energy of a frame whose contacts push back only while they are pressed is convex and made of pieces of parabolas. Its lowest point is
// looked for by Newton steps from the frame with all contacts closed: with z the forces that parted contacts no longer give,
//     u = u0 + K⁻¹ Gᵀ z,   g = G u,   z = k max(g, 0),
// so that one factored stiffness serves every state of the contacts. Along each step the energy is searched exactly; each round lowers it, and
// there are finitely many states, so that the rounds end.
// A foot that slides pushes back with a force that hangs on what presses on it: it is a spring as much softer as that force is less than it would
// hold, brought up to date whenever the contacts have settled, until it stays. So whether a foot slides a little or just holds comes to the same.

#include "mechanics/frame/frame.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace jointwright::kernel {

namespace {

constexpr int kMostRounds = 200;
constexpr double kGape = 1e-13;      // m: less is rounding
constexpr double kFliesOff = 0.5;    // m: no piece bends so far and is still one
constexpr double kSlick = 100;       // N/m: a sliding foot is still held so much, lest a piece on sliding feet drift for rounding
constexpr int kMostSlides = 150;     // rounds in which the force of sliding feet is brought up to date
constexpr double kForceStays = 1e-4; // of the force of a sliding foot: a change that no longer counts

} // namespace

const Eigen::VectorXd& Frame::response_of(int spring) const
{
    Eigen::VectorXd& kept = responses_[static_cast<std::size_t>(spring)];
    if (kept.size() == 0) kept = factor_->solve(Eigen::VectorXd(gaps_.row(spring).transpose()));
    return kept;
}

/// The springs of one frame under one set of loads, until they have found their rest.
class Yielding {
public:
    Yielding(const Frame& frame, FrameSolution& solution, const FloorState& floor)
        : frame_(frame), solution_(solution), floor_(floor), n_(frame.yielding()), m_(frame.presses()),
          closed_(frame.gaps_ * solution.movement), gaps_(closed_), z_(Eigen::VectorXd::Zero(n_)),
          columns_(static_cast<std::size_t>(n_)), left_(static_cast<std::size_t>(frame.grips())),
          both_ways_(static_cast<std::size_t>(m_), false)
    {
        for (int g = 0; g < frame.grips(); ++g) left_[static_cast<std::size_t>(g)] = frame.grip(g).stiffness;
        for (const int g : floor.free) {
            left_[static_cast<std::size_t>(g)] = kSlick;
            if (const int p = frame.grip(g).press; p >= 0) both_ways_[static_cast<std::size_t>(p)] = true;
        }
        if (floor.holds_down)
            for (int g = 0; g < frame.grips(); ++g)
                if (const int p = frame.grip(g).press; p >= 0) both_ways_[static_cast<std::size_t>(p)] = true;
    }

    void run()
    {
        settle();
        for (int round = 0; floor_.slides && round < kMostSlides && solution_.settled && let_slide(); ++round) settle();
        for (int i = 0; i < n_; ++i)
            if (z_(i) != 0) solution_.movement += z_(i) * frame_.response_of(i);
        for (int i = 0; i < m_; ++i)
            if (gives(i)) solution_.open.push_back(i);
        for (int g = 0; g < frame_.grips(); ++g)
            if (slides(g)) solution_.slid.push_back(g);
    }

private:
    /// Of G K⁻¹ Gᵀ.
    const Eigen::VectorXd& column(int i)
    {
        Eigen::VectorXd& c = columns_[static_cast<std::size_t>(i)];
        if (c.size() == 0) c = frame_.gaps_ * frame_.response_of(i);
        return c;
    }

    /// What a spring no longer gives grows by this with its gap.
    double lost(int i) const
    {
        return frame_.yielding_stiffness(i) - (i < m_ ? 0 : left_[static_cast<std::size_t>((i - m_) / 2)]);
    }

    bool slides(int g) const { return left_[static_cast<std::size_t>(g)] < frame_.grip(g).stiffness; }

    bool gives(int i) const
    {
        if (i >= m_) return slides((i - m_) / 2);
        return !both_ways_[static_cast<std::size_t>(i)] && gaps_(i) > kGape;
    }

    /// The force that takes away what a spring no longer gives, at a gap.
    double law(int i, double gap) const
    {
        if (i >= m_) return lost(i) * gap;
        return both_ways_[static_cast<std::size_t>(i)] ? 0 : lost(i) * std::max(0.0, gap);
    }

    /// Newton: the forces that the springs of a set would need to give what they do.
    Eigen::VectorXd forces_of(const std::vector<int>& set)
    {
        const int n = static_cast<int>(set.size());
        Eigen::VectorXd next = Eigen::VectorXd::Zero(n_);
        if (n == 0) return next;
        Eigen::MatrixXd a(n, n);
        Eigen::VectorXd right(n);
        for (int c = 0; c < n; ++c) {
            const int i = set[static_cast<std::size_t>(c)];
            const Eigen::VectorXd& whole = column(i);
            for (int r = 0; r < n; ++r) a(r, c) = -whole(set[static_cast<std::size_t>(r)]);
            a(c, c) += 1 / lost(i);
            right(c) = closed_(i);
        }
        const Eigen::VectorXd forces = a.ldlt().solve(right);
        for (int c = 0; c < n; ++c) next(set[static_cast<std::size_t>(c)]) = forces(c);
        return next;
    }

    void settle()
    {
        std::vector<int> open, before;
        bool whole_step = false; // only then do the forces fit the contacts they were worked out for
        int rounds = 0;
        for (; rounds < kMostRounds; ++rounds) {
            open.clear();
            for (int i = 0; i < n_; ++i)
                if (gives(i)) open.push_back(i);
            if (whole_step && open == before) break;
            before = open;
            const Eigen::VectorXd step = forces_of(open) - z_;
            Eigen::VectorXd gap_step = Eigen::VectorXd::Zero(n_);
            for (int i = 0; i < n_; ++i)
                if (step(i) != 0) gap_step += step(i) * column(i);
            const double t = lowest_along(step, gap_step);
            whole_step = t == 1;
            z_ += t * step;
            gaps_ += t * gap_step;
        }
        solution_.rounds += rounds;
        if (rounds == kMostRounds) solution_.settled = false;
    }

    /// Where the energy is lowest along a step: it is convex, so that its slope grows.
    double lowest_along(const Eigen::VectorXd& step, const Eigen::VectorXd& gap_step) const
    {
        const auto slope = [&](double t) {
            double s = 0;
            for (int i = 0; i < n_; ++i) s += (z_(i) + t * step(i) - law(i, gaps_(i) + t * gap_step(i))) * gap_step(i);
            return s;
        };
        const double first = slope(0), last = slope(1);
        if (!(last > 0 && first < 0) || last < 1e-9 * std::abs(first)) return 1;
        double low = 0, high = 1, t = 1;
        for (int k = 0; k < 60; ++k) {
            t = (low + high) / 2;
            (slope(t) > 0 ? high : low) = t;
        }
        return t;
    }

    /// Brings what sliding feet push back with up to date: what the floor holds, over how far they have gone; false when nothing changed.
    bool let_slide()
    {
        bool changed = false;
        for (int g = 0; g < frame_.grips(); ++g) {
            if (std::find(floor_.free.begin(), floor_.free.end(), g) != floor_.free.end()) continue;
            const Grip& grip = frame_.grip(g);
            const double press = grip.press < 0 ? 0 : frame_.yielding_stiffness(grip.press) * std::max(0.0, -gaps_(grip.press));
            const double most = floor_.share * press, way = gaps_.segment<2>(m_ + 2 * g).norm();
            double& left = left_[static_cast<std::size_t>(g)];
            const double next = way * grip.stiffness <= most ? grip.stiffness : std::clamp(most / way, kSlick, grip.stiffness);
            if (std::abs(next - left) * way > kForceStays * std::max(1.0, most)) changed = true;
            left = next;
        }
        return changed;
    }

    const Frame& frame_;
    FrameSolution& solution_;
    const FloorState& floor_;
    int n_, m_;
    Eigen::VectorXd closed_, gaps_, z_;
    std::vector<Eigen::VectorXd> columns_;
    std::vector<double> left_; ///< stiffness that a grip has still, sliding [N/m]
    std::vector<bool> both_ways_;
};

FrameSolution Frame::solve(const Eigen::VectorXd& loads, const FloorState& floor) const
{
    return std::move(solve_all(loads, {floor}).front());
}

std::vector<FrameSolution> Frame::solve_all(const Eigen::MatrixXd& loads, const std::vector<FloorState>& floors) const
{
    const Eigen::MatrixXd movements = factor_->solve(loads);
    std::vector<FrameSolution> solutions(static_cast<std::size_t>(loads.cols()));
    const FloorState firm;
    for (int c = 0; c < loads.cols(); ++c) {
        FrameSolution& s = solutions[static_cast<std::size_t>(c)];
        s.movement = movements.col(c);
        if (yielding() > 0) Yielding(*this, s, floors.empty() ? firm : floors[static_cast<std::size_t>(c)]).run();
        // With every contact closed a frame may bend as far as it likes: that is for its strength to judge.
        for (int i = 0; i < unknowns() && s.settled && !(s.open.empty() && s.slid.empty()); i += 6)
            if (!(s.movement.segment<3>(i).norm() < kFliesOff)) s.settled = false;
    }
    return solutions;
}

} // namespace jointwright::kernel
