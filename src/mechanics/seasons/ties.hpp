#pragma once
// What ties the parts of a piece together: boards that move as one, rows of fasteners, and the places where a part is held. SI doubles: metres.

#include "mechanics/given/given.hpp"

#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace jointwright {

/// Copies that move as one: a board alone, or boards glued edge to edge or face to face with their grains alike.
struct TiedBody {
    std::vector<std::size_t> copies;
    Box box; ///< around all of them
};

/// One screw, button or peg.
struct Fastener {
    Point at{};
    bool in_glue = false;    ///< within the glued length: holds, whatever its slot
    bool mid_of_odd = false; ///< the middle one of an odd row: holds along the row, whatever its slot
};

/// The fasteners of one joint at one pair of copies, in a row along the longer side of their contact.
struct FastenerRow {
    std::size_t contact = 0;
    Axis along = Axis::x;       ///< the row
    Axis through = Axis::z;     ///< out of one part into the other: no slot lets anything travel that way
    double diameter = 0;        ///< 0 for buttons
    std::optional<double> slot; ///< free travel across the grain
    bool button = false;
    std::vector<Fastener> fasteners;

    /// Free travel to either side [m]: 0 where it is tight, half the slot, infinite for a button without a stated slot.
    double slack(const Fastener& fastener, Axis axis) const;
};

/// The row of a joint with screws, buttons, pegs or dry dowels whose sizes are stated; nothing for other joints.
/// Fasteners stand at (i − 1/2)/count of the longer side, or the outer ones inset from its ends; pegs along the cheeks of a tenon.
std::optional<FastenerRow> fastener_row(const Given& given, std::size_t contact);

/// A place where something holds a body, seen along one axis.
struct Grip {
    std::size_t contact = 0;
    std::size_t partner = 0; ///< the copy that holds
    double from = 0, to = 0; ///< along the axis; alike for a fastener
    double slack = 0;        ///< travel to either side before it holds
    bool glue = false;
    bool tight() const { return slack == 0; }
    double middle() const { return (from + to) / 2; }
};

/// Strain of a copy along an axis of the piece, turned or not: ε_L g² + ε_width w² + ε_thickness f², the squares of its own axes' shares.
double strain_in_space(const Piece& piece, std::size_t copy, const BoardStrain& strain, Axis axis);
/// True when the grain of a copy runs within about 45° of an axis, turned or not.
bool runs_along(const Piece& piece, std::size_t copy, Axis axis);
/// True when an axis lies square across the grain of a copy. Along a slanting axis two places far apart on a turned part mostly lie apart along its
/// grain, where it does not move; there this is false too.
bool runs_across(const Piece& piece, std::size_t copy, Axis axis);
/// Angle between the rings and the face that moves along an axis: that of the wide face across the width, its complement through the thickness.
Angle rings_along(const Given& given, std::size_t copy, Axis axis);

/// Free strain from made to the driest and to the dampest.
struct SeasonalStrains {
    double dry = 0, damp = 0;
};

/// Who is tied to whom. Built once for a check.
class Ties {
public:
    explicit Ties(const Given& given);

    const TiedBody& body_of(std::size_t copy) const { return bodies_[body_index_[copy]]; }
    /// Strain of the body of a copy along an axis: the mean along it, so that boards of mixed cut count each by its width. Where boards lie on
    /// each other the longest that way rules; of several alike their mean.
    SeasonalStrains body_strain(std::size_t copy, Axis axis) const;
    /// The box round a copy as it stands.
    const Box& box_of(std::size_t copy) const { return boxes_[copy]; }
    bool same_body(std::size_t a, std::size_t b) const { return body_index_[a] == body_index_[b]; }
    /// Indices of the contacts of a copy, joined or not.
    const std::vector<std::size_t>& contacts_of(std::size_t copy) const { return contacts_of_[copy]; }

    /// Everything that holds the body of a copy along an axis, buttons without a stated slot left out.
    std::vector<Grip> grips(std::size_t copy, Axis axis) const;
    /// Places along an axis where the joint of a contact makes its two parts go together: tight fasteners each, else one, the middle of what holds; a
    /// tenon along its own length at the shoulder. None where they slide past each other: slots, dry faces, panels in grooves, along dry housings.
    std::vector<double> held_places(std::size_t contact, Axis axis) const;
    /// Which copies joints tie to a copy on ways that do not lead over a body; by copy.
    std::vector<bool> tied_without(const TiedBody& body, std::size_t copy) const;
    /// Copies that joints tie together have the same number; it counts its members in `crowd`. A leaf that hangs on hinges is not tied to its post.
    std::size_t assembly_of(std::size_t copy) const { return assembly_[copy]; }
    std::size_t crowd(std::size_t assembly) const { return crowd_[assembly]; }
    /// True when hinges hold one copy to another: they keep the room between them as it is.
    bool hinged(std::size_t a, std::size_t b) const;
    /// A copy that reaches from one copy to another along an axis and touches both, so that it sets their distance; one whose grain
    /// runs that way first.
    std::optional<std::size_t> spanning(std::size_t a, std::size_t b, Axis axis, const TiedBody& but) const;

private:
    SeasonalStrains mean_strain(const TiedBody& body, Axis axis) const;
    const Given& given_;
    mutable std::vector<std::array<std::optional<SeasonalStrains>, 3>>
        strains_; ///< by body and axis, worked out when first asked for
    std::vector<TiedBody> bodies_;
    std::vector<Box> boxes_;
    std::vector<std::size_t> body_index_, assembly_, crowd_;
    std::vector<std::vector<std::size_t>> contacts_of_;
};

} // namespace jointwright
