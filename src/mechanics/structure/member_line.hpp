#pragma once
// A copy as the frame sees it: a line along its grain with net sections, or a flat plate where it is wide. SI doubles: metres, pascals.

#include "mechanics/frame/elements.hpp"
#include "mechanics/given/net_section.hpp"
#include "wood/state.hpp"

#include <vector>

namespace jointwright {

struct PartState;

/// Elastic figures of one part as it stands under load.
struct MemberStiffness {
    double along = 0, across = 0; ///< E_L (free of shear), and the mean of E_T and E_R [Pa]
    double shear_width = 0;       ///< G for bending in the plane of grain and width
    double shear_face = 0;        ///< G for bending in the plane of grain and thickness
    double rolling = 0;           ///< G_RT
    bool known = false;           ///< false: a stand-in that only hands loads on; no verdict rests on it
};
MemberStiffness member_stiffness(const Facts& facts, const PartState& state);

/// A copy's own line and directions in space; lower end, grain, width and face as drawn, then turned.
struct MemberLine {
    kernel::Vec3 start, grain, width, face;
    double length = 0, wide = 0, thick = 0;
    bool plate = false; ///< wide and thin: bends both ways
    bool lies = true;   ///< nearer level than upright
    std::vector<NetStretch> by_width,
        by_face; ///< net sections for bending along the width, along the thickness; from 0 at the lower end

    double along(const kernel::Vec3& p) const { return (p - start).dot(grain); }
    double across(const kernel::Vec3& p) const { return (p - start).dot(width); }
    kernel::Vec3 point(double along, double across = 0) const { return start + along * grain + across * width; }
    /// Size of the copy in a direction in space.
    double size_towards(const kernel::Vec3& direction) const;
    /// The net section at a place, for bending along the thickness.
    const NetStretch& face_section(double along) const;
    const NetStretch& width_section(double along) const;
    /// The part's depth runs along its width (a rail on edge), else along its thickness.
    bool on_edge() const { return std::abs(width.z()) > std::abs(face.z()); }
    /// The section that counts for vertical loads on a lying part.
    const NetStretch& upright_section(double along) const { return on_edge() ? width_section(along) : face_section(along); }
};
MemberLine member_line(const Facts& facts, const Part& part, const Copy& copy, const std::vector<Cut>& cuts);

/// Section of a beam of the frame at a place along a copy: x along the grain, y along the width.
kernel::BeamSection beam_section(const MemberLine& line, const MemberStiffness& stiffness, double along);
/// Section of a plate there: x along the grain, y along the width.
kernel::PlateSection plate_section(const MemberLine& line, const MemberStiffness& stiffness, double along);

/// Modulus of a part in a direction: Hankinson between along and across the grain.
double modulus_towards(const MemberLine& line, const MemberStiffness& stiffness, const kernel::Vec3& direction);

} // namespace jointwright
