#pragma once
// Bending, shear and sag of the lying parts under every load case, by hand statics. SI doubles: metres, newtons, pascals.

#include "mechanics/cuts.hpp"
#include "mechanics/load_cases.hpp"
#include "mechanics/load_path.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Stiffness of one part for bending.
struct BendingStiffness {
    double modulus = 0;       ///< along the grain, free of shear [Pa]
    double shear_modulus = 0; ///< [Pa]
};

/// The worst of one lying copy in one load case.
struct MemberResult {
    std::size_t copy = 0, load_case = 0;
    double load = 0;      ///< down on this copy [N]
    double span = 0;      ///< between the supports about the place of the largest moment [m]
    double moment = 0;    ///< sagging positive, where the stress is largest [N m]
    double stress = 0;    ///< bending, always positive [Pa]
    double stress_at = 0; ///< along the grain from the copy's lower end [m]
    double depth = 0;     ///< net depth there [m]
    double breadth = 0;
    bool tension_at_notch = false; ///< the stretched side is the notched one
    double shear = 0;              ///< largest shear force [N]
    double shear_stress = 0;       ///< 3V/(2bd) of the net section [Pa]
    double sag = 0;         ///< against the straight line between the copy's own supports, where it is largest for its span [m]
    double lasting_sag = 0; ///< the part of it that stays
    double sag_span = 0;    ///< span that goes with it; twice the overhang at a free end [m]
    double most_sag = 0, most_sag_span = 0; ///< the largest in itself, where `sag` is the largest for its span
    // At the corner of the worst notch on the stretched side, where there is one.
    double notch_moment = 0, notch_shear = 0, notch_left = 0, notch_whole = 0, notch_breadth = 0, notch_at = 0;
    bool notch_near_end = false, notch_in_middle_third = false;
};

/// What a bearing hands down in one load case.
struct BearingForce {
    std::size_t contact = 0, upper = 0, below = 0, load_case = 0;
    double force = 0; ///< down from upper to below [N]; negative: lifts off
};

struct Statics {
    LoadPath path;
    LoadCases cases;
    std::vector<std::vector<NetStretch>> stretches; ///< by copy; empty for upright parts
    std::vector<MemberResult> members;
    std::vector<BearingForce> forces;
    std::vector<double> on_floor;       ///< by case: sum handed to the floor [N], equal to the loads
    std::vector<bool> held_by_one_edge; ///< by copy: stands out across its grain from one edge, which is not worked out
    std::vector<bool> is_beam;          ///< by copy: lies and spans between supports
};

/// Solves every case. Lying parts are beams on rigid supports, uncoupled; upright parts pass loads straight down.
/// @param stiffness  by copy
Statics solve_statics(const Piece& piece, const Facts& facts, const std::vector<Contact>& contacts,
                      const std::vector<std::vector<Cut>>& cuts, const std::vector<double>& masses,
                      const std::vector<BendingStiffness>& stiffness);

} // namespace jointwright
