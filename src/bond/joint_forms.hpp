#pragma once
// The strength of each form of joint. Each fills in what it knows and returns the name of its published expression, where it has one.

#include "bond/joint_capacity.hpp"

namespace jointwright {

/// What every form works from.
struct JointGround {
    const Facts& facts;
    const JointSizes& sizes;
    const JointWoods& woods;
    Working* working = nullptr;

    /// Mean shear strength of a side-grain glue line at an angle between the grains, lessened by the fit [Pa]. Nothing when dry.
    Stress glue_strength_at(double grain_angle, bool say = true) const;
    /// Shear strength along the grain of the weaker wood [Pa].
    Stress weaker_shear() const;
    void say(WorkingStep step) const
    {
        if (working) working->push_back(std::move(step));
    }
};

std::string_view tenon_strength(const JointGround& ground, bool loose, JointCapacity& c);
void twisted_faces_strength(const JointGround& ground, JointForm form, JointCapacity& c);
std::string_view dowels_strength(const JointGround& ground, JointCapacity& c);
void housing_strength(const JointGround& ground, JointForm form, JointCapacity& c);
void dovetail_strength(const JointGround& ground, JointCapacity& c);
void sliding_dovetail_strength(const JointGround& ground, JointCapacity& c);
std::string_view finger_strength(const JointGround& ground, JointCapacity& c);
void mitre_strength(const JointGround& ground, JointCapacity& c);
void splined_mitre_strength(const JointGround& ground, JointCapacity& c);
void keyed_mitre_strength(const JointGround& ground, JointCapacity& c);
/// Pegs through a tenon or bridle, beside its glue.
void pegs_strength(const JointGround& ground, JointCapacity& c);

} // namespace jointwright
