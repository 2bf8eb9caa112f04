#include "mechanics/joint_links.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Mat3;
using kernel::Mat6;
using kernel::Vec3;

constexpr double kSegment = 0.12; // m: longer faces along a part are held at several places
constexpr int kMostSegments = 8;
constexpr double kDepthShare = 0.4;      // of the face's size: how deep wood beside a face gives
constexpr double kRowShare = 0.3;        // of a part's length: shorter bearings are one place along it
constexpr double kNearEdge = 0.48;       // of a face's size from its middle
constexpr double kGauss = 0.28867513459; // two points of a length: ± length/(2 √3)

/// A face of a contact as a rectangle.
struct FaceRectangle {
    Vec3 centre, u, v, n;
    double lu = 0, lv = 0;
    double fill = 1; ///< its area over the rectangle's
    const Patch* patch = nullptr;
};

Vec3 in_plane(const Vec3& d, const Vec3& n) { return d - d.dot(n) * n; }

FaceRectangle rectangle_of(const Patch& patch, const MemberLine& a, const MemberLine& b)
{
    FaceRectangle r;
    r.patch = &patch;
    r.n = Vec3(patch.normal[0], patch.normal[1], patch.normal[2]).normalized();
    Vec3 u = in_plane(a.grain, r.n);
    if (u.norm() < 0.3) u = in_plane(b.grain, r.n);
    if (u.norm() < 0.3) u = in_plane(a.width, r.n);
    r.u = u.normalized();
    r.v = r.n.cross(r.u);
    double lo_u = 1e30, hi_u = -1e30, lo_v = 1e30, hi_v = -1e30;
    Vec3 any = Vec3::Zero();
    for (const Point& p : patch.outline) {
        const Vec3 q(p[0], p[1], p[2]);
        any = q;
        lo_u = std::min(lo_u, q.dot(r.u));
        hi_u = std::max(hi_u, q.dot(r.u));
        lo_v = std::min(lo_v, q.dot(r.v));
        hi_v = std::max(hi_v, q.dot(r.v));
    }
    r.lu = hi_u - lo_u;
    r.lv = hi_v - lo_v;
    r.centre = (lo_u + hi_u) / 2 * r.u + (lo_v + hi_v) / 2 * r.v + any.dot(r.n) * r.n;
    r.fill = r.lu * r.lv > 0 ? std::clamp(patch.area / (r.lu * r.lv), 0.0, 1.0) : 1;
    return r;
}

/// A part of a rectangle: the i-th of n each way.
FaceRectangle piece_of(const FaceRectangle& whole, int i, int nu, int j, int nv)
{
    FaceRectangle r = whole;
    r.lu /= nu;
    r.lv /= nv;
    r.centre += ((i + 0.5) / nu - 0.5) * whole.lu * whole.u + ((j + 0.5) / nv - 0.5) * whole.lv * whole.v;
    return r;
}

/// Stiffness per area of the wood on both sides of a face, square to it and within it [N/m³].
struct Bed {
    double normal = 0, within = 0;
};
Bed bed_of(const FaceRectangle& face, const MemberLine& a, const MemberStiffness& sa, const MemberLine& b,
           const MemberStiffness& sb)
{
    const double size = std::sqrt(std::max(face.lu * face.lv, 1e-8));
    double give = 0, slip = 0;
    for (const auto& [line, s] : {std::pair{&a, &sa}, std::pair{&b, &sb}}) {
        const double depth = std::min(line->size_towards(face.n) / 2, kDepthShare * size);
        give += depth / modulus_towards(*line, *s, face.n);
        slip += depth / ((s->shear_face + s->rolling) / 2);
    }
    return {1 / std::max(give, 1e-13), 1 / std::max(slip, 1e-13)};
}

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

