#pragma once
// What a contact is to the frame: springs between its two parts, of a stiffness estimated from the wood beside the joint. SI doubles.
//
// No table of joint stiffness was to be had. A joint gives because the wood beside it is pressed and sheared, mostly across its grain: each face is
// a bed of springs, of stiffness per area 1/(h_A/E_A + h_B/E_B), with h the depth of the part that takes part, at most 0.4 of the face's size. What
// that is worth is shown by the same piece with joints a third and three times as stiff. A joint that is let turn hands on forces and no moment about
// the axes square to the part that ends in it; a long one is a hinge along its line. No part is let spin about its own grain, since no tenon, housing
// or pair of screws lets it.

#include "mechanics/given/given.hpp"
#include "mechanics/structure/joint_hold.hpp"
#include "mechanics/structure/member_line.hpp"

#include <vector>

namespace jointwright {

/// A place on a copy where a spring takes hold.
struct LinkEnd {
    std::size_t copy = 0;
    double along = 0;  ///< from the lower end of its line; beyond the ends where the line is drawn on to meet another's middle
    double across = 0; ///< from the middle of its width; used on plates
    double spread = 0; ///< across, about that: on a plate it takes hold of so much, not of a point
};

/// What a joint is let do in the sums: everything else of it is held, and charged.
struct JointLet {
    kernel::Mat3 turn = kernel::Mat3::Zero(); ///< onto the axes about which it turns freely
    bool as_one = false;  ///< of a row: its springs act as one in its `couple`, so that it turns across it too
    bool out = false;     ///< it can be drawn out
    double stiffness = 1; ///< times the estimate, of what resists turning
};

/// One spring of a contact.
struct JointLink {
    std::size_t contact = 0;
    kernel::Vec3 at = kernel::Vec3::Zero();
    LinkEnd a, b;                                ///< first and second part of the contact
    bool presses = false;                        ///< only presses, along `direction`; else holds
    kernel::Mat3 holding = kernel::Mat3::Zero(); ///< resistance to shifting, estimated [N/m]
    kernel::Mat3 turning = kernel::Mat3::Zero(); ///< resistance to turning, estimated [N m/rad]
    kernel::Mat3 freed =
        kernel::Mat3::Zero(); ///< onto the axes about which nothing but pressing resists it; zero: a joint that holds
    kernel::Vec3 couple = kernel::Vec3::Zero();    ///< of a row: the direction in which it then acts as one; none: zero
    kernel::Vec3 out = kernel::Vec3::Zero();       ///< out of its recess, where nothing but friction keeps it; none: zero
    bool one_of_many = false;                      ///< in a row or a field of springs of one joint
    kernel::Vec3 direction = kernel::Vec3::Zero(); ///< out of the first into the second
    double press = 0;                              ///< N/m

    /// Stiffness of the movements at `at`.
    kernel::Mat6 stiffness(const JointLet& let) const;
};

/// Springs of one contact.
std::vector<JointLink> joint_links(const Given& given, std::size_t contact, const std::vector<MemberLine>& lines,
                                   const std::vector<MemberStiffness>& stiffness);

} // namespace jointwright
