// Meets what is let into one copy with each other.

#include "piece/let_ins/let_ins.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <set>

namespace jointwright {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Vec;

constexpr double kAlongside = 0.9;  // cosine from which two go in along one line
constexpr double kLeastKept = 0.01; // of a joint whose length is all shared, so that sums with it stay finite
constexpr double kSquare = 0.5;     // cosine up to which two cross, so that their ends can be mitred

bool is_recess(LetIn::Kind kind)
{
    return kind == LetIn::Kind::housing || kind == LetIn::Kind::groove || kind == LetIn::Kind::bridle;
}

std::vector<Cell> bodies_of(const LetIn& in) { return in.bore() ? std::vector<Cell>{body_of_bore(in)} : in.bodies; }

/// Smallest and largest places of corners along a direction.
struct Extent {
    double lo = 1e30, hi = -1e30;
    Extent(const std::vector<Cell>& cells, const Vec& direction)
    {
        for (const Cell& cell : cells)
            for (const kernel::Polygon& face : cell.faces)
                for (const Vec& p : face.corners) {
                    lo = std::min(lo, direction.dot(p));
                    hi = std::max(hi, direction.dot(p));
                }
    }
    double size() const { return hi - lo; }
};

double volume_of(const std::vector<Cell>& cells)
{
    double sum = 0;
    for (const Cell& cell : cells) sum += kernel::volume(cell);
    return sum;
}

std::vector<Cell> clipped(const std::vector<Cell>& cells, const HalfSpace& keep)
{
    std::vector<Cell> left;
    for (const Cell& cell : cells)
        if (Cell piece = kernel::clip(cell, keep); !piece.empty()) left.push_back(std::move(piece));
    return left;
}

/// What two bodies both fill, but for slivers of rounding.
std::vector<Cell> shared_by(const std::vector<Cell>& a, const std::vector<Cell>& b)
{
    std::vector<Cell> shared;
    for (const Cell& one : a)
        for (const Cell& other : b) {
            Cell both = kernel::clip(one, other.sides);
            if (both.empty()) continue;
            Vec lo, hi;
            kernel::bounds(both, lo, hi);
            if (((hi - lo).array() > kTouch).all()) shared.push_back(std::move(both));
        }
    return shared;
}

bool near(const LetIn& a, const LetIn& b)
{
    return ((a.hi - b.lo).array() > kTouch).all() && ((b.hi - a.lo).array() > kTouch).all();
}

class Meeter {
public:
    Meeter(const Piece& piece, const std::vector<Contact>& contacts, LetIns& found)
        : piece_(piece), contacts_(contacts), found_(found), lost_(found.all.size(), 0.0)
    {
        for (const Contact& contact : contacts)
            if (contact.joint && piece.joints[*contact.joint].kind == JointKind::groove)
                grooved_.insert({contact.first, contact.second});
    }

    void meet_all()
    {
        std::vector<std::vector<std::size_t>> by_copy(piece_.copies.size());
        for (std::size_t i = 0; i < found_.all.size(); ++i) by_copy[found_.all[i].into].push_back(i);
        for (auto& list : by_copy) meet_in_copy(list);
        add_up_what_is_kept();
    }

private:
    /// A sweep along the grain: a rail may be bored hundreds of times.
    void meet_in_copy(std::vector<std::size_t>& list)
    {
        if (list.size() < 2) return;
        const int g = static_cast<int>(index_of(piece_.part_of(found_.all[list.front()].into).grain));
        std::stable_sort(list.begin(), list.end(),
                         [&](std::size_t a, std::size_t b) { return found_.all[a].lo[g] < found_.all[b].lo[g]; });
        std::vector<std::size_t> open;
        for (const std::size_t now : list) {
            std::erase_if(open, [&](std::size_t other) { return found_.all[other].hi[g] < found_.all[now].lo[g]; });
            for (const std::size_t other : open)
                if (near(found_.all[other], found_.all[now]) && must_clear(found_.all[other], found_.all[now]))
                    meet(std::min(other, now), std::max(other, now));
            open.push_back(now);
        }
    }

    bool must_clear(const LetIn& a, const LetIn& b) const
    {
        if (a.contact == b.contact) return false; // bore_rows tells of those
        if (is_recess(a.kind) && is_recess(b.kind)) return false;
        const auto screw = [](const LetIn& in) { return in.kind == LetIn::Kind::screw; };
        if ((screw(a) && !b.metal()) || (screw(b) && !a.metal())) return false;
        return !fills_groove(a, b) && !fills_groove(b, a);
    }

    /// The haunch of a rail fills the end of the groove in which its panel sits.
    bool fills_groove(const LetIn& tenon, const LetIn& groove) const
    {
        return groove.kind == LetIn::Kind::groove && tenon.kind == LetIn::Kind::tenon &&
               grooved_.count({groove.other, tenon.other}) > 0;
    }

