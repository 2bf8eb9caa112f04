#pragma once
// A glued face in one direction: how far the two parts want to move apart, and what holding them together brings. SI doubles.

#include "mechanics/given/given.hpp"
#include "mechanics/seasons/restraint.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// One part at a glued face, in one direction of the face.
struct FaceSide {
    std::size_t copy = 0;
    double along = 0;         ///< cosine between the direction and the grain, 0 to 1
    double dry = 0, damp = 0; ///< free strain in that direction, from made
    bool across() const { return along < 0.7; }
};

/// A glued face seen in one of its two directions.
struct FaceDirection {
    std::size_t contact = 0;
    const Patch* patch = nullptr;
    Point direction{};
    double from = 0;          ///< where the glue begins along that direction [m]
    double length = 0;        ///< glued length in that direction; of several faces in one plane from the first to the last [m]
    bool in_pieces = false;   ///< several faces in one plane, with gaps between: spots hold as far apart as they stand
    FaceSide a, b;            ///< first and second part
    double dry = 0, damp = 0; ///< strain of the first less that of the second
    bool held_flat = false;   ///< something keeps the pair from bowing in this direction
    std::string_view held_by; ///< what, in words
    bool core =
        false; ///< a tenon, tail or tongue glued on both faces, or a face with end grain, dowelled or not: judged by movement
    /// Largest differential movement, made to driest or dampest, whichever is more [m].
    double movement() const;
    /// One part runs along its grain here and the other across it.
    bool crossed() const { return a.across() != b.across(); }
};

/// Every glued face of the piece in its two directions; faces left dry by `glued` are left out, glued ones cut to the glued length.
/// Faces of one contact that lie in one plane count as one, from the first edge to the last: two spots 300 mm apart restrain as much as one
/// long line; so do the faces of boards that are glued edge to edge and so move as one. Held flat or free to bow: `held_flat_by`.
std::vector<FaceDirection> glued_directions(const Given& given);

/// True for one of two opposite faces of a contact that are both large: a thin core glued on both faces, such as a loose tenon, whatever the
/// joint is called.
bool is_cheek_of_core(const Contact& contact, const Patch& patch);

/// Layers of a face direction for the restraint formula; nothing when a modulus is missing (named in `missing`).
std::optional<Restraint> restraint_at(const Given& given, const FaceDirection& face, std::string* missing = nullptr);

/// Modulus of a part in a direction at an angle to its grain, and the shear modulus that goes with it on that face.
struct DirectionalModulus {
    Stress modulus, shear_modulus;
    Stress if_tangential;       ///< the modulus, did the direction run along the rings instead
    double over_tangential = 1; ///< modulus square to the grain in this direction over that along the rings
    bool estimated = false;
    std::string source;
};
std::optional<DirectionalModulus> modulus_in(const Given& given, std::size_t copy, const Point& direction, const Point& normal);

/// Free strains of one side of a face, from made, did the direction run along the rings: of the same wood, sawn flat. Those of the side itself
/// where the law of its movement is not known.
FaceSide tangential_twin(const Given& given, const FaceDirection& face, const FaceSide& side);

/// Share of stress that is kept under slow movement, in either season.
struct SharesKept {
    double dry = 0.5, damp = 0.5;
};

/// Strain that drives a stress after slow relaxation: r_now (now + (1 − r_other) other), both strains as positive amounts. What relaxed in the other
/// season is a set that has to be undone now.
double relaxed_strain(double kept_now, double now, double kept_other, double other);

} // namespace jointwright
