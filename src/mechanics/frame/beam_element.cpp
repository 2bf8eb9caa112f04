// SI doubles: metres, newtons. The beam element of a frame.

#include "mechanics/frame/elements.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright::kernel {

namespace {

/// Shape functions of a Timoshenko element at s = x/L for bending in one plane: displacement for a unit of (v1, turn1, v2, turn2).
/// Exact between the nodes of an unloaded element; p = 12 E I/(G A' L²).
Eigen::Vector4d bent_shape(double s, double length, double p)
{
    const double s2 = s * s, s3 = s2 * s, c = 1 / (1 + p);
    return {c * (1 - 3 * s2 + 2 * s3 + p * (1 - s)), c * length * (s - 2 * s2 + s3 + p / 2 * (s - s2)),
            c * (3 * s2 - 2 * s3 + p * s), c * length * (s3 - s2 - p / 2 * (s - s2))};
}

double shear_ratio(double bending, double shear, double length)
{
    return shear > 0 ? 12 * bending / (shear * length * length) : 0;
}

} // namespace

Mat3 cross_matrix(const Vec3& r)
{
    Mat3 m;
    m << 0, -r.z(), r.y(), r.z(), 0, -r.x(), -r.y(), r.x(), 0;
    return m;
}

BeamElement::BeamElement(const Vec3& from, const Vec3& to, const Vec3& y, const BeamSection& section) : section_(section)
{
    const Vec3 along = to - from;
    length_ = along.norm();
    const Vec3 x = along / length_;
    const Vec3 across = (y - y.dot(x) * x).normalized();
    axes_.row(0) = x;
    axes_.row(1) = across;
    axes_.row(2) = x.cross(across);
}

Vec12 BeamElement::to_own(const Vec12& v) const
{
    Vec12 out;
    for (int k = 0; k < 4; ++k) out.segment<3>(3 * k) = axes_ * v.segment<3>(3 * k);
    return out;
}

Vec12 BeamElement::to_piece(const Vec12& v) const
{
    Vec12 out;
    for (int k = 0; k < 4; ++k) out.segment<3>(3 * k) = axes_.transpose() * v.segment<3>(3 * k);
    return out;
}

Mat12 BeamElement::own_stiffness() const
{
    const double l = length_;
    Mat12 k = Mat12::Zero();
    const auto pair = [&k](int i, int j, double value) {
        k(i, i) += value;
        k(j, j) += value;
        k(i, j) -= value;
        k(j, i) -= value;
    };
    pair(0, 6, section_.axial / l);
    pair(3, 9, section_.twisting / l);
    // In the x-y plane a turn about +z lifts +y; in the x-z plane a turn about +y lowers +z.
    const auto bend = [&](int v1, int t1, int v2, int t2, double sign, double bending, double shear) {
        const double p = shear_ratio(bending, shear, l), c = bending / ((1 + p) * l * l * l);
        const std::array<int, 4> at{v1, t1, v2, t2};
        const std::array<double, 4> s{1, sign, 1, sign};
        Eigen::Matrix4d m;
        m << 12, 6 * l, -12, 6 * l,                          //
            6 * l, (4 + p) * l * l, -6 * l, (2 - p) * l * l, //
            -12, -6 * l, 12, -6 * l,                         //
            6 * l, (2 - p) * l * l, -6 * l, (4 + p) * l * l;
        for (int i = 0; i < 4; ++i)
            for (int j = 0; j < 4; ++j)
                k(at[static_cast<std::size_t>(i)], at[static_cast<std::size_t>(j)]) +=
                    c * m(i, j) * s[static_cast<std::size_t>(i)] * s[static_cast<std::size_t>(j)];
    };
    bend(1, 5, 7, 11, 1, section_.bending_y, section_.shear_y);
    bend(2, 4, 8, 10, -1, section_.bending_z, section_.shear_z);
    return k;
}

Mat12 BeamElement::stiffness() const
{
    const Mat12 own = own_stiffness();
    Mat12 k;
    for (int i = 0; i < 4; ++i)
        for (int j = 0; j <= i; ++j) {
            k.block<3, 3>(3 * i, 3 * j) = axes_.transpose() * own.block<3, 3>(3 * i, 3 * j) * axes_;
            if (j < i) k.block<3, 3>(3 * j, 3 * i) = k.block<3, 3>(3 * i, 3 * j).transpose();
        }
    return k;
}

