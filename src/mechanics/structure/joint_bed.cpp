#include "mechanics/structure/joint_bed.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Mat3;
using kernel::Mat6;
using kernel::Vec3;

constexpr double kDepthShare = 0.4;      // of the face's size: how deep wood beside a face gives
constexpr double kGauss = 0.28867513459; // two points of a length: ± length/(2 √3)

Vec3 in_plane(const Vec3& d, const Vec3& n) { return d - d.dot(n) * n; }

} // namespace

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
    r.fill = r.lu * r.lv > 0 ? patch.bears * std::clamp(patch.area / (r.lu * r.lv), 0.0, 1.0) : 1;
    return r;
}

FaceRectangle piece_of(const FaceRectangle& whole, int i, int nu, int j, int nv)
{
    FaceRectangle r = whole;
    r.lu /= nu;
    r.lv /= nv;
    r.centre += ((i + 0.5) / nu - 0.5) * whole.lu * whole.u + ((j + 0.5) / nv - 0.5) * whole.lv * whole.v;
    return r;
}

std::optional<FaceRectangle> slice_of(const FaceRectangle& whole, const Vec3& along, double from, double to)
{
    const bool by_u = std::abs(along.dot(whole.u)) >= std::abs(along.dot(whole.v));
    const Vec3& axis = by_u ? whole.u : whole.v;
    const double c = along.dot(axis), middle = whole.centre.dot(along), length = by_u ? whole.lu : whole.lv;
    if (length * std::abs(c) < kTouch || std::abs(c) < 0.5) {
        FaceRectangle part = whole;
        // On the line between two slices it is half of either, so that rounding does not decide.
        if (std::abs(middle - from) < kTouch || std::abs(middle - to) < kTouch)
            part.fill /= 2;
        else if (middle < from || middle > to)
            return std::nullopt;
        return part;
    }
    const double half = std::abs(c) * length / 2, lo = std::max(from, middle - half), hi = std::min(to, middle + half);
    if (hi - lo < 1e-9) return std::nullopt;
    FaceRectangle part = whole;
    (by_u ? part.lu : part.lv) = (hi - lo) / std::abs(c);
    part.centre += ((lo + hi) / 2 - middle) / c * axis;
    return part;
}

FaceBed bed_of(const FaceRectangle& face, const MemberLine& a, const MemberStiffness& sa, const MemberLine& b,
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

void add_bed(Mat6& stiffness, const FaceRectangle& face, const FaceBed& bed, const Vec3& at)
{
    const double area = face.area() / 4;
    const Mat3 normal = face.n * face.n.transpose();
    const Mat3 k = area * (bed.normal * normal + bed.within * (Mat3::Identity() - normal));
    for (const double su : {-kGauss, kGauss})
        for (const double sv : {-kGauss, kGauss}) {
            const Vec3 r = face.centre + su * face.lu * face.u + sv * face.lv * face.v - at;
            Eigen::Matrix<double, 3, 6> t;
            t << Mat3::Identity(), -kernel::cross_matrix(r);
            stiffness += t.transpose() * k * t;
        }
}

} // namespace jointwright
