// What the reader took for granted, and what of the design nothing looks at yet.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

bool people_use(Use use) { return use == Use::seat || use == Use::table; }

bool goods_use(Use use) { return use == Use::shelf || use == Use::cabinet; }

/// Kinds where one part is cut to take the other, so that the fit matters.
bool is_cut_to_fit(JointKind kind)
{
    return kind == JointKind::housing || kind == JointKind::groove || kind == JointKind::sliding_dovetail;
}

void assume_rings(const Piece& piece, std::vector<std::string>& assumed)
{
    for (std::size_t w = 0; w < piece.woods.size(); ++w) {
        const bool needed = std::any_of(piece.parts.begin(), piece.parts.end(),
                                        [&](const Part& part) { return part.wood == w && !part.own_rings; });
        if (!piece.woods[w].rings_stated && needed)
            assumed.push_back(fmt::format("Rings of {} are not stated: flat-sawn is taken.", in_quotes(piece.woods[w].id)));
    }
}

/// Boards that may cup: wide for their thickness, their rings not upright.
void assume_ring_radius(const Piece& piece, const Facts& facts, std::vector<std::string>& assumed)
{
    const bool needed = std::any_of(piece.parts.begin(), piece.parts.end(), [](const Part& part) {
        const double width = in_metres(part.width), thickness = in_metres(part.thickness);
        const double upright = width < thickness ? 0 : 90; // ring angle to the face, on edge and lying
        const bool may_cup = std::any_of(part.rings.begin(), part.rings.end(),
                                         [&](Angle rings) { return std::abs(in_degrees(rings) - upright) > 15; });
        return !part.ring_radius && may_cup && std::max(width, thickness) >= 2 * std::min(width, thickness);
    });
    if (needed)
        assumed.push_back(fmt::format("Ring radius is not stated: {} is taken where boards cup.",
                                      write_length(metres(facts.number("ring_radius_default").value), piece.units)));
}

void assume_loads(const Piece& piece, const Facts& facts, std::vector<std::string>& assumed)
{
    const auto mass = [&](std::string_view key) { return write_mass(kilograms(facts.number(key).value), piece.units); };
    if (!piece.limits.level_stated && people_use(piece.use))
        assumed.push_back("Level is not stated: proof loads for a home are taken.");
    if (!piece.limits.sitter && piece.use == Use::seat)
        assumed.push_back(fmt::format("The sitter is not stated: {} is taken for one alone, {} each for two, {} for three and {} "
                                      "for four or more side by side.",
                                      mass("sitter_mass"), mass("sitter_mass_2"), mass("sitter_mass_3"), mass("sitter_mass_4")));
    if (!piece.limits.shelf_load && goods_use(piece.use))
        assumed.push_back("The load on shelves is not stated: that of the tables is taken.");
}

bool is_glued(const Piece& piece)
{
    return std::any_of(piece.joints.begin(), piece.joints.end(), [](const Joint& joint) { return joint.glue.has_value(); }) ||
           std::any_of(piece.parts.begin(), piece.parts.end(),
                       [](const Part& part) { return part.glued_up && part.glued_up->glue; });
}

void assume_gluing(const Piece& piece, const Facts& facts, std::vector<std::string>& assumed)
{
    if (!is_glued(piece)) return;
    if (!piece.room.shop_stated)
        assumed.push_back(
            fmt::format("The shop is taken to be at {} °C when it is glued.", write_number(piece.room.shop.celsius(), 3)));
    const auto number = [&](std::string_view key) { return write_number(facts.number(key).value, 3); };
    assumed.push_back(fmt::format(
        "Gluing: {} s for a tenon, dowel, bridle or dovetail, {} s for a plain face or housing, {} s for a "
        "square metre of glue, {} s for a clamp (common practice, estimated); one maker alone, all laid out.",
        number("assembly_shaped_joint"), number("assembly_plain_joint"), number("assembly_spreading"), number("assembly_clamp")));
    assumed.push_back(
        "Open and closed times of glues are those of labels of the kind, from memory: the label in hand beats them.");
}

/// Adds a sentence once for a key, however often the key is there.
class UnusedList {
public:
    void add(bool there, std::string_view what)
    {
        if (there && seen_.emplace(what).second) list_.push_back(fmt::format("No check looks at {} yet.", what));
    }
    std::vector<std::string> take() { return std::move(list_); }

private:
    std::set<std::string, std::less<>> seen_;
    std::vector<std::string> list_;
};

void unused_of_joint(const Joint& joint, UnusedList& list)
{
    using enum JointKind;
    const bool touches =
        joint.kind == face || joint.kind == edge || joint.kind == butt || joint.kind == screws || joint.kind == mitre;
    list.add(touches && joint.clearance > Length{}, "a clearance between faces that only touch");
    list.add(joint.kind == dowel && !joint.glue, "the pull on dry dowels");
    list.add(joint.pegs && (joint.kind == groove || joint.kind == sliding_dovetail), "the strength of pegs through a tongue");
}

void unused_of_part(const Part& part, UnusedList& list)
{
    list.add(!part.bare.empty(), "sides left bare");
    list.add(part.finish.has_value(), "the finish");
}

} // namespace

std::vector<std::string> reading_assumptions(const Piece& piece, const Facts& facts)
{
    std::vector<std::string> assumed;
    assume_rings(piece, assumed);
    assume_ring_radius(piece, facts, assumed);
    assume_loads(piece, facts, assumed);
    assume_gluing(piece, facts, assumed);
    for (const Joint& joint : piece.joints)
        if (is_cut_to_fit(joint.kind) && joint.clearance == Length{} && !joint.groove_depth)
            assumed.push_back(fmt::format("The {} of {} / {} has no clearance stated: a tight fit is taken.", name_of(joint.kind),
                                          joint.first, joint.second));
    return assumed;
}

std::vector<std::string> unused_in(const Piece& piece)
{
    UnusedList list;
    list.add(!piece.wall.empty(), "the wall itself, and the plugs and screws in it");
    for (const Part& part : piece.parts) unused_of_part(part, list);
    for (const Joint& joint : piece.joints) unused_of_joint(joint, list);
    return list.take();
}

} // namespace jointwright
