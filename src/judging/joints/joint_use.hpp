#pragma once
// One demand on a joint held against its capacity. SI doubles.

#include "bond/joints/joint_capacity.hpp"
#include "judging/joints/joint_as_drawn.hpp"
#include "judging/joints/joint_demand.hpp"
#include "mechanics/prepared.hpp"

namespace jointwright {

constexpr double kTakenByFit = 5; // N m: a dry joint takes it by its fit

/// A demand held against what the joint resists.
struct JointUse {
    double moment = 0, flat = 0, torsion = 0; ///< N m: over the rail's depth, over its thickness, about the way it enters
    double pull = 0, shear = 0;               ///< N
    double factor = 0;                        ///< from a mean to what is allowed
    double crushed = 0;                       ///< the same for wood that is pressed in and does not break
    double turn_factor = 0;                   ///< that of the two which the moment takes
    double drawn = 0, twisted = 0, slid = 0;  ///< shares: of what draws on the same cheeks, of the torsion, of the shear
    double use = 0, warns_to = 1;
    bool sheared = false;     ///< its own section, handing down the shear, uses the most of it
    bool turned = false;      ///< the moment uses the most of it
    bool unheld = false;      ///< nothing that counts holds the pull
    bool twists = false;      ///< the torsion uses the most of it
    bool works_loose = false; ///< what is too much is only that its walls are pressed in by turning
};

/// u = √((M/M_r + M_f/M_fr + N/N_r)² + (T/T_r)² + (V/V_r)²): both moments and the pull draw on the same cheeks and add up, torsion and shear join by
/// squares (an estimate). In a recess the shear presses on the walls that the moment presses: there it is added to the sum.
JointUse use_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                      const JointDemand& demand);

} // namespace jointwright
