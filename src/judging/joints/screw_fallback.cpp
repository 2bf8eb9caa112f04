#include "judging/joints/screw_fallback.hpp"

#include "judging/finding_tools.hpp"
#include "judging/joints/joint_demand.hpp"
#include "measure/write.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kCrossing = 0.35; // rad: from 20° on one part moves across what the other does not

/// How far a part reaches along a direction: its own thickness, width or length, whichever lies that way.
double thickness_along(const Prepared& prepared, std::size_t copy, const Point& direction)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartAxes axes = axes_of(part, prepared.piece->copies[copy]);
    const auto share = [&](const Point& axis) {
        return std::abs(axis[0] * direction[0] + axis[1] * direction[1] + axis[2] * direction[2]);
    };
    if (share(axes.grain) > 0.7) return in_metres(part.length);
    return share(axes.width) > share(axes.face) ? in_metres(part.width) : in_metres(part.thickness);
}

bool grain_along(const Prepared& prepared, std::size_t copy, const Point& direction)
{
    const PartAxes axes = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    return std::abs(axes.grain[0] * direction[0] + axes.grain[1] * direction[1] + axes.grain[2] * direction[2]) > 0.7;
}

/// A person on a part that people bear on: what its joint would have to bear, were it not to fall.
Force sitter_on(const Prepared& prepared, const Contact& contact)
{
    const Piece& piece = *prepared.piece;
    if (piece.use != Use::seat) return newtons(0);
    for (const std::string& name : piece.carries)
        for (const std::size_t copy : piece.copies_named(name))
            if (copy == contact.first || copy == contact.second) {
                const double mass =
                    piece.limits.sitter ? piece.limits.sitter->value() : prepared.facts->number("sitter_mass").value;
                return newtons(mass * kStandardGravity);
            }
    return newtons(0);
}

} // namespace

WoodState holding_wood(const Prepared& prepared, std::size_t copy)
{
    const Part& part = prepared.piece->part_of(copy);
    return fastened_state(*prepared.facts, prepared.state_of(copy).record, prepared.piece->woods[part.wood].own_strength);
}

FallbackNeed hardest_need(const Prepared& prepared, std::size_t c)
{
    const Contact& contact = prepared.layout->contacts[c];
    const Point& normal = contact.patches.front().normal; // out of the first part into the second
    FallbackNeed need;
    need.through = normal;
    need.duration = LoadDuration::lasting;
    double most = 0;
    for (const JointDemand& demand : joint_demand(prepared, c)) {
        const Point& f = demand.force;
        const double whole = std::sqrt(f[0] * f[0] + f[1] * f[1] + f[2] * f[2]),
                     along = f[0] * normal[0] + f[1] * normal[1] + f[2] * normal[2];
        if (whole <= most) continue;
        most = whole;
        need.pull = std::max(0.0, along);
        need.shear = std::sqrt(std::max(0.0, whole * whole - along * along));
        need.duration = demand.duration;
    }
    if (most > 0) return need;
    need.shear = std::min(prepared.masses[contact.first], prepared.masses[contact.second]) * kStandardGravity;
    const double person = sitter_on(prepared, contact).value();
    if (person > 0) need.duration = LoadDuration::sitting;
    need.shear += person;
    return need;
}

void offer_screws(Remedy& remedy, const Prepared& prepared, const Contact& contact, const FallbackNeed& need)
{
    if (contact.joint && prepared.piece->joints[*contact.joint].kind == JointKind::mitre)
        return remedy.besides("wood screws across a mitre sit half in end grain and hold little: a key does it better");
    const double first = thickness_along(prepared, contact.first, need.through),
                 second = thickness_along(prepared, contact.second, need.through);
    const bool first_thinner = first <= second;
    const std::size_t head = first_thinner ? contact.first : contact.second,
                      holds = first_thinner ? contact.second : contact.first;
    const WoodState wood = holding_wood(prepared, holds);
    if (!wood.specific_gravity) return;
    const Patch& face = contact.patches.front();
    double across = 0;
    for (std::size_t i = 0; i < 3; ++i) across = std::max(across, face.bounds.hi[i] - face.bounds.lo[i]);
    ScrewsWanted wanted;
    wanted.lateral = newtons(need.shear);
    wanted.withdrawal = newtons(need.pull);
    wanted.moment = newton_metres(need.moment);
    wanted.lever = metres(across * 2 / 3);
    wanted.duration = need.duration;
    wanted.under_head = metres(std::min(first, second));
    wanted.depth = metres(std::max(first, second));
    wanted.end_grain = grain_along(prepared, holds, need.through);
    const auto screws = screws_for(*prepared.facts, wood, wanted);
    const std::string into = prepared.piece->part_of(holds).id, from = prepared.piece->part_of(head).id;
    if (!screws)
        return remedy.besides(fmt::format("up to eight wood screws through {} into {} alone would not do it", from, into));
    const char* slots = !face.grain_angle               ? "" // end grain has no direction on the face
                        : *face.grain_angle > kCrossing ? "; the grains cross: slot all but one across the grain"
                                                        : "; no slots, the grains run alike";
    const bool glued = contact.joint && prepared.piece->joints[*contact.joint].glue.has_value();
    remedy.add(fmt::format("screw it{}: {} wood screws number {} ({}), {} long, through {} into {}, pilot {} "
                           "and {} under the head, "
                           "at least {} from ends and {} from edges{}",
                           glued ? " in place of the glue" : "", screws->count, screws->number,
                           size_words(prepared, in_metres(screws->diameter)), write_length_up(screws->length, prepared.units),
                           from, into, small_words(prepared, in_metres(screws->pilot)),
                           small_words(prepared, in_metres(screws->clearance)), write_length_up(screws->end, prepared.units),
                           write_length_up(screws->edge, prepared.units), slots));
}

} // namespace jointwright
