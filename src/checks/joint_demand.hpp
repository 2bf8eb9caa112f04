#pragma once
// What every joint has to bear, load case by load case: the one door between the checks of joints and the mechanics. SI doubles.
// By hand statics for now; the whole frame solved as one is to take their place here.

#include "mechanics/prepared.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// What the second part of a contact does to the first in one load case, at the middle of the contact, along the axes of the piece.
struct JointDemand {
    std::string name; ///< of the load case
    bool proof = false;
    LoadDuration duration = LoadDuration::short_term;
    Point force{};      ///< N
    Point moment{};     ///< N m
    bool bound = false; ///< the moment is no more than this
    std::string sum;    ///< how it came about
    std::string source; ///< where the size of the load comes from
};

/// Demands on a contact: the worst case of each kind; empty where nothing is asked of the joint. Bearings hand down their force. The end of a rail
/// on two supports may be turned by no more than the moment of an end held wholly rigid, lessened by what an upright post gives; that of a part on one
/// support by all of it. A push on a seat or table is shared alike by the joints that keep the piece from racking that way; a part that people bear on
/// may be taken hold of to lift the whole piece.
std::vector<JointDemand> joint_demand(const Prepared& prepared, std::size_t contact);

/// What joint_demand takes for granted in this piece, one sentence each.
std::vector<std::string> joint_demand_assumptions(const Prepared& prepared);

} // namespace jointwright
