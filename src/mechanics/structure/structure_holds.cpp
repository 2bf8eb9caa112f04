// Which joints of a piece are let turn or be drawn out, and which must hold after all, lest it fold or fall. SI doubles: metres, newtons.

#include "mechanics/structure/structure.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

using kernel::Vec3;

namespace {

constexpr double kMoves = 0.01;  // of the largest movement of a motion that nothing stops: less is no part of it
constexpr double kTurnArm = 0.1; // m: at this distance a turn counts as the movement it makes
constexpr int kMostHolds = 24;   // rounds in which joints are held after all

/// The axes about which a joint may turn, by the grains of its parts: which of them are held does not hang on how the piece is turned in the room.
std::vector<Vec3> axes_of_turning(const kernel::Mat3& turn, const MemberLine& a, const MemberLine& b)
{
    std::vector<Vec3> axes;
    kernel::Mat3 left = turn;
    for (const Vec3& grain : {a.grain, b.grain, a.width, a.face, b.width}) {
        const Vec3 axis = left * grain;
        if (axis.norm() < 0.5) continue;
        axes.push_back(axis.normalized());
        left -= axes.back() * axes.back().transpose();
    }
    return axes;
}

} // namespace

/// The springs of a contact as its joint is let or held.
void Structure::set_springs(std::size_t contact)
{
    const JointLet& let = lets_[contact];
    for (const Held& h : held_[contact]) {
        if (h.tie < 0) continue;
        kernel::Mat6 stiffness = kernel::Mat6::Zero();
        if (h.mean <= 0)
            stiffness = h.link.stiffness(let);
        else if (let.as_one)
            stiffness.topLeftCorner<3, 3>() = h.mean * h.direction * h.direction.transpose();
        frame_.set_tie_stiffness(h.tie, stiffness);
    }
}

/// Factors with every joint let, then holds what would fold or fall.
void Structure::settle_joints()
{
    frame_.factor();
    for (int round = 0; round < kMostHolds; ++round) {
        const auto motion = frame_.free_motion();
        if (!motion || !hold_what_moves(*motion)) return;
    }
}

bool Structure::hold_what_moves(const kernel::FreeMotion& motion)
{
    if (!hold_turning(motion, false) && !hold_turning(motion, true) && !hold_drawn(motion)) return false;
    frame_.factor();
    return true;
}

/// Holds joints about the axes about which they turn in a motion. With play: only those that bear first, and notes how far the piece leans till then.
bool Structure::hold_turning(const kernel::FreeMotion& motion, bool with_play)
{
    struct Turning {
        std::size_t contact;
        std::vector<Vec3> axes;
        double lean; ///< of the motion until it bears
    };
    std::vector<Turning> moving;
    for (std::size_t c = 0; c < held_.size(); ++c) {
        const double play = play_of(*piece_, layout_->contacts[c]);
        if ((play > 0) != with_play) continue;
        Vec3 most = Vec3::Zero();
        for (const Held& h : held_[c]) {
            if (h.tie < 0 || h.mean > 0) continue;
            const Vec3 turn = lets_[c].turn * frame_.tie_movement(h.tie, motion.movement).tail<3>();
            if (turn.norm() > most.norm()) most = turn;
        }
        if (kTurnArm * most.norm() <= kMoves) continue;
        Turning t{c, {}, play / most.norm()};
        for (const Vec3& axis :
             axes_of_turning(lets_[c].turn, lines_[layout_->contacts[c].first], lines_[layout_->contacts[c].second]))
            if (kTurnArm * std::abs(axis.dot(most)) > kMoves / 2) t.axes.push_back(axis);
        moving.push_back(std::move(t));
    }
    if (moving.empty()) return false;
    double lean = 0;
    if (with_play) {
        lean = std::min_element(moving.begin(), moving.end(), [](const Turning& a, const Turning& b) {
                   return a.lean < b.lean;
               })->lean;
        play_.push_back(lean * motion.movement);
    }
    for (const Turning& t : moving) {
        if (with_play && t.lean > lean * 1.01) continue;
        JointLet& let = lets_[t.contact];
        const bool row =
            std::any_of(held_[t.contact].begin(), held_[t.contact].end(), [](const Held& h) { return h.link.one_of_many; });
        for (const Vec3& axis : t.axes) let.turn -= axis * axis.transpose();
        if (row) let.turn.setZero();
        let.as_one = false;
        held_after_all_[t.contact] = true;
        set_springs(t.contact);
    }
    return true;
}

/// Holds, by friction, what would be drawn out of its recess in a motion.
bool Structure::hold_drawn(const kernel::FreeMotion& motion)
{
    bool any = false;
    for (std::size_t c = 0; c < held_.size(); ++c) {
        if (!lets_[c].out) continue;
        for (const Held& h : held_[c]) {
            if (h.tie < 0 || h.mean > 0 || h.link.out.norm() < 0.5) continue;
            const double drawn = frame_.tie_movement(h.tie, motion.movement).head<3>().dot(h.link.out);
            if (std::abs(drawn) < kMoves) continue;
            if (bearers_part(c, h.link, motion)) drawn_out_.push_back(c);
            lets_[c].out = false;
            held_after_all_[c] = any = true;
            set_springs(c);
            break;
        }
    }
    return any;
}

/// True when what the first part of a let-in sits in moves away from all else that bears the part: a panel that floats between its stiles is not drawn
/// out of either.
bool Structure::bearers_part(std::size_t contact, const JointLink& link, const kernel::FreeMotion& motion) const
{
    const std::size_t in = layout_->contacts[contact].first, bearer = layout_->contacts[contact].second;
    const auto along = [&](const LinkEnd& end) {
        kernel::FrameSolution solution;
        solution.movement = motion.movement;
        return movement(end.copy, end.along, end.across, solution).dot(link.out);
    };
    const double here = along(link.b);
    bool borne_elsewhere = false;
    for (std::size_t c = 0; c < held_.size(); ++c) {
        const Contact& other = layout_->contacts[c];
        if (c == contact || (other.first != in && other.second != in) || held_[c].empty()) continue;
        const LinkEnd& end = other.first == in ? held_[c].front().link.b : held_[c].front().link.a;
        if (end.copy == bearer || end.copy == in) continue;
        borne_elsewhere = true;
        if (std::abs(along(end) - here) < kMoves) return false;
    }
    return borne_elsewhere || std::abs(along(link.a) - here) > kMoves;
}

Structure Structure::with_stiffness(double times) const
{
    Structure other = *this;
    for (std::size_t c = 0; c < other.held_.size(); ++c) {
        other.lets_[c].stiffness = times;
        other.set_springs(c);
    }
    other.frame_.factor();
    return other;
}

void Structure::find_loose()
{
    const auto motion = frame_.free_motion();
    if (!motion) return;
    std::vector<std::pair<double, std::size_t>> moves;
    for (std::size_t i = 0; i < members_.size(); ++i) {
        const StructureMember& m = members_[i];
        if (!m.built) continue;
        double most = 0;
        const std::size_t nodes = m.along.size() * std::max<std::size_t>(1, m.across.size());
        for (std::size_t k = 0; k < nodes; ++k) most = std::max(most, motion->at(m.first_node + static_cast<int>(k)));
        if (most > 0.3) moves.emplace_back(-most, i);
    }
    std::sort(moves.begin(), moves.end());
    for (const auto& [much, copy] : moves) loose_.push_back(copy);
}

} // namespace jointwright
