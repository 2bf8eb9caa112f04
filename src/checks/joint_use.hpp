#pragma once
// One demand on a joint held against its capacity. SI doubles.

#include "bond/joint_capacity.hpp"
#include "checks/joint_demand.hpp"
#include "checks/joint_sizes.hpp"

namespace jointwright {

constexpr double kTakenByFit = 5; // N m: a dry joint takes it by its fit

/// A demand held against what the joint resists.
struct JointUse {
    double moment = 0, flat = 0, pull = 0, shear = 0; ///< N m, N m, N, N
    double factor = 0;                                ///< from a mean to what is allowed
    double crushed = 0;                               ///< the same for wood that is pressed in and does not break
    double turn_factor = 0;                           ///< that of the two which the moment takes
    double use = 0, warns_to = 1;
    bool sheared = false;     ///< its own section, handing down the shear, uses the most of it
    bool turned = false;      ///< the moment uses the most of it
    bool unheld = false;      ///< nothing that counts holds the pull
    bool works_loose = false; ///< what is too much is only that its walls are pressed in by turning
};

JointUse use_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                      const JointDemand& demand);

} // namespace jointwright
