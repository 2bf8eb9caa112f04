#pragma once
// How far a fastener across the grain has to travel, and what is held back where it cannot. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <array>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace jointwright {

/// Travel that a fastener set in the middle of its slot needs: 2 max(|Δ_dry|, |Δ_damp|) + ease [m].
double travel_needed(double dry, double damp, double ease);
/// Length of the slot to mill for it: that and the fastener's diameter [m].
double slot_length_needed(double dry, double damp, double diameter, double ease);
/// Travel that is enough when the fastener is set off the middle: from the most shrunk to the most swollen [m].
double least_travel(double dry, double damp);

/// One row of fasteners seen along one axis: who moves, from where, how far.
struct SlotTravel {
    std::size_t contact = 0;
    Axis axis = Axis::x;
    std::size_t mover = 0, other = 0; ///< the copy that moves across its grain, the one that it is fastened to
    FastenerRow row;
    enum class From { middle, glue, fastener } from = From::middle; ///< the place that stays put
    double distance = 0;                                            ///< of the fastener that travels most from that place
    double dry = 0, damp = 0; ///< movement there less that of the other part, made to driest and to dampest
    double ease = 0;
    double held_back = 0;        ///< movement that tight fasteners, or slots at their end, hold back; 0 or more
    double span = 0;             ///< distance over which it is held back
    std::size_t far_partner = 0; ///< the copy at the far end of that span
    bool slotted = false, tight_row = false;
    Verdict verdict = Verdict::pass;
    std::optional<double> utilisation;

    double travel() const { return travel_needed(dry, damp, ease); }
    double slot() const { return slot_length_needed(dry, damp, row.diameter, ease); }
};

/// True when `a` is the worse of two: by verdict, then by the travel needed, then by what is held back.
bool is_worse(const SlotTravel& a, const SlotTravel& b);

/// Reckons the rows of one piece; remembers what holds each body. Both parts of a row must have movement figures.
class SlotReckoner {
public:
    SlotReckoner(const Prepared& prepared, const Ties& ties) : prepared_(prepared), ties_(ties) {}
    /// The row of a contact along the two axes in which its parts can slide on each other; the worse of the two;
    /// nothing where neither part moves across its grain along them.
    std::optional<SlotTravel> travel_of(const FastenerRow& row);

    /// One end of a held span: how far it wants to go, less or plus what it is free to go.
    struct End {
        double value = 0, at = 0;
        std::size_t partner = 0;
    };
    /// What holds a body along an axis, with the ends of the widest held span in either season.
    struct Held {
        std::vector<Grip> grips;
        std::array<std::optional<End>, 2> upper, lower; ///< made to driest, made to dampest
    };

private:
    const Held& held(std::size_t mover, Axis axis);
    SlotTravel along_axis(const FastenerRow& row, std::size_t mover, Axis axis);
    const Prepared& prepared_;
    const Ties& ties_;
    std::map<std::pair<std::size_t, Axis>, Held> held_; ///< by the first copy of a body
};

} // namespace jointwright
