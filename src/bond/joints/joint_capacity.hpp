#pragma once
// Mean and lower strength of whole joints: the published expression where there is one, beside the mechanics of the glue line.

#include "bond/glue/glue_line.hpp"
#include "bond/glue/glue_patch.hpp"
#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"
#include "wood/state.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Kinds of joints whose strength can be reckoned. The rail is the part with the tenon, tails or dowels, the post the other.
enum class JointForm {
    tenon,
    loose_tenon,
    bridle,
    lap,
    dowels,
    housing,
    groove,
    dovetail,
    sliding_dovetail,
    finger,
    mitre,
    splined_mitre,
    keyed_mitre
};
std::string_view name_of(JointForm form); ///< "sliding dovetail"

/// Sizes of a joint. Which of them count depends on the form.
struct JointSizes {
    Length rail_thickness{}, rail_depth{}; ///< section of the rail; the depth lies in the plane in which the joint is bent
    /// Tenon, bridle: thickness, width along the rail's depth, length into the post. Lap: width along the depth, length. Dovetail: `thickness`
    /// of the tails' part, `length` that of the pins' part. Sliding dovetail, housing: `width` along the slide, `length` the depth let in.
    /// Finger joint: `length` of the fingers, `width` from finger to finger. Key: `thickness`, `length` its depth from the corner. Spline:
    /// `thickness`, `length` its depth in either part. Housing, groove: `thickness` of what is let in (0: the rail's own).
    Length thickness{}, width{}, length{};
    Length diameter{};   ///< of dowels; `length` is the dowel's own, half of it in each part
    int count = 1;       ///< dowels, tails, keys
    Length clearance{};  ///< fit, each side
    Length off_middle{}; ///< tenon: its middle from the middle of the rail's depth, either way
    double slope = 8;    ///< of tails, 1 in so many; 0: straight, a comb joint
    Length lip{};        ///< housing, groove, sliding dovetail: wood of the post left beside it where it is pressed; 0: not told
    bool along_post = false; ///< housing, groove, sliding dovetail: runs along the post's grain, so that glue on its walls counts
    bool grain_enters =
        true;            ///< the same: the rail's grain goes into the post; false for a batten, whose grain runs along the slide
    Length post_depth{}; ///< housing, groove, sliding dovetail: thickness of the post where it is let in; 0: not told
    struct Pegs {
        Length diameter{};
        int count = 0;
        Length cheek{}; ///< wood of the post on either side of the tenon
    };
    Pegs pegs; ///< through post and tenon, at the middle of the tenon's length, of the rail's wood
    struct Wedge {
        int count = 0;
        Length beyond{}; ///< wood of the tenon beyond it
    };
    Wedge wedge; ///< driven through the end of a tenon that comes out of the post
    /// Mitre: angle between the rail's grain and the normal of the cut [rad]; 45° where both members are equally wide.
    double tilt = 0.78539816339744831;
};

/// What the two parts are made of.
struct JointWoods {
    const WoodState* rail = nullptr;
    const WoodState* post = nullptr;
    std::string rail_name, post_name;
    const GlueRecord* glue = nullptr; ///< none: dry, so that only shape holds
};

/// A size that lies outside the published tests, and what they cover.
struct UntestedSize {
    const char* what = ""; ///< "long"
    Length size{}, least{}, most{};
};

/// All strengths are means.
struct JointCapacity {
    Moment mean{};  ///< in the plane of the rail's depth: the lowest of what draws the joint apart and of its own section
    Moment lower{}; ///< what one joint in twenty falls short of
    double lower_share = 0.75; ///< of the mean
    Moment flat{};    ///< across that plane: the rail's thickness is its depth then; 0 where nothing of the kind is reckoned
    Moment torsion{}; ///< about the way the rail enters, by what breaks; 0 where nothing of the kind is reckoned
    Moment torsion_pressed{}; ///< the same by wood that is pressed in; 0 where that does not limit it
    Force withdrawal{};       ///< pulled straight out
    Force face_shear{};       ///< along its glued face; 0: as `withdrawal`
    Force section_shear{};    ///< of the tenon's or the dowels' own section; 0 where there is none
    Force pressed{};          ///< on the wall of a recess, where the softer wood begins to be crushed; 0 where there is none
    std::optional<Moment> published; ///< by the published expression
    Moment glue_line{};              ///< by the mechanics of the glue line
    Moment tongue{};                 ///< of the section of the tenon, bridle or spline itself; 0 where there is none
    Moment twist{};                  ///< of the glued faces alone, the same stress all over; 0 where it does not apply
    Moment corner{};                 ///< elastic, at first failure in a corner: for comparison only
    Area glued{};                    ///< side grain that counts
    bool pressed_shoulder = false;
    bool by_shape = false;      ///< bears by its shape what presses into it, with or without glue
    Moment shape{};             ///< by its parts pressing on each other, without glue or pegs; 0 where not reckoned
    Moment shape_breaks{};      ///< at which the wood beside the recess breaks off then; 0 where that does not limit it
    bool flat_by_shape = false; ///< `flat` is such pressing
    Force wedge{};              ///< pull that tails bear by their slope alone, or a wedge by the wood beyond it
    Force pegs{};               ///< pull that the pegs bear
    Moment pegged{};            ///< moment of the pegs about the pressed shoulder
    std::string pegs_give;      ///< how the pegged joint gives way first
    std::string governs; ///< "the glue line", "its shape", "the pegs", "the tenon's own section", or the published expression
    std::vector<UntestedSize> untested; ///< of a tenon: length, thickness
    std::vector<std::string> range;     ///< what lies outside the range of a published expression, or that there is none
    std::vector<std::string> advice;    ///< proportions: common practice, no source
};

