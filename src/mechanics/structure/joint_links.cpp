#include "mechanics/structure/joint_links.hpp"

#include "mechanics/structure/hinge_links.hpp"
#include "mechanics/structure/joint_bed.hpp"
#include "piece/let_ins/joined_solid.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>

namespace jointwright {

namespace {

using kernel::Mat3;
using kernel::Mat6;
using kernel::Vec3;

constexpr double kSegment = 0.12;    // m: longer faces along a part are held at several places
constexpr double kEndSegment = 0.06; // m: the end of a wide part
constexpr int kMostSegments = 8;
constexpr double kRowShare = 0.3;  // of a part's length: shorter bearings are one place along it
constexpr double kWideBearing = 3; // times a part's depth: on a longer one it bears on the near edge and may lift off the far one
constexpr double kNearEdge = 0.48; // of a face's size from its middle
constexpr double kFriction =
    1e5; // N/m: faces that lie dry on each other keep a part from drifting, and do not make two parts act as one
constexpr double kEndReach = 1.5; // widths from its end within which a part that crosses another is held at its end

struct Shares {
    double normal, within;
};
Shares shares_of(JointHold hold, const Patch& patch)
{
    const bool end_grain = patch.end_grain_first || patch.end_grain_second;
    switch (hold) {
    case JointHold::glued: return end_grain || patch.role == Patch::Role::edge ? Shares{0.5, 0.2} : Shares{1, 1};
    case JointHold::dowelled: return {0.5, 0.5};
    case JointHold::screwed: return {0.5, 0.25};
    case JointHold::buttoned: return {0.5, 0.02};
    case JointHold::let_in_dry: return {0.5, 0.05};
    case JointHold::dry: return {1, 0.2};
    }
    return {1, 1};
}

/// True when a copy ends at the contact: its line is to be drawn on to the middle of what it meets.
bool ends_here(const Contact& contact, const Joint* joint, bool first, const MemberLine& line, const Vec3& centre)
{
    const double s = line.along(centre), reach = std::max(line.wide, line.thick);
    if (s > reach + kTouch && s < line.length - reach - kTouch) return false;
    if (joint && (joint->kind == JointKind::mitre || joint->kind == JointKind::bridle || joint->kind == JointKind::dovetail))
        return true;
    if (joint && first && joint->kind == JointKind::tenon) return true;
    double end = 0, all = 0;
    for (const Patch& p : contact.patches) {
        all += p.area;
        if (std::abs(Vec3(p.normal[0], p.normal[1], p.normal[2]).dot(line.grain)) > 0.7) end += p.area;
    }
    return end > 0.501 * all;
}

/// Where along line a its middle comes nearest to the middle of line b, near a place.
double meeting(const MemberLine& a, const MemberLine& b, const Vec3& near)
{
    const double c = a.grain.dot(b.grain);
    if (std::abs(c) > 0.9) return std::clamp(a.along(near), 0.0, a.length);
    const Vec3 w = b.start - a.start;
    return (w.dot(a.grain) - c * w.dot(b.grain)) / (1 - c * c);
}

int segments(double length, const Vec3& direction, const MemberLine& a, const MemberLine& b)
{
    const auto splits = [&](const MemberLine& l) { return l.plate || std::abs(l.grain.dot(direction)) > 0.7; };
    if (!splits(a) && !splits(b)) return 1;
    return std::clamp(static_cast<int>(std::ceil(length / kSegment - 1e-6)), 1, kMostSegments);
}

class LinkMaker {
public:
    LinkMaker(const Given& given, std::size_t index, const std::vector<MemberLine>& lines,
              const std::vector<MemberStiffness>& stiffness)
        : contact_(given.layout->contacts[index]), index_(index),
          joint_(contact_.joint ? &given.piece->joints[*contact_.joint] : nullptr), hold_(hold_of(*given.piece, contact_)),
          holds_(holds_turning(*given.piece, contact_)), lies_(hold_ == JointHold::glued && lying_copy(given, index, holds_)),
          a_(lines[contact_.first]), b_(lines[contact_.second]), sa_(stiffness[contact_.first]), sb_(stiffness[contact_.second])
    {
        for (const Patch& p : contact_.patches)
            if (p.bears > 0) faces_.push_back(rectangle_of(p, a_, b_));
        double area = 0;
        centre_ = Vec3::Zero();
        for (const FaceRectangle& f : faces_) {
            centre_ += f.patch->area * f.centre;
            area += f.patch->area;
        }
        centre_ /= std::max(area, 1e-12);
        if (const auto upper = lying_copy(given, index, holds_); upper && hold_ == JointHold::screwed)
            slips_ = *upper == contact_.first ? a_.grain : b_.grain;
        if (is_drawn_freely(joint_, hold_)) {
            const Point way = way_apart(*given.piece, contact_);
            out_ = Vec3(way[0], way[1], way[2]);
        }
    }

