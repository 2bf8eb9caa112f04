#pragma once
// What a contact is to the frame: springs between its two parts, of a stiffness estimated from the wood beside the joint. SI doubles.
//
// No table of joint stiffness was to be had. A joint gives because the wood beside it is pressed and sheared, mostly across its grain: each face is
// a bed of springs, of stiffness per area 1/(h_A/E_A + h_B/E_B), with h the depth of the part that takes part, at most 0.4 of the face's size. What
// that is worth is shown by the same piece with joints that turn freely and with joints that do not turn at all.

#include "mechanics/member_line.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// A place on a copy where a spring takes hold.
struct LinkEnd {
    std::size_t copy = 0;
    double along = 0;  ///< from the lower end of its line; beyond the ends where the line is drawn on to meet another's middle
    double across = 0; ///< from the middle of its width; used on plates
};

/// One spring of a contact.
struct JointLink {
    std::size_t contact = 0;
    kernel::Vec3 at = kernel::Vec3::Zero();
    LinkEnd a, b;                                  ///< first and second part of the contact
    bool presses = false;                          ///< only presses, along `direction`; else holds by `stiffness`
    kernel::Mat6 stiffness = kernel::Mat6::Zero(); ///< of the movements at `at`
    kernel::Mat3 turning = kernel::Mat3::Zero();   ///< the estimated resistance to turning, that is part of `stiffness`
    kernel::Vec3 direction = kernel::Vec3::Zero(); ///< out of the first into the second
    double press = 0;                              ///< N/m

    /// Takes only a share of the resistance to turning; 0 would be a hinge.
    void set_turning(double share);
};

/// How much a class of joint makes of the bed of springs on its faces.
enum class JointHold { glued, dowelled, screwed, buttoned, let_in_dry, dry };
JointHold hold_of(const Piece& piece, const Contact& contact);

/// Springs of one contact.
std::vector<JointLink> joint_links(const Prepared& prepared, std::size_t contact, const std::vector<MemberLine>& lines,
                                   const std::vector<MemberStiffness>& stiffness);

} // namespace jointwright
