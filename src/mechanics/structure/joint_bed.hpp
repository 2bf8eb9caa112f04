#pragma once
// Faces of a contact as beds of springs: how the wood beside a joint gives when it is pressed and sheared. SI doubles.

#include "mechanics/structure/member_line.hpp"
#include "piece/contacts/contact.hpp"

#include <optional>

namespace jointwright {

/// A face of a contact as a rectangle.
struct FaceRectangle {
    kernel::Vec3 centre, u, v, n; ///< u and v along its sides, n out of the first part into the second
    double lu = 0, lv = 0;
    double fill = 1; ///< its area over the rectangle's, of a sliver what bears
    const Patch* patch = nullptr;
    double area() const { return lu * lv * fill; }
    /// Size towards a direction in the face.
    double size_along(const kernel::Vec3& d) const { return std::abs(d.dot(u)) * lu + std::abs(d.dot(v)) * lv; }
};
FaceRectangle rectangle_of(const Patch& patch, const MemberLine& a, const MemberLine& b);

/// A part of a rectangle: the i-th of nu along u, the j-th of nv along v.
FaceRectangle piece_of(const FaceRectangle& whole, int i, int nu, int j, int nv);

/// What of a rectangle lies between two places along a direction, counted from the origin of the piece; nothing where none of it does. A face
/// without extent that way is taken whole where it lies between them.
std::optional<FaceRectangle> slice_of(const FaceRectangle& whole, const kernel::Vec3& along, double from, double to);

/// Stiffness per area of the wood on both sides of a face, square to it and within it [N/m³].
struct FaceBed {
    double normal = 0, within = 0;
};
FaceBed bed_of(const FaceRectangle& face, const MemberLine& a, const MemberStiffness& sa, const MemberLine& b,
               const MemberStiffness& sb);

/// Adds a bed of springs over a rectangle, as felt at a point. Two by two points are exact for a rectangle.
void add_bed(kernel::Mat6& stiffness, const FaceRectangle& face, const FaceBed& bed, const kernel::Vec3& at);

} // namespace jointwright