    std::vector<JointLink> make()
    {
        std::vector<const FaceRectangle*> holding;
        for (const FaceRectangle& f : faces_) {
            if (only_presses(f)) press(f);
            if (!only_presses(f) || hold_ != JointHold::dry || std::abs(f.n.z()) > 0.7) holding.push_back(&f);
        }
        if (!holding.empty()) hold(holding);
        return std::move(links_);
    }

private:
    /// A dry face: pulls nothing. Opposite faces of one let-in hold both ways.
    bool only_presses(const FaceRectangle& f) const
    {
        if (hold_ == JointHold::dry) return true;
        if (hold_ != JointHold::let_in_dry) return false;
        return !has_opposite(f);
    }

    LinkEnd end_on(std::size_t copy, const MemberLine& line, const Vec3& at) const
    {
        return {copy, std::clamp(line.along(at), 0.0, line.length), std::clamp(line.across(at), -line.wide / 2, line.wide / 2)};
    }

    /// @param over  the piece of a face whose springs it stands for; none: a point
    void put(JointLink link, const Vec3& at, const FaceRectangle* over = nullptr)
    {
        link.contact = index_;
        link.at = at;
        link.a = end_on(contact_.first, a_, at);
        link.b = end_on(contact_.second, b_, at);
        if (over) {
            link.a.spread = spread_on(a_, link.a.across, *over);
            link.b.spread = spread_on(b_, link.b.across, *over);
        }
        links_.push_back(std::move(link));
    }

    /// How much of a plate's width a piece of a face takes hold of evenly about a place.
    static double spread_on(const MemberLine& line, double across, const FaceRectangle& over)
    {
        if (!line.plate) return 0;
        return std::max(0.0, std::min(over.size_along(line.width), line.wide - 2 * std::abs(across)));
    }

    void press(const FaceRectangle& face)
    {
        const FaceBed bed = bed_of(face, a_, sa_, b_, sb_);
        int nu = segments(face.lu, face.u, a_, b_), nv = segments(face.lv, face.v, a_, b_);
        // Along a part that lies on another a short bearing is one place; across it two keep it from rolling over.
        const MemberLine& upper = face.n.z() < 0 ? a_ : b_;
        const auto points = [&](const Vec3& d, double l, int n) {
            if (n > 1) return n;
            const bool one_place =
                l < kRowShare * upper.length - kTouch && l < kWideBearing * upper.size_towards(face.n) + kTouch;
            return std::abs(upper.grain.dot(d)) > 0.7 && one_place ? 1 : 2;
        };
        nu = points(face.u, face.lu, nu);
        nv = points(face.v, face.lv, nv);
        for (int i = 0; i < nu; ++i)
            for (int j = 0; j < nv; ++j) {
                FaceRectangle part = piece_of(face, i, nu, j, nv);
                // Two points stand near the edges: about those a part tips over.
                if (nu == 2) part.centre += (i == 0 ? -1 : 1) * (kNearEdge - 0.25) * face.lu * face.u;
                if (nv == 2) part.centre += (j == 0 ? -1 : 1) * (kNearEdge - 0.25) * face.lv * face.v;
                JointLink link;
                link.presses = true;
                link.direction = face.n;
                link.press = bed.normal * part.lu * part.lv * part.fill;
                const bool moved = (nu == 2 && crosses_plate(face.u)) || (nv == 2 && crosses_plate(face.v));
                put(std::move(link), part.centre, moved ? nullptr : &part);
            }
    }

