#pragma once
// How a joint holds its two parts: by glue, dowels, screws, buttons, its shape, or not at all. Where its play begins. SI doubles: metres, radians.

#include "mechanics/given/given.hpp"

#include <cstddef>
#include <optional>

namespace jointwright {

constexpr double kAlike = 0.3; // rad: grains nearer than this run the same way

/// How much a class of joint makes of the bed of springs on its faces.
enum class JointHold { glued, dowelled, screwed, buttoned, let_in_dry, dry };
/// Glue between end grain and anything counts for nothing: such a joint holds by its shape alone.
JointHold hold_of(const Piece& piece, const Contact& contact);
/// True for joints that resist turning by themselves and are charged with it: glued tenons, bridles, tails, laps, mitres, and dowels. Of all others pressing alone resists what opens them.
bool holds_turning(const Piece& piece, const Contact& contact);
/// How far a joint turns before its walls press: twice its clearance over the depth let in [rad]; 0 where it is close or glued.
double play_of(const Piece& piece, const Contact& contact);

/// True for kinds of joints of which one part lies in a recess of the other.
bool is_let_in(JointKind kind);
/// True where a face meets another long grain on long grain.
bool has_side_grain(const Contact& contact);
/// The part that lies on this contact and on others too, where the joint does not hold turning: it would lie as well were its glue gone.
std::optional<std::size_t> lying_copy(const Given& given, std::size_t contact, bool holds);
/// Dry, straight walls and no pegs: friction alone keeps it in.
bool is_drawn_freely(const Joint* joint, JointHold hold);

} // namespace jointwright
