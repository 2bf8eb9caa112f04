#pragma once
// SI doubles: metres. Convex polygons and convex cells in space: clipping, areas, volumes. Nothing here knows of wood.

#include <Eigen/Core>

#include <vector>

namespace jointwright::kernel {

using Vec = Eigen::Vector3d;

/// A half-space: the points p with normal · p <= offset. The normal has length 1.
struct HalfSpace {
    Vec normal;
    double offset;
    /// Distance of a point from the bounding plane, positive outside [m].
    double outside(const Vec& p) const { return normal.dot(p) - offset; }
    HalfSpace opposite() const { return {-normal, -offset}; }
};

/// A flat convex polygon, its corners in order (anticlockwise seen against `normal`).
struct Polygon {
    std::vector<Vec> corners;
    Vec normal{0, 0, 1};
    bool empty() const { return corners.size() < 3; }
};

/// A convex body bounded by half-spaces and, alike, by its faces.
struct Cell {
    std::vector<HalfSpace> sides;
    std::vector<Polygon> faces;
    bool empty() const { return faces.size() < 4; }
};

/// The part of a polygon within a half-space (may be empty).
Polygon clip(const Polygon& polygon, const HalfSpace& keep);
/// The part of a polygon within all sides of a convex body.
Polygon clip(Polygon polygon, const std::vector<HalfSpace>& keep);
/// The parts of a polygon outside a convex body: convex pieces that do not overlap.
std::vector<Polygon> subtract(const Polygon& polygon, const std::vector<HalfSpace>& body);
/// The part of a polygon that is farther than `inset` from the edge between two neighbouring corners.
Polygon inset_edge(const Polygon& polygon, const Vec& from, const Vec& to, double inset);
/// The overlap of two polygons in one plane: the first cut by the edges of the second.
Polygon overlap(const Polygon& polygon, const Polygon& other);

/// The part of a convex body within a half-space; empty when nothing thicker than rounding is left.
Cell clip(const Cell& cell, const HalfSpace& keep);
Cell clip(Cell cell, const std::vector<HalfSpace>& keep);
/// A convex body without what lies in another: convex pieces.
std::vector<Cell> subtract(const Cell& cell, const std::vector<HalfSpace>& body);

double area(const Polygon& polygon); ///< m²
double volume(const Cell& cell);     ///< m³
Vec first_moment(const Cell& cell);  ///< volume times its centre [m⁴]
/// Smallest and largest coordinates.
void bounds(const Polygon& polygon, Vec& lo, Vec& hi);
void bounds(const Cell& cell, Vec& lo, Vec& hi);

/// An axis-aligned box as a body, and a body between two rectangles (a frustum) given by eight corners in box order.
Cell box_cell(const Vec& lo, const Vec& hi);
std::vector<HalfSpace> box_sides(const Vec& lo, const Vec& hi);
/// A convex body from its faces (corners in any consistent order); sides are made from them, pointing out.
Cell cell_from_faces(std::vector<Polygon> faces);

} // namespace jointwright::kernel