    bool crosses_plate(const Vec3& d) const
    {
        return (a_.plate && std::abs(a_.width.dot(d)) > 0.7) || (b_.plate && std::abs(b_.width.dot(d)) > 0.7);
    }

    /// Springs that hold: one for all faces, several in a row along a long face, or a field of them over one that is long both ways.
    void hold(const std::vector<const FaceRectangle*>& faces)
    {
        const bool a_ends = ends_here(contact_, joint_, true, a_, centre_),
                   b_ends = ends_here(contact_, joint_, false, b_, centre_);
        const bool end_of_line = (a_ends && !a_.plate) || (b_ends && !b_.plate);
        const FaceRectangle* longest = nullptr;
        bool field = false;
        for (const FaceRectangle* f : faces) {
            const int nu = segments(f->lu, f->u, a_, b_), nv = segments(f->lv, f->v, a_, b_);
            field = field || (nu > 1 && nv > 1);
            if (nu * nv > 1 && (!longest || std::max(f->lu, f->lv) > std::max(longest->lu, longest->lv))) longest = f;
        }
        if (field) {
            for (const FaceRectangle* f : faces) hold_in_field(*f);
        } else if (longest && !end_of_line) {
            hold_in_row(faces, longest->lu >= longest->lv ? longest->u : longest->v, a_ends, b_ends);
        } else {
            hold_in_one(faces, a_ends, b_ends);
        }
    }

    void hold_in_one(const std::vector<const FaceRectangle*>& faces, bool a_ends, bool b_ends)
    {
        JointLink link;
        for (const FaceRectangle* f : faces) add(link, *f, *f, centre_);
        link.freed = freed_in_one(*faces.front(), a_ends, b_ends);
        link.out = out_;
        if ((!a_ends && !b_ends) || a_.plate || b_.plate) {
            put(std::move(link), centre_);
            return;
        }
        // Lines meet at their middles: the joint sits where the one that ends here crosses the other.
        const double sa = meeting(a_, b_, centre_), sb = meeting(b_, a_, centre_);
        link.contact = index_;
        link.at = a_ends ? a_.point(sa) : b_.point(sb);
        link.a = {contact_.first, a_ends ? sa : std::clamp(sa, 0.0, a_.length), 0};
        link.b = {contact_.second, b_ends ? sb : std::clamp(sb, 0.0, b_.length), 0};
        links_.push_back(std::move(link));
    }

    /// All faces in slices along the joint, each slice one spring, so that the joint can be let turn about its own line.
    void hold_in_row(const std::vector<const FaceRectangle*>& faces, const Vec3& along, bool a_ends, bool b_ends)
    {
        double lo = 1e30, hi = -1e30;
        for (const FaceRectangle* f : faces) {
            const double half = f->size_along(along) / 2, middle = f->centre.dot(along);
            lo = std::min(lo, middle - half);
            hi = std::max(hi, middle + half);
        }
        // The end of a wide part is held so closely that it does not give between its springs.
        const bool wide_end = (a_ends && a_.plate) || (b_ends && b_.plate);
        const double step = wide_end ? kEndSegment : kSegment;
        const int n = std::clamp(static_cast<int>(std::ceil((hi - lo) / step - 1e-6)), 2, kMostSegments);
        const auto [freed, couple] = freed_in_row(along, a_ends, b_ends);
        constexpr double beyond = std::numeric_limits<double>::infinity();
        for (int i = 0; i < n; ++i) {
            const double from = i == 0 ? -beyond : lo + (hi - lo) * i / n,
                         to = i + 1 == n ? beyond : lo + (hi - lo) * (i + 1) / n;
            std::vector<std::pair<const FaceRectangle*, FaceRectangle>> slices;
            Vec3 centre = Vec3::Zero();
            double area = 0;
            for (const FaceRectangle* f : faces)
                if (const auto slice = slice_of(*f, along, from, to)) {
                    slices.emplace_back(f, *slice);
                    centre += slice->area() * slice->centre;
                    area += slice->area();
                }
            if (area <= 0) continue;
            centre /= area;
            JointLink link;
            link.one_of_many = true;
            for (const auto& [whole, slice] : slices) add(link, slice, *whole, centre);
            link.freed = freed;
            link.couple = couple;
            link.out = out_;
            const auto widest = std::max_element(slices.begin(), slices.end(), [&](const auto& x, const auto& y) {
                return x.second.size_along(along) < y.second.size_along(along);
            });
            put(std::move(link), centre, &widest->second);
        }
    }

