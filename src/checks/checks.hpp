#pragma once
// The checks, one file each: pure functions from the prepared piece to findings. The registry lists them.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <memory>
#include <vector>

namespace jointwright {

std::vector<Finding> check_seasonal_size(const Prepared& prepared);
std::vector<Finding> check_slat_gap(const Prepared& prepared);
std::vector<Finding> check_bind(const Prepared& prepared);
std::vector<Finding> check_cup(const Prepared& prepared);
std::vector<Finding> check_out_of_square(const Prepared& prepared);
std::vector<Finding> check_lamination_bow(const Prepared& prepared);
std::vector<Finding> check_mitre_gap(const Prepared& prepared);
std::vector<Finding> check_cross_grain(const Prepared& prepared);
std::vector<Finding> check_groove_room(const Prepared& prepared);
std::vector<Finding> check_slot_length(const Prepared& prepared);
std::vector<Finding> check_glue_line(const Prepared& prepared);
std::vector<Finding> check_joint_capacity(const Prepared& prepared);
std::vector<Finding> check_fastener(const Prepared& prepared);
std::vector<Finding> check_glue_suits(const Prepared& prepared);
std::vector<Finding> check_assembly_time(const Prepared& prepared);
std::vector<Finding> check_clamping(const Prepared& prepared);
std::vector<Finding> check_sag(const Prepared& prepared);
std::vector<Finding> check_bending(const Prepared& prepared);
std::vector<Finding> check_shear(const Prepared& prepared);
std::vector<Finding> check_notch(const Prepared& prepared);
std::vector<Finding> check_bearing(const Prepared& prepared);
std::vector<Finding> check_leg(const Prepared& prepared);
std::vector<Finding> check_rack(const Prepared& prepared);
std::vector<Finding> check_tip(const Prepared& prepared);
std::vector<Finding> check_creep(const Prepared& prepared);
std::vector<Finding> check_stands(const Prepared& prepared);
std::vector<Finding> check_let_ins(const Prepared& prepared);
std::vector<Finding> check_dust(const Prepared& prepared);

/// Findings of one combination of woods and ring cuts.
struct CombinationFindings {
    std::shared_ptr<const Prepared> prepared;
    std::vector<Finding> findings;
};

/// What hangs on not knowing the wood: one finding for each [[wood]] with a list of species.
std::vector<Finding> check_species_unsure(const Piece& piece, const std::vector<CombinationFindings>& runs);

} // namespace jointwright
