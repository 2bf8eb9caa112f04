#pragma once
// Where parts touch or are let into each other, found from geometry alone. SI doubles: metres.

#include "piece/model/piece.hpp"
#include "piece/model/space.hpp"
#include "piece/text/fault.hpp"

#include <optional>
#include <vector>

namespace jointwright {

/// One face of a contact: a convex polygon in space and how both grains meet it.
struct Patch {
    std::vector<Point> outline; ///< in order, in the plane of the face
    Point normal{};             ///< unit, out of the first part into the second
    double area = 0;            ///< m²
    Box bounds;                 ///< box around the outline
    /// Cosine between each part's grain and the normal is near 0 for side grain, near 1 for end grain.
    bool end_grain_first = false, end_grain_second = false;
    /// Angle between the two grains in the plane of the face, 0 to π/2 [rad]; none where either shows end grain.
    std::optional<double> grain_angle;
    /// A cheek of a tenon, bridle or dovetail, a face of a housing: part of a core glued on both sides or of a shoulder.
    enum class Role { face, cheek, edge, shoulder, bottom, wall } role = Role::face;
    double bears = 1; ///< share of what presses on it that it takes: less on a sliver of a dry face
};

/// All faces between two copies.
struct Contact {
    std::size_t first = 0, second = 0;         ///< copies; in the order of the joint's `between` where there is one
    std::optional<std::size_t> joint;          ///< index into Piece::joints; none: dry, rests and presses
    std::vector<Patch> patches;                ///< largest first; never empty
    std::optional<Box> shared;                 ///< box around the space that both are drawn in, where they are
    double shared_volume = 0;                  ///< m³
    double area() const;                       ///< sum of the faces, m²
    std::optional<double> grain_angle() const; ///< of the largest face
};

struct ContactSearch {
    std::vector<Contact> contacts;
    Faults faults; ///< joint-apart, parts-overlap, a pair joined twice
};

/// Finds every contact of the piece. Quick verdict for far-apart pairs by a sweep along the longest axis.
ContactSearch find_contacts(const Piece& piece);

} // namespace jointwright