    /// A face that is long both ways holds what lies on it flat: no joint that could turn.
    void hold_in_field(const FaceRectangle& face)
    {
        const int nu = segments(face.lu, face.u, a_, b_), nv = segments(face.lv, face.v, a_, b_);
        for (int i = 0; i < nu; ++i)
            for (int j = 0; j < nv; ++j) {
                const FaceRectangle part = piece_of(face, i, nu, j, nv);
                JointLink link;
                add(link, part, face, part.centre);
                link.one_of_many = true;
                put(std::move(link), part.centre, &part);
            }
    }

    /// Adds to a spring what a part of a face is worth about a place.
    void add(JointLink& link, const FaceRectangle& part, const FaceRectangle& whole, const Vec3& at) const
    {
        Mat6 k = Mat6::Zero();
        add_shares(k, part, whole, at);
        let_slip(k, part, whole);
        // What couples turning to shifting is left out, since the joint is placed at its middle.
        link.holding += k.topLeftCorner<3, 3>();
        if (!turns_open(whole)) {
            link.turning += k.bottomRightCorner<3, 3>();
            return;
        }
        // On a fastened face it turns no more easily than it slides.
        if (hold_ != JointHold::dry) link.turning += about(whole.n) * k.bottomRightCorner<3, 3>() * about(whole.n);
        if (link.one_of_many) {
            // Every face of a housing holds where it is: those above and below the middle keep it from turning with what they resist of sliding.
            const Mat3 lever = kernel::cross_matrix(part.centre - at);
            link.turning += lever.transpose() * k.topLeftCorner<3, 3>() * lever;
        }
    }

    /// Screws let a part that lies on several others slide along its grain by the hair that its bending asks for: no more than friction is reckoned.
    void let_slip(Mat6& stiffness, const FaceRectangle& part, const FaceRectangle& whole) const
    {
        if (slips_.norm() < 0.5 || std::abs(part.n.z()) < 0.7) return;
        const double held = slips_.dot(stiffness.topLeftCorner<3, 3>() * slips_),
                     most = kFriction * part.area() / std::max(whole.area(), 1e-9);
        if (held > most) stiffness.topLeftCorner<3, 3>() -= (held - most) * slips_ * slips_.transpose();
    }

