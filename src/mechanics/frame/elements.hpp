#pragma once
// SI doubles: metres, newtons, pascals. Stiffness of the two kinds of element a frame is made of: a straight beam with shear, a flat rectangle of plate.
// Unknowns of a node: displacement x, y, z, then turn about x, y, z (right-handed).

#include <Eigen/Core>
#include <Eigen/Geometry>

#include <array>
#include <vector>

namespace jointwright::kernel {

using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;
using Vec6 = Eigen::Matrix<double, 6, 1>;
using Mat6 = Eigen::Matrix<double, 6, 6>;
using Vec12 = Eigen::Matrix<double, 12, 1>;
using Mat12 = Eigen::Matrix<double, 12, 12>;
using Vec24 = Eigen::Matrix<double, 24, 1>;
using Mat24 = Eigen::Matrix<double, 24, 24>;

/// The matrix that turns a vector r into r ×.
Mat3 cross_matrix(const Vec3& r);

/// Section of a beam in its own axes: x along, y and z across.
struct BeamSection {
    double axial = 0;     ///< E A [N]
    double bending_y = 0; ///< E I for bending in the x-y plane [N m²]
    double bending_z = 0; ///< E I for bending in the x-z plane
    double shear_y = 0;   ///< G A' for that bending [N]; 0: shear left out
    double shear_z = 0;   ///
    double twisting = 0;  ///< G J [N m²]
};

/// A straight Timoshenko beam between two points. Local x runs from the first to the second.
class BeamElement {
public:
    /// @param y  a direction across; made square to the beam
    BeamElement(const Vec3& from, const Vec3& to, const Vec3& y, const BeamSection& section);
    double length() const { return length_; }
    /// Rows: local x, y, z in space.
    const Mat3& axes() const { return axes_; }
    const BeamSection& section() const { return section_; }
    /// In the axes of the piece.
    Mat12 stiffness() const;
    /// Forces that stand for a force spread evenly over [from, to] of the element (0 to 1; alike: a point). In the axes of the piece.
    Vec12 spread(double from, double to, const Vec3& force, double torque_about_x) const;
    /// Forces on the element at its ends in its own axes, for nodal displacements in the axes of the piece.
    Vec12 end_forces(const Vec12& displacements) const;
    /// Displacement within the element in its own axes at 0 to 1, its own loads left out.
    Vec3 displacement_at(double place, const Vec12& displacements) const;
    /// Nodal displacements in its own axes, and the same for them: where many places are asked for.
    Vec12 to_own(const Vec12& v) const;
    Vec3 own_displacement_at(double place, const Vec12& own) const;
    /// The part of it in a direction, given in its own axes.
    double own_displacement_towards(double place, const Vec12& own, const Vec3& direction) const;

private:
    Vec12 to_piece(const Vec12& v) const;
    Mat12 own_stiffness() const;
    double length_ = 0;
    Mat3 axes_;
    BeamSection section_;
};

/// An orthotropic plate: stiff directions x (along the grain) and y (across it).
struct PlateSection {
    double thickness = 0;
    double modulus_x = 0, modulus_y = 0; ///< Pa
    double shear_xy = 0;                 ///< in the plane
    double shear_xz = 0, shear_yz = 0;   ///< through the thickness
    double poisson_xy = 0;               ///< contraction across for a strain along
};

/// What a plate carries at a point, per metre of width [N m/m and N/m]. m_x bends along x; positive stretches the face that looks to +z.
struct PlateForces {
    double m_x = 0, m_y = 0, m_xy = 0, n_x = 0, n_y = 0, n_xy = 0, q_x = 0, q_y = 0;
    double keeps_straight = 0; ///< the m_y at which a plate that m_x bends stays straight across: Poisson's share
};

/// A flat rectangle, four nodes anticlockwise seen from +z: bending with shear (assumed shear strains, exact in bending to a cylinder),
/// stretching in its plane with bending modes of its own, and a light hold against turning in the plane.
class PlateElement {
public:
    /// @param axes  rows: local x, y, z in space
    PlateElement(double length_x, double length_y, const Mat3& axes, const PlateSection& section);
    Mat24 stiffness() const;
    /// Nodal forces for a force spread evenly over a rectangle of the cell; places −1 to 1. In the axes of the piece.
    Vec24 spread(const std::array<double, 2>& from, const std::array<double, 2>& to, const Vec3& force) const;
    /// At a point of the cell, −1 to 1.
    PlateForces forces_at(double x, double y, const Vec24& displacements) const;

private:
    Vec24 to_own(const Vec24& v) const;
    Mat24 own_stiffness() const;
    Eigen::Matrix<double, 3, 24> bending_strain(double x, double y) const;
    Eigen::Matrix<double, 2, 24> shear_strain(double x, double y) const;
    Eigen::Matrix<double, 3, 24> membrane_strain(double x, double y) const;
    Eigen::Matrix<double, 3, 4> bubble_strain(double x, double y) const;
    Eigen::Matrix<double, 1, 24> drill_strain(double x, double y) const;
    Mat3 plane_matrix() const;
    Eigen::Matrix2d shear_matrix() const;
    double a_, b_;
    Mat3 axes_;
    PlateSection section_;
};

} // namespace jointwright::kernel
