#pragma once
// What bending and shear share: of all copies and cases of a part, the one that uses most of its resistance. SI doubles.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "wood/resistance.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// The governing case of one part for one kind of strength.
struct Governing {
    const MemberResult* member = nullptr;
    const LoadCase* load_case = nullptr;
    double stress = 0, resistance = 0, use = 0, warns_to = 1;
    Verdict verdict = Verdict::pass;
    double mean = 0, depth_factor = 1;
    bool estimated = false;
    double pressed_resistance = 0; ///< of a part that is pressed along its grain as well: as a column [Pa]; 0 where it is not
    double free_length = 0;        ///< over which it may buckle then [m]
    bool across = false;           ///< of a plate: bent across its grain, held against tension across
    std::string source, note;
};

/// The worst case of a part, by verdict and then by utilisation; nothing when no copy of it spans between supports.
/// Needs the strength: callers ask `strength_of` first.
std::optional<Governing> governing_case(const Prepared& prepared, std::size_t part, StrengthKind kind);

/// The mean strength at the dampest; nullptr where neither table nor estimate has one.
const Property<Stress>* strength_of(const PartState& state, StrengthKind kind);

/// True when some copy of the part spans between supports.
bool has_beam(const Prepared& prepared, std::size_t part);

/// Steps from the mean strength to the resistance of a governing case.
Working resistance_working(const Prepared& prepared, std::size_t part, StrengthKind kind, const Governing& governing);

/// What shears a part along its grain at one place.
struct ShearThere {
    double force = 0, area = 0;           ///< N, m²
    double torsion = 0, twist_stress = 0; ///< N m, of a plate per metre of its width; Pa
    double stress = 0;                    ///< in all [Pa]
    bool plate = false;
};
/// Steps from forces to the shear stress.
void add_shear_steps(const Prepared& prepared, const ShearThere& shear, Working& working);

/// "slat #5, one person standing on slat #5, at its middle; black cherry".
std::string where_words(const Prepared& prepared, const MemberResult& member);

} // namespace jointwright