    void add_shares(Mat6& stiffness, const FaceRectangle& part, const FaceRectangle& whole, const Vec3& at) const
    {
        // How deep wood gives does not hang on how finely a long face is divided for the sums.
        const FaceBed bed = bed_of(
            piece_of(whole, 0, segments(whole.lu, whole.u, a_, b_), 0, segments(whole.lv, whole.v, a_, b_)), a_, sa_, b_, sb_);
        const auto lay = [&](const FaceRectangle& face, const FaceBed& on, const Shares& s) {
            add_bed(stiffness, face, {s.normal * on.normal, s.within * on.within}, at);
        };
        Shares shares = shares_of(hold_, *part.patch);
        if (only_presses(part)) shares.normal = 0; // the pressing springs see to it
        // A glued face on which a part lies is let open, and what opens holds no shear: friction is left of it.
        if (hold_ == JointHold::dry || (lies_ && std::abs(part.n.z()) > 0.7))
            shares.within = std::min(shares.within, kFriction / std::max(bed.within * whole.area(), 1.0));
        if (!joint_ || !joint_->glued) {
            lay(part, bed, shares);
            return;
        }
        // Glued on a part of its length: the rest is held by shape at most.
        const auto glued = glued_of(part, whole);
        const double share = glued && part.area() > 0 ? glued->area() / part.area() : 0;
        if (is_let_in(joint_->kind)) lay(part, bed, {0.5 * (1 - share), 0});
        if (glued) lay(*glued, bed, shares);
    }

    /// What of a part of a face lies within its glued length.
    std::optional<FaceRectangle> glued_of(const FaceRectangle& part, const FaceRectangle& whole) const
    {
        const Vec3& along = whole.lu >= whole.lv ? whole.u : whole.v;
        const double longer = std::max(whole.lu, whole.lv), glued = std::min(longer, in_metres(joint_->glued->length));
        double middle = whole.centre.dot(along);
        const auto to_side = [&](const Vec3& side) {
            if (std::abs(along.dot(side)) > 0.5) middle += (along.dot(side) > 0 ? 1 : -1) * (longer - glued) / 2;
        };
        switch (joint_->glued->at) {
        case GluedAt::middle: break;
        case GluedAt::left: to_side(-Vec3::UnitX()); break;
        case GluedAt::right: to_side(Vec3::UnitX()); break;
        case GluedAt::front: to_side(-Vec3::UnitY()); break;
        case GluedAt::back: to_side(Vec3::UnitY()); break;
        case GluedAt::bottom: to_side(-Vec3::UnitZ()); break;
        case GluedAt::top: to_side(Vec3::UnitZ()); break;
        }
        return slice_of(part, along, middle - glued / 2, middle + glued / 2);
    }

    bool has_opposite(const FaceRectangle& f) const
    {
        return std::any_of(faces_.begin(), faces_.end(), [&](const FaceRectangle& o) { return o.n.dot(f.n) < -0.9; });
    }

    /// End grain pressed against a face turns with nothing to pull on its other side, unless a tenon or dowels do.
    bool turns_open(const FaceRectangle& face) const
    {
        if (!face.patch->end_grain_first && !face.patch->end_grain_second) return false;
        if (!joint_) return true;
        // In a recess one wall presses at the mouth and the other at the bottom.
        if (hold_ == JointHold::let_in_dry && has_opposite(face)) return false;
        switch (joint_->kind) {
        case JointKind::tenon:
        case JointKind::bridle:
        case JointKind::dowel:
        case JointKind::dovetail:
        case JointKind::lap:
        case JointKind::screws: return false;
        default: return true;
        }
    }

    /// Boards glued along their grain are one piece of wood, and no joint.
    bool grown_together() const
    {
        const auto angle = contact_.grain_angle();
        return hold_ == JointHold::glued && angle && *angle < kAlike;
    }

    static Mat3 about(const Vec3& axis) { return axis * axis.transpose(); }

    /// Axes about which a joint at one place may be let turn. Faces: those in the face, which open it. Let in: those square to the part that ends
    /// there; of two that end, the one square to both.
    Mat3 freed_in_one(const FaceRectangle& largest, bool a_ends, bool b_ends) const
    {
        if (grown_together() || holds_ || hold_ == JointHold::dry) return Mat3::Zero();
        if (hold_ != JointHold::let_in_dry) return Mat3::Identity() - about(largest.n);
        const double c = std::abs(a_.grain.dot(b_.grain));
        if (c > std::cos(kAlike)) return Mat3::Identity() - about(a_.grain);
        std::tie(a_ends, b_ends) = nearer_end(a_ends, b_ends);
        if (a_ends && b_ends) return about(a_.grain.cross(b_.grain).normalized());
        if (a_ends) return Mat3::Identity() - about(a_.grain);
        if (b_ends) return Mat3::Identity() - about(b_.grain);
        return about(largest.n);
    }

