#pragma once
// The strength of each form of joint. Each fills in what it knows and returns the name of its published expression, where it has one.

#include "bond/joints/joint_capacity.hpp"

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
    /// Stress at which the softer of the two is marked: the rail across its grain against the post along or across it [Pa]; 0 where not known.
    Stress pressed_stress(bool post_across) const;
    void say(WorkingStep step) const
    {
        if (working) working->push_back(std::move(step));
    }
};

constexpr double kCrossedGrains = 1.5707963267948966; ///< rad

/// Moment about the pressed edge at which what is drawn with that force gives way: N 0.9 z.
Moment pulled_out(const JointGround& ground, Force withdrawal, Length to_pressed_edge);
/// Says the twisting of the glued faces, and their elastic corner stress.
void say_twist(const JointGround& ground, const JointCapacity& c);

/// A tongue of wood that stands in a joint: tenon, bridle, spline.
struct Tongue {
    Length thickness{}, width{}, length{};
    Length rail_thickness{}, rail_depth{};
    const char* name = "tenon";
};
/// Moment at which a tongue breaks in bending over its width: Z f_m (rail depth/tongue width)^0.8, and over its thickness. Source: tongue_exponent.
Moment tongue_bending(const Facts& facts, const Tongue& tongue, Stress bending);
Moment tongue_bending_flat(const Facts& facts, const Tongue& tongue, Stress bending);
/// Twist about its length at which a rectangular section breaks with the same stress all over: f t² (3 w − t)/6, t the smaller side [N m].
/// Elastic theory gives 0.6 of it. Source: mechanics (sand heap).
Moment section_twist(Length one_side, Length other_side, Stress shear);
/// Fills in `tongue`, lowers `flat` to it, and `torsion`: its section, and its cheeks pressed into their walls.
void tongue_strength(const JointGround& ground, const Tongue& tongue, JointCapacity& c);
/// Says in what a tenon lies outside the published tests.
void look_at_tested_sizes(const JointGround& ground, JointCapacity& c);

std::string_view tenon_strength(const JointGround& ground, bool loose, JointCapacity& c);
void twisted_faces_strength(const JointGround& ground, JointForm form, JointCapacity& c);
std::string_view dowels_strength(const JointGround& ground, JointCapacity& c);
void housing_strength(const JointGround& ground, JointForm form, JointCapacity& c);
void dovetail_strength(const JointGround& ground, JointCapacity& c);
void sliding_dovetail_strength(const JointGround& ground, JointCapacity& c);
std::string_view finger_strength(const JointGround& ground, JointCapacity& c);
void mitre_face_strength(const JointGround& ground, JointCapacity& c);
void splined_mitre_strength(const JointGround& ground, JointCapacity& c);
void keyed_mitre_strength(const JointGround& ground, JointCapacity& c);
/// Pegs through a tenon or bridle, beside its glue.
void pegs_strength(const JointGround& ground, JointCapacity& c);

} // namespace jointwright