Vec12 BeamElement::spread(double from, double to, const Vec3& force, double torque_about_x) const
{
    const Vec3 f = axes_ * force;
    const double py = shear_ratio(section_.bending_y, section_.shear_y, length_),
                 pz = shear_ratio(section_.bending_z, section_.shear_z, length_);
    Vec12 own = Vec12::Zero();
    const auto put = [&](double s, double weight) {
        own(0) += weight * f.x() * (1 - s);
        own(6) += weight * f.x() * s;
        own(3) += weight * torque_about_x * (1 - s);
        own(9) += weight * torque_about_x * s;
        const Eigen::Vector4d y = bent_shape(s, length_, py), z = bent_shape(s, length_, pz);
        own(1) += weight * f.y() * y(0);
        own(5) += weight * f.y() * y(1);
        own(7) += weight * f.y() * y(2);
        own(11) += weight * f.y() * y(3);
        own(2) += weight * f.z() * z(0);
        own(4) -= weight * f.z() * z(1);
        own(8) += weight * f.z() * z(2);
        own(10) -= weight * f.z() * z(3);
    };
    if (to - from < 1e-9) {
        put(from, 1);
    } else {
        // Three-point Gauss: exact for the cubic shapes.
        constexpr std::array<double, 3> place{-0.7745966692414834, 0, 0.7745966692414834}, weight{5.0 / 18, 8.0 / 18, 5.0 / 18};
        for (std::size_t g = 0; g < 3; ++g) put((from + to) / 2 + place[g] * (to - from) / 2, weight[g]);
    }
    return to_piece(own);
}

Vec12 BeamElement::end_forces(const Vec12& displacements) const
{
    // The rows of own_stiffness() written out: this is read for every beam in every load case.
    const Vec12 u = to_own(displacements);
    const double l = length_;
    Vec12 f;
    f(0) = section_.axial / l * (u(0) - u(6));
    f(3) = section_.twisting / l * (u(3) - u(9));
    const auto bend = [&](int v1, int t1, int v2, int t2, double sign, double bending, double shear) {
        const double p = shear_ratio(bending, shear, l), c = bending / ((1 + p) * l * l * l);
        const double v = u(v1) - u(v2), first = sign * u(t1), second = sign * u(t2);
        f(v1) = c * (12 * v + 6 * l * (first + second));
        f(t1) = sign * c * l * (6 * v + l * ((4 + p) * first + (2 - p) * second));
        f(t2) = sign * c * l * (6 * v + l * ((2 - p) * first + (4 + p) * second));
        f(v2) = -f(v1);
    };
    bend(1, 5, 7, 11, 1, section_.bending_y, section_.shear_y);
    bend(2, 4, 8, 10, -1, section_.bending_z, section_.shear_z);
    f(6) = -f(0);
    f(9) = -f(3);
    return f;
}

Vec3 BeamElement::displacement_at(double s, const Vec12& displacements) const
{
    return own_displacement_at(s, to_own(displacements));
}

Vec3 BeamElement::own_displacement_at(double s, const Vec12& u) const
{
    const Eigen::Vector4d y = bent_shape(s, length_, shear_ratio(section_.bending_y, section_.shear_y, length_)),
                          z = bent_shape(s, length_, shear_ratio(section_.bending_z, section_.shear_z, length_));
    return {u(0) * (1 - s) + u(6) * s, y.dot(Eigen::Vector4d(u(1), u(5), u(7), u(11))),
            z.dot(Eigen::Vector4d(u(2), -u(4), u(8), -u(10)))};
}

double BeamElement::own_displacement_towards(double s, const Vec12& u, const Vec3& d) const
{
    constexpr double square = 1e-12; // of a direction: it has no share
    double sum = d.x() * (u(0) * (1 - s) + u(6) * s);
    if (std::abs(d.y()) > square)
        sum += d.y() * bent_shape(s, length_, shear_ratio(section_.bending_y, section_.shear_y, length_))
                           .dot(Eigen::Vector4d(u(1), u(5), u(7), u(11)));
    if (std::abs(d.z()) > square)
        sum += d.z() * bent_shape(s, length_, shear_ratio(section_.bending_z, section_.shear_z, length_))
                           .dot(Eigen::Vector4d(u(2), -u(4), u(8), -u(10)));
    return sum;
}

} // namespace jointwright::kernel