    /// Of two parts that cross, the one whose end is near is the one that turns, as a slat on its rails.
    std::pair<bool, bool> nearer_end(bool a_ends, bool b_ends) const
    {
        if (a_ends || b_ends) return {a_ends, b_ends};
        const double first = end_share(a_), second = end_share(b_);
        const bool a = first <= second && first < kEndReach;
        return {a, !a && second < kEndReach};
    }

    /// How far from its end a part is held, over its width.
    double end_share(const MemberLine& line) const
    {
        const double s = line.along(centre_);
        return std::max(0.0, std::min(s, line.length - s)) / std::max(line.wide, line.thick);
    }

    /// Axes about which a long joint may be let turn, and the direction in which its springs then act as one only: its own line; a wide part that
    /// ends on a narrow one, an apron on a leg, also about the normal of its face.
    std::pair<Mat3, Vec3> freed_in_row(const Vec3& along, bool a_ends, bool b_ends) const
    {
        if (grown_together() || holds_) return {Mat3::Zero(), Vec3::Zero()};
        Mat3 freed = about(along);
        Vec3 couple = Vec3::Zero();
        for (const auto& [ends, wide, other] : {std::tuple{a_ends, &a_, &b_}, std::tuple{b_ends, &b_, &a_}}) {
            if (!ends || !wide->plate || other->plate) continue;
            freed += about(wide->face);
            couple = wide->face.cross(along).normalized();
        }
        return {freed, couple};
    }

    const Contact& contact_;
    std::size_t index_;
    const Joint* joint_;
    JointHold hold_;
    bool holds_;
    bool lies_;                 ///< one part lies on the other and on more, and would do so without its glue
    Vec3 slips_ = Vec3::Zero(); ///< along the grain of a screwed part that lies so; none: zero
    Vec3 out_ = Vec3::Zero();   ///< out of its recess, where nothing but friction keeps the first part in it
    const MemberLine &a_, &b_;
    const MemberStiffness &sa_, &sb_;
    std::vector<FaceRectangle> faces_;
    Vec3 centre_;
    std::vector<JointLink> links_;
};

} // namespace

kernel::Mat6 JointLink::stiffness(const JointLet& let) const
{
    // Even a hinge has some friction: a joint never spins in the sums, and is found as loose all the same.
    constexpr double friction = 1e-5;   // N m/rad
    constexpr double free_turn = 1e-6;  // root of the share that is left of the resistance about an axis that is let go
    constexpr double free_shift = 1e-3; // N/m
    Mat6 k = Mat6::Zero();
    Mat3 shift = (one_of_many ? let.stiffness : 1.0) * holding;
    const auto let_go = [&](const Vec3& way) {
        const Mat3 square = Mat3::Identity() - way * way.transpose();
        shift = Mat3(square * shift * square);
    };
    if (let.as_one && couple.norm() > 0.5) let_go(couple);
    if (let.out && out.norm() > 0.5) {
        let_go(out);
        shift += free_shift * out * out.transpose();
    }
    k.topLeftCorner<3, 3>() = shift;
    const Mat3 left = Mat3::Identity() - (1 - free_turn) * let.turn;
    k.bottomRightCorner<3, 3>() = let.stiffness * left * turning * left + friction * Mat3::Identity();
    return k;
}

std::vector<JointLink> joint_links(const Given& given, std::size_t contact, const std::vector<MemberLine>& lines,
                                   const std::vector<MemberStiffness>& stiffness)
{
    const Contact& c = given.layout->contacts[contact];
    if (c.joint && given.piece->joints[*c.joint].kind == JointKind::hinge) return hinge_links(given, contact, lines);
    if (swings_clear(given, c)) return {};
    return LinkMaker(given, contact, lines, stiffness).make();
}

} // namespace jointwright
