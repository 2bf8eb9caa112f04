#pragma once
// What joints and notches take out of a part, and the section that is left to carry. SI doubles: metres.

#include "facts/facts.hpp"
#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"

#include <vector>

namespace jointwright {

/// A recess in one copy, where the part is drawn, before any turn.
struct Cut {
    enum class Place { top, bottom, inside, through } place = Place::inside; ///< seen in the vertical direction
    Box box;
    std::size_t other = 0;   ///< the copy that sits in it
    bool from_joint = false; ///< else a notch of the part's own
};

/// All recesses of every copy, by its notches and by what is let into it.
std::vector<std::vector<Cut>> cuts_of(const Piece& piece, const std::vector<Contact>& contacts);

/// Wood that joints take off a copy (positive) or tenons add to it (negative).
struct JointLoss {
    double volume = 0; ///< m³
    Point moment{};    ///< volume times its place [m⁴]
};
/// By copy.
std::vector<JointLoss> joint_losses(const Piece& piece, const std::vector<Contact>& contacts);
/// Their volumes alone [m³].
std::vector<double> joint_volumes(const Piece& piece, const std::vector<Contact>& contacts);

/// A stretch of a part with one net section, for bending in the plane of its grain and one axis across it, the depth: the vertical one of a lying part.
struct NetStretch {
    double from, to;                      ///< along the grain, as drawn [m]
    double breadth;                       ///< square to the depth
    double depth;                         ///< what is left in one piece
    double inertia;                       ///< m⁴, mortises and the round-over taken off
    double area;                          ///< m²
    double outer;                         ///< from the middle of what is left to its outer fibre [m]
    double top_loss = 0, bottom_loss = 0; ///< m
    bool notched() const { return top_loss > 0 || bottom_loss > 0; }
};

/// The net sections of a part, from end to end, without gaps. Teeth between cuts shorter than about ten times their depth carry
/// nothing: the net section holds over the whole row. Losses at the top are those at the far side of `depth`, an axis across the grain.
std::vector<NetStretch> net_stretches(const Facts& facts, const Part& part, const Copy& copy, const std::vector<Cut>& cuts,
                                      Axis depth = Axis::z);

} // namespace jointwright
