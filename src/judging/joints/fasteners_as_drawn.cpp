#include "judging/joints/fasteners_as_drawn.hpp"

#include "judging/finding_tools.hpp"
#include "mechanics/seasons/ties.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr int kButtonScrew = 8;          // number of the screw that holds a button or a plate
constexpr double kButtonDepth = 0.016;   // m of thread in the top
constexpr double kPocketShare = 0.5;     // of a pocket screw's length is in the second part
constexpr double kCrossDowelShare = 0.8; // of the thickness of its part: how long a cross dowel is

double dot_of(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

double size_along(const Prepared& prepared, std::size_t copy, const Point& direction)
{
    const PartAxes axes = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    const Part& part = prepared.piece->part_of(copy);
    if (std::abs(dot_of(axes.grain, direction)) > 0.7) return in_metres(part.length);
    return std::abs(dot_of(axes.width, direction)) > std::abs(dot_of(axes.face, direction)) ? in_metres(part.width)
                                                                                            : in_metres(part.thickness);
}

FastenerKind kind_of(ScrewKind kind)
{
    switch (kind) {
    case ScrewKind::wood_screw: return FastenerKind::wood_screw;
    case ScrewKind::pocket_screw: return FastenerKind::pocket_screw;
    case ScrewKind::lag_screw: return FastenerKind::lag_screw;
    case ScrewKind::nail: return FastenerKind::nail;
    case ScrewKind::bolt: return FastenerKind::bolt_and_barrel;
    }
    return FastenerKind::wood_screw;
}

/// Distance from the outermost fastener to the nearer end of the part that they go through, along its grain.
double end_of_head(const Prepared& prepared, std::size_t head, const std::vector<Fastener>& fasteners)
{
    const Part& part = prepared.piece->part_of(head);
    if (part.turn) return 0;
    const Box& box = prepared.piece->copies[head].box;
    const std::size_t g = index_of(part.grain);
    double nearest = 1e9;
    for (const Fastener& f : fasteners) nearest = std::min({nearest, f.at[g] - box.lo[g], box.hi[g] - f.at[g]});
    return std::max(0.0, nearest);
}

void take_row(const Prepared& prepared, std::size_t c, DrawnFasteners& drawn)
{
    const auto row = fastener_row(prepared, c);
    if (!row || row->fasteners.empty()) return;
    const std::size_t i = index_of(row->along), w = index_of(third_axis(row->along, row->through));
    const Patch& face = prepared.layout->contacts[c].patches.front();
    const double middle = (face.bounds.lo[i] + face.bounds.hi[i]) / 2;
    drawn.along[i] = 1;
    drawn.face_long = face.bounds.hi[i] - face.bounds.lo[i];
    drawn.face_wide = face.bounds.hi[w] - face.bounds.lo[w];
    for (const Fastener& f : row->fasteners) drawn.places.push_back(f.at[i] - middle);
    drawn.to_edge = row->fasteners.front().at[i] - face.bounds.lo[i];
    if (row->fasteners.size() > 1) drawn.spacing = row->fasteners[1].at[i] - row->fasteners[0].at[i];
    drawn.narrow_across_grain = prepared.piece->part_of(drawn.holds).grain != third_axis(row->along, row->through);
    drawn.row_along_grain = prepared.piece->part_of(drawn.holds).grain == row->along;
    drawn.to_end_of_head = end_of_head(prepared, drawn.head, row->fasteners);
}

void draw_screws(const Prepared& prepared, const Contact& contact, const Joint::Screws& screws, DrawnFasteners& drawn)
{
    const double room = size_along(prepared, contact.second, drawn.through),
                 first = size_along(prepared, contact.first, drawn.through), length = in_metres(screws.length);
    drawn.kind = kind_of(screws.kind);
    drawn.diameter = in_metres(screws.diameter);
    drawn.count = screws.count;
    double in_wood = length - first;
    if (screws.kind == ScrewKind::pocket_screw) in_wood = kPocketShare * length;
    drawn.penetration = std::clamp(in_wood, 0.0, room);
    drawn.beyond = std::max(0.0, in_wood - room);
    drawn.wrong_way = in_wood < kTouch && length - room > kTouch;
    if (screws.kind != ScrewKind::bolt) return;
    if (!screws.cross_dowel) {
        drawn.missing = R"(cross_dowel = ... in screws = { kind = "bolt", ... })";
        return;
    }
    drawn.bolt = drawn.diameter;
    drawn.ahead = drawn.penetration;
    drawn.diameter = in_metres(*screws.cross_dowel);
    drawn.penetration = kCrossDowelShare * std::min(in_metres(prepared.piece->part_of(contact.second).thickness),
                                                    in_metres(prepared.piece->part_of(contact.second).width));
}

void draw_buttons(const Prepared& prepared, const Contact& contact, const Joint::Buttons& buttons, DrawnFasteners& drawn)
{
    const Patch& face = contact.patches.front();
    drawn.kind = buttons.plates ? FastenerKind::figure_plate : FastenerKind::button;
    drawn.diameter = in_metres(screw_of_number(kButtonScrew));
    drawn.count = buttons.count;
    // The screw goes up into what lies on top.
    const bool first_on_top =
        prepared.piece->copies[contact.first].box.middle(Axis::z) >= prepared.piece->copies[contact.second].box.middle(Axis::z);
    drawn.holds = first_on_top ? contact.first : contact.second;
    drawn.head = first_on_top ? contact.second : contact.first;
    drawn.end_grain = first_on_top ? face.end_grain_first : face.end_grain_second;
    drawn.penetration = std::min(kButtonDepth, 0.8 * size_along(prepared, drawn.holds, face.normal));
}

/// Too near an end, an edge or each other, for wood that is drilled.
std::optional<std::string> too_close(const Prepared& prepared, const DrawnFasteners& drawn, const FastenerDistances& wanted)
{
    const double apart = in_metres(drawn.row_along_grain ? wanted.along : wanted.across), edge = in_metres(wanted.edge);
    if (drawn.spacing > 0 && drawn.spacing < apart)
        return fmt::format("the screws stand {} apart, closer than {} diameters, {}: the wood may split",
                           size_words(prepared, drawn.spacing), drawn.row_along_grain ? "five" : "four",
                           size_words(prepared, apart));
    if (drawn.to_edge > 0 && drawn.to_edge < edge)
        return fmt::format(
            "the outer screws stand {} from the edge of the face, closer than three diameters, {}: the wood may split",
            size_words(prepared, drawn.to_edge), size_words(prepared, edge));
    const double least = drawn.diameter * prepared.facts->number("edge_distance_least").value;
    if (drawn.narrow_across_grain && drawn.face_wide > 0 && drawn.face_wide / 2 < least)
        return fmt::format("the screws stand in a face {} wide, {} from its edges, closer than one and a half diameters, {}: the "
                           "wood may split",
                           size_words(prepared, drawn.face_wide), size_words(prepared, drawn.face_wide / 2),
                           size_words(prepared, least));
    if (drawn.to_end_of_head > 0 && drawn.to_end_of_head < edge)
        return fmt::format("the screws stand {} from the end of {}, closer than three diameters, {}: it may split there",
                           size_words(prepared, drawn.to_end_of_head), prepared.piece->part_of(drawn.head).id,
                           size_words(prepared, edge));
    return std::nullopt;
}

} // namespace

