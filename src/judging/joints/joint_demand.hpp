#pragma once
// What every joint has to bear, load case by load case: the one door between the checks of joints and the mechanics. SI doubles.

#include "mechanics/prepared.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// What the second part of a contact does to the first in one load case, at the middle of the contact, along the axes of the piece.
struct JointDemand {
    std::string name;   ///< of the load case
    bool proof = false; ///< no service load
    DemandKind kind = DemandKind::service;
    LoadDuration duration = LoadDuration::short_term;
    Point force{};      ///< N
    Point moment{};     ///< N m
    bool push = false;  ///< the case pushes the piece sideways
    bool lift = false;  ///< the piece is taken up by one of its parts
    std::string sum;    ///< how it came about
    std::string source; ///< where the size of the load comes from
};

/// Demands on a contact, from the piece solved as one frame: of every kind of load case those in which its force or moment is largest; empty where
/// nothing is asked of the joint.
std::vector<JointDemand> joint_demand(const Prepared& prepared, std::size_t contact);

/// What joint_demand takes for granted in this piece, one sentence each.
std::vector<std::string> joint_demand_assumptions(const Prepared& prepared);

} // namespace jointwright