/// Strength of a joint; nothing when a wood lacks a strength that it needs: shear; for tenons, bridles, splines and finger joints bending;
/// for laps and mitres tension across the grain.
///
/// Tenon whose shoulder presses on the post: M = f_crossed A 0.9 z, z from the tenon's middle to the pressed edge; beside it Erdil and others 2005,
/// M = a b (0.25 W + 0.78 d) L^0.8 S with a b = 0.8. No shoulder, bridle, lap: T_u = f_crossed ∫ρ dA. Its own section breaks at
/// Z f_m (rail depth/tenon width)^0.8; the lowest of them counts. Dowels: Eckelman's withdrawal against f_crossed π D L/2, at least 5 MPa of surface;
/// M = F (d1 + d2/2) for two. Finger joint: the published share of the bending strength against shear on the fingers' flanks. Housing, groove:
/// pressing on their walls, f_90 b L²/6 when turned, and shear of the wood beside them. Tails: besides their glue the pressing on their slopes.
/// Mitre: mitre_strength, in bending over its face; with a spline the twisting of its faces. Pegs: yield of a wooden pin in double shear.
/// Glue, shape and pegs are not added up: the strongest of them counts, each being there when the others have gone; a peg through a glued tenon
/// takes a fifth from it. Lower strength 0.75 of the mean for tenons, 0.67 for the rest.
/// Laws: never more with more clearance; never more with a weaker wood.
/// Leaves out: splitting of the post, crushing at the shoulder, wear.
/// Sources beside each constant in data/joints.toml; checked in tests/published/joint_tests_test.cpp.
std::optional<JointCapacity> joint_capacity(const Facts& facts, JointForm form, const JointSizes& sizes, const JointWoods& woods,
                                            Working* working = nullptr);

/// Moment by the published expression for rectangular tenons with the shear strength of the wood along the grain [N m].
Moment tenon_expression(const Facts& facts, Length rail_depth, Length tenon_width, Length tenon_length, Stress shear);
/// Withdrawal of one glued dowel by the published expression [N].
Force dowel_expression(const Facts& facts, Length diameter, Length depth, Stress member_shear, Stress dowel_shear);

/// Withdrawal of one glued dowel [N]: the lower of the published expression and `by_glue`, but what dowels of every wood were measured to hold, 5 MPa of
/// their surface at 12 % and straight down to 3 at 18 %, at the least; that never above the shear strength of the wood or the glue.
Force dowel_withdrawal(const Facts& facts, Length diameter, Length depth, Force by_glue, Stress shear, MoistureContent moisture,
                       const GlueRecord* glue);

/// The same sizes, as large as published tests of tenons go at the most.
JointSizes within_tested(const Facts& facts, JointSizes sizes);
/// Share of its strength that a joint smaller than the tested ones surely has: once more size over the least tested, for each size [1, at most 1].
/// Estimated: beyond the tests strength may fall twice as fast as it is reckoned to.
double sure_share(const JointCapacity& capacity);

/// Proportions that the trade keeps to, as sentences about what these sizes break; empty when they keep to all.
std::vector<std::string> proportion_advice(JointForm form, const JointSizes& sizes);

/// Allowable moment or force from a mean, as a factor [1]: service loads by duration; a proof load, ten times; what lasts the repeats of a
/// durability load at a level, "home", "contract", "severe". Rectangular tenons have a share of their own, measured.
double joint_service_factor(const Facts& facts, WoodKind kind, LoadDuration duration);
double joint_proof_factor(const Facts& facts);
double joint_durability_factor(const Facts& facts, JointForm form, std::string_view level);
/// The one of the three that a kind of load asks for, and how it comes about, for the working. Hard sitting is not asked of joints: as proof.
double joint_factor(const Facts& facts, JointForm form, DemandKind demand, LoadDuration duration, WoodKind kind,
                    std::string_view level);
std::string joint_factor_formula(const Facts& facts, JointForm form, DemandKind demand, std::string_view level,
                                 double lower_share);
/// Where the figure comes from that a kind of load brings to it.
std::string joint_factor_source(const Facts& facts, JointForm form, DemandKind demand, std::string_view level);

} // namespace jointwright
