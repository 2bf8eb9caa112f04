// SI doubles: metres, newtons. The plate element of a frame: a rectangle, so that every derivative is a plain quotient.

#include "mechanics/frame/elements.hpp"

#include <Eigen/LU>

#include <cmath>

namespace jointwright::kernel {

namespace {

constexpr std::array<double, 4> kX{-1, 1, 1, -1}, kY{-1, -1, 1, 1}; // corners
constexpr double kGauss = 0.57735026918962576;
constexpr double kDrill =
    0.05; // share of the in-plane shear modulus that holds a node's turn in the plane: it must only not be free

double n_at(std::size_t i, double x, double y) { return 0.25 * (1 + kX[i] * x) * (1 + kY[i] * y); }
int first(std::size_t i) { return 6 * static_cast<int>(i); }

} // namespace

PlateElement::PlateElement(double length_x, double length_y, const Mat3& axes, const PlateSection& section)
    : a_(length_x), b_(length_y), axes_(axes), section_(section)
{
}

Vec24 PlateElement::to_own(const Vec24& v) const
{
    Vec24 out;
    for (int k = 0; k < 8; ++k) out.segment<3>(3 * k) = axes_ * v.segment<3>(3 * k);
    return out;
}

Mat3 PlateElement::plane_matrix() const
{
    const double nu_yx = section_.poisson_xy * section_.modulus_y / section_.modulus_x, d = 1 - section_.poisson_xy * nu_yx;
    Mat3 m;
    m << section_.modulus_x / d, nu_yx * section_.modulus_x / d, 0, //
        nu_yx * section_.modulus_x / d, section_.modulus_y / d, 0,  //
        0, 0, section_.shear_xy;
    return m;
}

/// Shear stiffness per width, softened by what the straight sides of the cell would add to bending (residual bending flexibility, MacNeal
/// 1978): the cell then bends to a cylinder as a Timoshenko beam does.
Eigen::Matrix2d PlateElement::shear_matrix() const
{
    const double t = section_.thickness, t3 = t * t * t / 12;
    const Mat3 plane = plane_matrix();
    const double along = 1 / (5.0 / 6 * section_.shear_xz * t) + a_ * a_ / (12 * plane(0, 0) * t3),
                 across = 1 / (5.0 / 6 * section_.shear_yz * t) + b_ * b_ / (12 * plane(1, 1) * t3);
    return Eigen::Vector2d(1 / along, 1 / across).asDiagonal();
}

// Displacements within the plate: u = z θ_y, v = −z θ_x; curvatures are those of u and v.
Eigen::Matrix<double, 3, 24> PlateElement::bending_strain(double x, double y) const
{
    Eigen::Matrix<double, 3, 24> s = Eigen::Matrix<double, 3, 24>::Zero();
    for (std::size_t i = 0; i < 4; ++i) {
        const double nx = kX[i] * (1 + kY[i] * y) / (2 * a_), ny = kY[i] * (1 + kX[i] * x) / (2 * b_);
        s(0, first(i) + 4) = nx;
        s(1, first(i) + 3) = -ny;
        s(2, first(i) + 4) = ny;
        s(2, first(i) + 3) = -nx;
    }
    return s;
}

// γ_xz taken at the middles of the sides that run along x, γ_yz at those that run along y, straight between them (Bathe and Dvorkin 1985).
Eigen::Matrix<double, 2, 24> PlateElement::shear_strain(double x, double y) const
{
    Eigen::Matrix<double, 2, 24> s = Eigen::Matrix<double, 2, 24>::Zero();
    for (std::size_t i = 0; i < 4; ++i) {
        const double along = (1 + kY[i] * y) / 2, across = (1 + kX[i] * x) / 2;
        s(0, first(i) + 2) = along * kX[i] / a_;
        s(0, first(i) + 4) = along / 2;
        s(1, first(i) + 2) = across * kY[i] / b_;
        s(1, first(i) + 3) = -across / 2;
    }
    return s;
}

Eigen::Matrix<double, 3, 24> PlateElement::membrane_strain(double x, double y) const
{
    Eigen::Matrix<double, 3, 24> s = Eigen::Matrix<double, 3, 24>::Zero();
    for (std::size_t i = 0; i < 4; ++i) {
        const double nx = kX[i] * (1 + kY[i] * y) / (2 * a_), ny = kY[i] * (1 + kX[i] * x) / (2 * b_);
        s(0, first(i)) = nx;
        s(1, first(i) + 1) = ny;
        s(2, first(i)) = ny;
        s(2, first(i) + 1) = nx;
    }
    return s;
}

/// Modes u, v = 1 − x², 1 − y² of the cell's own, with which it bends in its plane without shear (Wilson and others 1973).
Eigen::Matrix<double, 3, 4> PlateElement::bubble_strain(double x, double y) const
{
    Eigen::Matrix<double, 3, 4> s = Eigen::Matrix<double, 3, 4>::Zero();
    const double dx = -2 * x * 2 / a_, dy = -2 * y * 2 / b_;
    s(0, 0) = dx; // u: 1 − x²
    s(2, 1) = dy; // u: 1 − y²
    s(2, 2) = dx; // v: 1 − x²
    s(1, 3) = dy; // v: 1 − y²
    return s;
}

/// The node's turn in the plane less that of the plate itself.
Eigen::Matrix<double, 1, 24> PlateElement::drill_strain(double x, double y) const
{
    Eigen::Matrix<double, 1, 24> s = Eigen::Matrix<double, 1, 24>::Zero();
    for (std::size_t i = 0; i < 4; ++i) {
        const double nx = kX[i] * (1 + kY[i] * y) / (2 * a_), ny = kY[i] * (1 + kX[i] * x) / (2 * b_);
        s(0, first(i)) = ny / 2;
        s(0, first(i) + 1) = -nx / 2;
        s(0, first(i) + 5) = n_at(i, x, y);
    }
    return s;
}

Mat24 PlateElement::own_stiffness() const
{
    const double t = section_.thickness, cell = a_ * b_ / 4;
    const Mat3 plane = plane_matrix();
    const Eigen::Matrix2d shear = shear_matrix();
    Mat24 k = Mat24::Zero();
    Eigen::Matrix<double, 4, 24> mixed = Eigen::Matrix<double, 4, 24>::Zero();
    Eigen::Matrix4d own = Eigen::Matrix4d::Zero();
    for (const double x : {-kGauss, kGauss})
        for (const double y : {-kGauss, kGauss}) {
            const auto b = bending_strain(x, y), m = membrane_strain(x, y);
            const auto s = shear_strain(x, y);
            const auto w = bubble_strain(x, y);
            const auto d = drill_strain(x, y);
            k += cell * (t * t * t / 12 * b.transpose() * plane * b + s.transpose() * shear * s + t * m.transpose() * plane * m +
                         kDrill * section_.shear_xy * t * d.transpose() * d);
            mixed += cell * t * w.transpose() * plane * m;
            own += cell * t * w.transpose() * plane * w;
        }
    k -= mixed.transpose() * own.inverse() * mixed;
    return k;
}

Mat24 PlateElement::stiffness() const
{
    Mat24 turn = Mat24::Zero();
    for (int i = 0; i < 8; ++i) turn.block<3, 3>(3 * i, 3 * i) = axes_;
    return turn.transpose() * own_stiffness() * turn;
}

Vec24 PlateElement::spread(const std::array<double, 2>& from, const std::array<double, 2>& to, const Vec3& force) const
{
    const Vec3 f = axes_ * force;
    Vec24 own = Vec24::Zero();
    // Out of the plane: the cubic shapes of a beam along the grain, where plates of wood carry; straight ones across it.
    const auto put = [&](double x, double y, double weight) {
        const double s = (1 + x) / 2, rise = 3 * s * s - 2 * s * s * s;
        for (std::size_t i = 0; i < 4; ++i) {
            const bool far = kX[i] > 0;
            const double across = (1 + kY[i] * y) / 2;
            own(first(i)) += weight * f.x() * n_at(i, x, y);
            own(first(i) + 1) += weight * f.y() * n_at(i, x, y);
            own(first(i) + 2) += weight * f.z() * (far ? rise : 1 - rise) * across;
            // A turn about +y lowers +z along x.
            own(first(i) + 4) -= weight * f.z() * a_ * (far ? s * s * s - s * s : s - 2 * s * s + s * s * s) * across;
        }
    };
    constexpr std::array<double, 3> place{-0.7745966692414834, 0, 0.7745966692414834}, weight{5.0 / 18, 8.0 / 18, 5.0 / 18};
    for (std::size_t g = 0; g < 3; ++g)
        for (std::size_t h = 0; h < 3; ++h)
            put((from[0] + to[0]) / 2 + place[g] * (to[0] - from[0]) / 2,
                (from[1] + to[1]) / 2 + place[h] * (to[1] - from[1]) / 2, weight[g] * weight[h]);
    Vec24 out;
    for (int k = 0; k < 8; ++k) out.segment<3>(3 * k) = axes_.transpose() * own.segment<3>(3 * k);
    return out;
}

PlateForces PlateElement::forces_at(double x, double y, const Vec24& displacements) const
{
    const Vec24 u = to_own(displacements);
    const double t = section_.thickness;
    const Mat3 plane = plane_matrix();
    const Vec3 m = t * t * t / 12 * plane * (bending_strain(0, 0) * u);
    const Eigen::Vector2d q = shear_matrix() * (shear_strain(0, 0) * u);
    const Vec3 n = t * plane * (membrane_strain(0, 0) * u);
    // Within a cell the moment runs straight, at the slope that the shear gives it.
    return {m(0) + q(0) * x * a_ / 2,        m(1) + q(1) * y * b_ / 2, m(2), n(0), n(1), n(2), q(0), q(1),
            plane(1, 0) / plane(0, 0) * m(0)};
}

} // namespace jointwright::kernel
