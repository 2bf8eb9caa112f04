#pragma once
// Stresses of a net section from what a line carries there. SI doubles.

#include "mechanics/frame/elements.hpp"
#include "mechanics/given/net_section.hpp"

namespace jointwright {

/// Shear along the grain at the point of a section where it is largest.
struct SectionShear {
    double stress = 0;       ///< transverse shear and twist together [Pa]
    double force = 0;        ///< transverse shear force that counts at that point [N]
    double twist_stress = 0; ///< what of the stress comes of twist [Pa]
    double area = 0;         ///< of the net section [m²]
};

/// Shear stresses along a line. Sections run on over many places: what was worked out for the last one is kept.
class ShearReader {
public:
    /// Transverse shear is largest along the middle of the section, parallel to its force; twist at the middles of the sides. So three points
    /// can govern: the middle of the section, and the middles of its two pairs of sides.
    /// @param first   net section for bending by `force_first`, along its depth
    /// @param second  net section for bending square to that
    SectionShear at(const NetStretch& first, const NetStretch& second, double force_first, double force_second, double torsion);

private:
    const NetStretch *first_ = nullptr, *second_ = nullptr;
    double beside_first_ = 0, beside_second_ = 0; ///< torque over stress at the sides that run along either depth [m³]
};

/// The same of a strip of a plate: in its middle plane transverse shear and shear in the plane, at its faces twist and shear in the plane.
SectionShear plate_shear(const kernel::PlateForces& forces, double thickness, double breadth);

/// Bending both ways and pull or thrust at one place along a line.
struct SectionStress {
    double bending = 0; ///< at the corner where both ways add up, positive [Pa]
    double axial = 0;   ///< pulled positive [Pa]
    /// Which of many places uses most: wood bears about half as much pressed along its grain as bent.
    double weight() const { return bending + (axial < 0 ? -2 * axial : axial); }
    /// Largest stress along the grain.
    double edge() const { return bending + (axial < 0 ? -axial : axial); }
};
SectionStress section_stress(const NetStretch& first, const NetStretch& second, double moment_first, double moment_second,
                             double tension);

} // namespace jointwright
