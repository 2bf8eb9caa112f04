#include "piece/contacts/crowded_faults.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kLeastPitch = 0.006; // m: a tail and the gap beside it, 3 mm each (common practice, no source)
constexpr double kUsualPitch = 0.030; // m

/// The longest side of all faces together.
double longest_side(const Contact& contact)
{
    double longest = 0;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        double lo = 1e30, hi = -1e30;
        for (const Patch& p : contact.patches) {
            lo = std::min(lo, p.bounds.lo[index_of(axis)]);
            hi = std::max(hi, p.bounds.hi[index_of(axis)]);
        }
        longest = std::max(longest, hi - lo);
    }
    return longest;
}

Fault fault_of(const Joint& joint, std::string says, std::string fix, std::string note)
{
    Fault f;
    f.id = "out-of-range";
    f.spot = joint.spot;
    f.says = std::move(says);
    f.fix = std::move(fix);
    f.note = std::move(note);
    return f;
}

} // namespace

std::optional<Fault> crowded_fault(const Piece& piece, const Contact& contact)
{
    const Joint& joint = piece.joints[*contact.joint];
    const double side = longest_side(contact);
    const std::string along = write_length(metres(side), piece.units);
    if (joint.dovetail && side / joint.dovetail->tails < kLeastPitch) {
        const int fewer = std::max(1, static_cast<int>(side / kUsualPitch));
        return fault_of(joint,
                        fmt::format("{} tails along {} leave {} for each and its gap; at least {} can be cut",
                                    joint.dovetail->tails, along,
                                    write_small_length(metres(side / joint.dovetail->tails), piece.units),
                                    write_small_length(metres(kLeastPitch), piece.units)),
                        joint.dovetail->slope == 0 ? fmt::format("dovetail = {{ tails = {}, slope = 0 }}", fewer)
                                                   : fmt::format("dovetail = {{ tails = {} }}", fewer),
                        "common practice, no source");
    }
    if (joint.glued && in_metres(joint.glued->length) > side + kTouch)
        return fault_of(joint,
                        fmt::format("{} and {} are glued over {}, but they touch along {} only", piece.label(contact.first),
                                    piece.label(contact.second), write_length(joint.glued->length, piece.units), along),
                        fmt::format("glued = {{ length = {} }}", write_number(number_in(metres(side), piece.units), 7)),
                        "without `glued` all of a face is glued");
    return std::nullopt;
}

} // namespace jointwright