std::optional<DrawnFasteners> drawn_fasteners(const Prepared& prepared, std::size_t c)
{
    const Contact& contact = prepared.layout->contacts[c];
    if (!contact.joint) return std::nullopt;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    if (joint.kind != JointKind::screws && joint.kind != JointKind::buttons) return std::nullopt;
    DrawnFasteners drawn;
    drawn.through = contact.patches.front().normal;
    drawn.head = contact.first;
    drawn.holds = contact.second;
    drawn.end_grain = contact.patches.front().end_grain_second;
    if (joint.kind == JointKind::screws && joint.screws)
        draw_screws(prepared, contact, *joint.screws, drawn);
    else if (joint.kind == JointKind::buttons && joint.buttons)
        draw_buttons(prepared, contact, *joint.buttons, drawn);
    else
        drawn.missing = joint.kind == JointKind::screws ? "screws = { diameter = ..., length = ..., count = ... }"
                                                        : "buttons = { count = ... }";
    drawn.head_grain = axes_of(prepared.piece->part_of(drawn.head), prepared.piece->copies[drawn.head]).grain;
    if (drawn.missing.empty()) take_row(prepared, c, drawn);
    return drawn;
}

std::string hole_words(const Prepared& prepared, const FastenerCapacity& capacity)
{
    const std::string pilot = fmt::format("pilot {}", small_words(prepared, in_metres(capacity.pilot)));
    if (!(capacity.clearance.value() > 0)) return pilot;
    return fmt::format("{}, {} under the head", pilot, small_words(prepared, in_metres(capacity.clearance)));
}

std::optional<FastenerFault> placed_wrong(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn,
                                          const FastenerCapacity& capacity)
{
    if (drawn.kind == FastenerKind::button || drawn.kind == FastenerKind::figure_plate) return std::nullopt;
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    const std::string length =
        "choose their length so that at least seven diameters of thread, and no tip, are in the second part";
    if (drawn.kind == FastenerKind::bolt_and_barrel) {
        const double wanted = in_metres(capacity.distances.end);
        if (drawn.ahead >= wanted) return std::nullopt;
        return FastenerFault{
            fmt::format("the cross dowel stands {} from the end of {}, closer than seven of its diameters, {}: the "
                        "wood ahead of it may shear out",
                        size_words(prepared, drawn.ahead), second, size_words(prepared, wanted)),
            drawn.ahead < kTouch, "use a longer bolt"};
    }
    if (drawn.beyond > kTouch)
        return FastenerFault{fmt::format("the screws come out on the far side by {}", size_words(prepared, drawn.beyond)), true,
                             length};
    if (drawn.penetration < kTouch)
        return FastenerFault{"the screws do not reach the second part at all", true,
                             drawn.wrong_way ? fmt::format("screws go through the first part named into the second: between = "
                                                           "[\"{}\", \"{}\"] drives them through {} into {}",
                                                           second, first, second, first)
                                             : length};
    if (const auto says = too_close(prepared, drawn, capacity.distances))
        return FastenerFault{*says, false, "fewer or thinner screws, further apart; " + hole_words(prepared, capacity)};
    return std::nullopt;
}

} // namespace jointwright