/// Adds a bed of springs over a rectangle, as felt at a point. Two by two points are exact for a rectangle.
void add_bed(Mat6& stiffness, const FaceRectangle& face, const Bed& bed, const Shares& shares, const Vec3& at)
{
    const double area = face.lu * face.lv * face.fill / 4;
    const Mat3 normal = face.n * face.n.transpose();
    const Mat3 k = area * (shares.normal * bed.normal * normal + shares.within * bed.within * (Mat3::Identity() - normal));
    for (const double su : {-kGauss, kGauss})
        for (const double sv : {-kGauss, kGauss}) {
            const Vec3 r = face.centre + su * face.lu * face.u + sv * face.lv * face.v - at;
            Eigen::Matrix<double, 3, 6> t;
            t << Mat3::Identity(), -kernel::cross_matrix(r);
            stiffness += t.transpose() * k * t;
        }
}

bool is_let_in(JointKind kind)
{
    switch (kind) {
    case JointKind::tenon:
    case JointKind::housing:
    case JointKind::groove:
    case JointKind::sliding_dovetail:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::lap: return true;
    default: return false;
    }
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
    LinkMaker(const Prepared& prepared, std::size_t index, const std::vector<MemberLine>& lines,
              const std::vector<MemberStiffness>& stiffness)
        : contact_(prepared.layout->contacts[index]), index_(index),
          joint_(contact_.joint ? &prepared.piece->joints[*contact_.joint] : nullptr), hold_(hold_of(*prepared.piece, contact_)),
          a_(lines[contact_.first]), b_(lines[contact_.second]), sa_(stiffness[contact_.first]), sb_(stiffness[contact_.second])
    {
        for (const Patch& p : contact_.patches) faces_.push_back(rectangle_of(p, a_, b_));
        double area = 0;
        centre_ = Vec3::Zero();
        for (const FaceRectangle& f : faces_) {
            centre_ += f.patch->area * f.centre;
            area += f.patch->area;
        }
        centre_ /= std::max(area, 1e-12);
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
        return std::none_of(faces_.begin(), faces_.end(), [&](const FaceRectangle& o) { return o.n.dot(f.n) < -0.9; });
    }

    LinkEnd end_on(std::size_t copy, const MemberLine& line, const Vec3& at) const
    {
        return {copy, std::clamp(line.along(at), 0.0, line.length), std::clamp(line.across(at), -line.wide / 2, line.wide / 2)};
    }

    void put(JointLink link, const Vec3& at)
    {
        link.contact = index_;
        link.at = at;
        link.a = end_on(contact_.first, a_, at);
        link.b = end_on(contact_.second, b_, at);
        links_.push_back(std::move(link));
    }

    void press(const FaceRectangle& face)
    {
        const Bed bed = bed_of(face, a_, sa_, b_, sb_);
        int nu = segments(face.lu, face.u, a_, b_), nv = segments(face.lv, face.v, a_, b_);
        // Along a part that lies on another a short bearing is one place; across it two keep it from rolling over.
        const MemberLine& upper = face.n.z() < 0 ? a_ : b_;
        const auto points = [&](const Vec3& d, double l, int n) {
            if (n > 1) return n;
            return std::abs(upper.grain.dot(d)) > 0.7 && l < kRowShare * upper.length - kTouch ? 1 : 2;
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
                put(std::move(link), part.centre);
            }
    }

    /// Springs that hold: one for all faces, or several along a long one.
    void hold(const std::vector<const FaceRectangle*>& faces)
    {
        bool long_face = false;
        for (const FaceRectangle* f : faces)
            long_face = long_face || segments(f->lu, f->u, a_, b_) * segments(f->lv, f->v, a_, b_) > 1;
        if (long_face) {
            for (const FaceRectangle* f : faces) hold_in_pieces(*f);
            return;
        }
        JointLink link;
        for (const FaceRectangle* f : faces) add(link.stiffness, *f, centre_);
        soften(link, faces);
        const bool a_ends = ends_here(contact_, joint_, true, a_, centre_),
                   b_ends = ends_here(contact_, joint_, false, b_, centre_);
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

    void hold_in_pieces(const FaceRectangle& face)
    {
        const int nu = segments(face.lu, face.u, a_, b_), nv = segments(face.lv, face.v, a_, b_);
        for (int i = 0; i < nu; ++i)
            for (int j = 0; j < nv; ++j) {
                const FaceRectangle part = piece_of(face, i, nu, j, nv);
                JointLink link;
                add(link.stiffness, part, part.centre);
                soften(link, {&part});
                put(std::move(link), part.centre);
            }
    }

    void add(Mat6& stiffness, const FaceRectangle& face, const Vec3& at) const
    {
        Shares shares = shares_of(hold_, *face.patch);
        if (only_presses(face)) shares.normal = 0; // the pressing springs see to it
        if (joint_ && joint_->glued) {
            // Glued on a part of its length: the rest is held by shape at most.
            const double glued = std::min(1.0, in_metres(joint_->glued->length) / std::max({face.lu, face.lv, 1e-6}));
            if (is_let_in(joint_->kind)) add_bed(stiffness, face, bed_of(face, a_, sa_, b_, sb_), {0.5 * (1 - glued), 0}, at);
            FaceRectangle part = face;
            (part.lu >= part.lv ? part.lu : part.lv) *= glued;
            add_bed(stiffness, part, bed_of(part, a_, sa_, b_, sb_), shares, at);
            return;
        }
        add_bed(stiffness, face, bed_of(face, a_, sa_, b_, sb_), shares, at);
    }

    /// End grain pressed against a face turns with nothing to pull on its other side, unless a tenon or dowels do.
    bool turns_open(const FaceRectangle& face) const
    {
        if (!face.patch->end_grain_first && !face.patch->end_grain_second) return false;
        return !joint_ ||
               (joint_->kind != JointKind::tenon && joint_->kind != JointKind::bridle && joint_->kind != JointKind::dowel &&
                joint_->kind != JointKind::dovetail && joint_->kind != JointKind::lap && hold_ != JointHold::screwed);
    }

    /// Turning is let more or less free; what couples it to shifting is left out, since the joint is placed at its middle.
    void soften(JointLink& link, const std::vector<const FaceRectangle*>& faces) const
    {
        Mat6& k = link.stiffness;
        k.topRightCorner<3, 3>().setZero();
        k.bottomLeftCorner<3, 3>().setZero();
        Mat6 turning = Mat6::Zero();
        for (const FaceRectangle* f : faces)
            if (!turns_open(*f)) add(turning, *f, faces.size() > 1 ? centre_ : f->centre);
        link.turning = turning.bottomRightCorner<3, 3>();
        link.set_turning(1);
    }

    const Contact& contact_;
    std::size_t index_;
    const Joint* joint_;
    JointHold hold_;
    const MemberLine &a_, &b_;
    const MemberStiffness &sa_, &sb_;
    std::vector<FaceRectangle> faces_;
    Vec3 centre_;
    std::vector<JointLink> links_;
};

} // namespace

void JointLink::set_turning(double share)
{
    // Even a hinge has some friction: a joint never spins in the sums, and is found as loose all the same.
    constexpr double friction = 1e-4; // N m/rad
    stiffness.bottomRightCorner<3, 3>() = share * turning + friction * Mat3::Identity();
}

JointHold hold_of(const Piece& piece, const Contact& contact)
{
    if (!contact.joint) return JointHold::dry;
    const Joint& joint = piece.joints[*contact.joint];
    if (joint.glue && joint.kind != JointKind::dowel) return JointHold::glued;
    switch (joint.kind) {
    case JointKind::dowel: return JointHold::dowelled;
    case JointKind::screws: return JointHold::screwed;
    case JointKind::buttons: return JointHold::buttoned;
    default: return is_let_in(joint.kind) ? JointHold::let_in_dry : JointHold::dry;
    }
}

std::vector<JointLink> joint_links(const Prepared& prepared, std::size_t contact, const std::vector<MemberLine>& lines,
                                   const std::vector<MemberStiffness>& stiffness)
{
    return LinkMaker(prepared, contact, lines, stiffness).make();
}

} // namespace jointwright