    void meet(std::size_t i, std::size_t j)
    {
        LetIn &a = found_.all[i], &b = found_.all[j];
        const std::vector<Cell> bodies_a = bodies_of(a), bodies_b = bodies_of(b);
        const std::vector<Cell> shared = shared_by(bodies_a, bodies_b);
        if (shared.empty()) return;
        const double turn = std::abs(a.along.dot(b.along));
        const Extent on_a(shared, a.along), on_b(shared, b.along);
        Meeting m;
        m.first = i;
        m.second = j;
        m.clear_first = std::clamp(on_a.lo - a.from, 0.0, a.length());
        m.clear_second = std::clamp(on_b.lo - b.from, 0.0, b.length());
        const Vec aside = turn > kAlongside ? a.wide() : Vec(a.along.cross(b.along).normalized());
        const Extent side_a(bodies_a, aside), side_b(bodies_b, aside);
        m.sideways = std::min(side_a.hi - side_b.lo, side_b.hi - side_a.lo);
        const bool alike = a.along.dot(b.along) > kAlongside;
        m.depth = alike ? m.sideways : turn > kAlongside ? on_a.size() : std::min(on_a.size(), on_b.size());
        if (a.kind == LetIn::Kind::tenon && b.kind == LetIn::Kind::tenon && turn < kSquare) mitre(m, on_a.lo, on_b.lo);
        if (!m.mitred) {
            lost_[i] += share_lost(a, shared, m.clear_first);
            lost_[j] += share_lost(b, shared, m.clear_second);
        }
        found_.meetings.push_back(m);
    }

    /// The plane at 45° through the edge where their inner cheeks cross; each keeps what lies before it.
    void mitre(Meeting& m, double reach_a, double reach_b)
    {
        LetIn &a = found_.all[m.first], &b = found_.all[m.second];
        Vec n = a.along - b.along;
        const double scale = n.norm();
        n /= scale;
        const HalfSpace before{n, (reach_a - reach_b) / scale};
        std::vector<Cell> left_a = clipped(a.bodies, before), left_b = clipped(b.bodies, before.opposite());
        const double whole_a = volume_of(a.bodies), whole_b = volume_of(b.bodies);
        m.mitre_first = a.length() * volume_of(left_a) / whole_a;
        m.mitre_second = b.length() * volume_of(left_b) / whole_b;
        m.mitred = a.mitred && b.mitred;
        if (!m.mitred) return;
        lost_[m.first] += 1 - m.mitre_first / a.length();
        lost_[m.second] += 1 - m.mitre_second / b.length();
        a.bodies = std::move(left_a);
        b.bodies = std::move(left_b);
    }

    /// What is shared and what lies beyond it hold nothing, over the width that is met.
    static double share_lost(const LetIn& in, const std::vector<Cell>& shared, double clear)
    {
        const double band = in.bore() ? 1 : std::min(1.0, Extent(shared, in.wide()).size() / in.width);
        return (1 - clear / in.length()) * band;
    }

    void add_up_what_is_kept()
    {
        found_.kept.assign(contacts_.size(), 1.0);
        std::vector<double> dowels(contacts_.size(), 0.0), dowels_lost(contacts_.size(), 0.0);
        for (std::size_t i = 0; i < found_.all.size(); ++i) {
            const LetIn& in = found_.all[i];
            if (in.kind == LetIn::Kind::tenon) found_.kept[in.contact] = std::min(found_.kept[in.contact], 1 - lost_[i]);
            if (in.kind != LetIn::Kind::dowel) continue;
            dowels[in.contact] += 0.5; // half a dowel in either part
            dowels_lost[in.contact] += std::min(1.0, lost_[i]);
        }
        for (std::size_t c = 0; c < contacts_.size(); ++c) {
            if (dowels[c] > 0) found_.kept[c] = 1 - dowels_lost[c] / dowels[c];
            found_.kept[c] = std::clamp(found_.kept[c], kLeastKept, 1.0);
        }
    }

    const Piece& piece_;
    const std::vector<Contact>& contacts_;
    LetIns& found_;
    std::vector<double> lost_;
    std::set<std::pair<std::size_t, std::size_t>> grooved_;
};

} // namespace

LetIns meet_let_ins(const Piece& piece, const std::vector<Contact>& contacts)
{
    LetIns found;
    found.all = let_ins_of(piece, contacts, found.whole);
    Meeter(piece, contacts, found).meet_all();
    return found;
}

double kept_share(const LetIns& let_ins, const std::vector<Contact>& contacts, const Contact& contact)
{
    const std::less<const Contact*> before;
    if (contacts.empty() || before(&contact, contacts.data()) || !before(&contact, contacts.data() + contacts.size())) return 1;
    const auto index = static_cast<std::size_t>(&contact - contacts.data());
    return index < let_ins.kept.size() ? let_ins.kept[index] : 1;
}

} // namespace jointwright
