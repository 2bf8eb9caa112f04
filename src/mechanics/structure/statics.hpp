#pragma once
// What every part, joint and foot of a piece carries under every load case, read from the piece solved as one frame. SI doubles: metres, newtons,
// pascals.

#include "mechanics/frame/floor_state.hpp"
#include "mechanics/given/given.hpp"
#include "mechanics/loads/load_cases.hpp"
#include "mechanics/structure/joint_force.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

class Structure;

/// The worst of one lying copy in one load case.
struct MemberResult {
    std::size_t copy = 0, load_case = 0;
    double load = 0;        ///< down on this copy [N]
    double span = 0;        ///< between the supports about the place of the largest moment [m]
    double moment = 0;      ///< sagging positive, where the stress is largest [N m]
    double side_moment = 0; ///< level bending at the same place [N m]
    double stress = 0;      ///< along the grain: bending both ways and what it is pulled or pressed, always positive [Pa]
    double axial = 0, axial_stress = 0; ///< pull along the grain there; pressed: negative [N, Pa]
    double stress_at = 0;               ///< along the grain from the copy's lower end [m]
    double depth = 0;                   ///< net depth there [m]
    double breadth = 0;
    bool tension_at_notch = false; ///< the stretched side is the notched one
    // Where shear along the grain is largest.
    double shear = 0;          ///< shear force [N]
    double shear_stress = 0;   ///< 3V/(2A) of the net section and the twist [Pa]
    double shear_area = 0;     ///< A [m²]
    double torsion = 0;        ///< about the grain; of a plate per metre of its width [N m]
    double torsion_stress = 0; ///< what of the shear stress comes of twist [Pa]
    double sag = 0;         ///< against the straight line between the copy's own supports, where it is largest for its span [m]
    double lasting_sag = 0; ///< the part of it that stays
    double sag_span = 0;    ///< span that goes with it; twice the overhang at a free end [m]
    double most_sag = 0, most_sag_span = 0;                 ///< the largest in itself, where `sag` is the largest for its span
    bool sag_overhangs = false, most_sag_overhangs = false; ///< these spans are twice an overhang
    double across_stress = 0;                               ///< of a plate: bending across the grain that its loads ask for [Pa]
    /// The same with joints a third and three times as stiff as estimated, and on a floor without friction; only for cases that may govern.
    struct Bound {
        double stress = 0, across_stress = 0; ///< Pa
        double sag = 0, most_sag = 0;         ///< m
    };
    struct Bounds {
        Bound soft, stiff, slick;
    };
    std::optional<Bounds> bounds;
    // At the corner of the worst notch on the stretched side, where there is one.
    double notch_moment = 0, notch_shear = 0, notch_left = 0, notch_whole = 0, notch_breadth = 0, notch_at = 0;
    bool notch_near_end = false, notch_in_middle_third = false;
};

/// What a bearing hands down in one load case.
struct BearingForce {
    std::size_t contact = 0, upper = 0, below = 0, load_case = 0;
    double force = 0; ///< down from upper to below [N]; negative: lifts off
};

/// The worst of one upright copy in one load case.
struct PostResult {
    std::size_t copy = 0, load_case = 0;
    double thrust = 0;                        ///< pressing positive [N]
    double moment_width = 0, moment_face = 0; ///< bending in the plane of the width and of the thickness, always positive [N m]
    double bending_stress = 0, thrust_stress = 0; ///< Pa
    double at = 0;                                ///< along the grain from the lower end [m]
    double area = 0, depth_width = 0, depth_face = 0;
    double shear = 0, shear_stress = 0, shear_area = 0, shear_at = 0, torsion = 0, torsion_stress = 0; ///< as of a lying one
};

/// How far the piece gives sideways in one load case.
struct SwayResult {
    double sway = 0;   ///< largest sideways movement of any part [m]
    double height = 0; ///< of the place that moves so far, above the floor [m]
    std::size_t copy = 0;
    double soft = 0, stiff = 0; ///< with joints a third and three times as stiff as estimated; 0 where not worked out
    double play = 0;            ///< of it, what the clearance of joints lets it lean before they press
};

/// The screw on the wall that has most to bear of those that hold a copy.
struct WallScrew {
    std::size_t copy = 0, load_case = 0;
    double pull = 0;   ///< out of the wall [N]
    double across = 0; ///< N
};

/// A piece that sways more than this share of the height, or a part that sags more than this share of its span, has folded: no frame goes so far
/// and comes back.
constexpr double kFolds = 0.1;

struct Statics {
    LoadCases cases;
    std::vector<std::vector<NetStretch>> stretches; ///< by copy; empty for upright parts
    std::vector<MemberResult> members;
    std::vector<PostResult> posts;
    std::vector<BearingForce> forces;
    std::vector<JointForce> joints;         ///< of every joint in every case
    std::vector<SwayResult> sways;          ///< by case
    std::vector<kernel::FloorState> floors; ///< by case: how the floor took it
    std::vector<double> on_floor;           ///< by case: sum handed to the floor or wall [N], equal to the loads
    std::vector<bool> settled;              ///< by case: false where the piece or a part of it comes away
    std::vector<bool> is_beam;              ///< by copy: lies and spans between supports
    std::vector<WallScrew> on_wall;         ///< by copy that is screwed to the wall
    std::vector<std::size_t> loose;         ///< copies that nothing keeps from moving; what else a frame tells is left out then
    std::vector<std::size_t> drawn_out;     ///< contacts that friction alone keeps from being drawn out
    std::shared_ptr<const Structure> frame; ///< none when nothing is to be carried
};

/// Finds the load cases and solves every one of them on the piece as one frame.
Statics statics_of(const Given& given);

} // namespace jointwright
