#include "piece/vary/size_edits.hpp"

#include "piece/model/space.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace jointwright {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kSidesOfAxes{
    {{"left", "right"}, {"front", "back"}, {"bottom", "top"}}};

Axis axis_of(const Part& part, VariedSize what) { return what == VariedSize::thickness ? part.face : part.width_axis(); }

double length_of(const DesignValue& value, LengthUnit unit)
{
    return in_metres(length_stated(value, unit).value_or(Length{})); // a design that was read has no other
}

/// Moves the place that `at` states, so that the side across stays where it is.
void hold_other_side(const DesignValue& at, const std::string& key, const std::string& id, Axis axis, double growth,
                     LengthUnit unit, std::vector<DesignEdit>& edits)
{
    if (at.kind == DesignValue::Kind::list) {
        const std::size_t i = index_of(axis);
        if (i >= at.items.size()) return;
        edits.push_back(length_edit(DesignEdit::Table::part, id, fmt::format("{}.{}", key, i),
                                    metres(length_of(at.items[i], unit) - growth)));
        return;
    }
    const auto [near, far] = kSidesOfAxes[index_of(axis)];
    if (const DesignValue* place = at.find(near))
        edits.push_back(
            length_edit(DesignEdit::Table::part, id, fmt::format("{}.{}", key, near), metres(length_of(*place, unit) - growth)));
    if (const DesignValue* place = at.find(far))
        edits.push_back(
            length_edit(DesignEdit::Table::part, id, fmt::format("{}.{}", key, far), metres(length_of(*place, unit) + growth)));
}

bool far_is_stated(const EditableDesign& design, const std::string& id, Axis axis)
{
    const DesignValue* at = design.part_value(id, "at");
    return at != nullptr && at->find(kSidesOfAxes[index_of(axis)].second) != nullptr;
}

bool mirrors_along(const EditableDesign& design, Axis axis)
{
    for (const Part& part : design.piece().parts) {
        const DesignValue* axes = design.part_value(part.id, "mirror");
        if (axes == nullptr) continue;
        for (const DesignValue& one : axes->items)
            if (one.text == name_of(axis)) return true;
    }
    return false;
}

/// How far a part that grows would stand out of the stated size of its piece.
double beyond_size(const EditableDesign& design, std::size_t part, Axis axis, double growth, HeldSide held)
{
    const Piece& piece = design.piece();
    if (!piece.size || growth <= 0) return 0;
    const bool far_held = far_is_stated(design, piece.parts[part].id, axis) != (held == HeldSide::other);
    const std::size_t i = index_of(axis);
    double beyond = 0;
    for (const Copy& copy : piece.copies)
        if (copy.part == part && far_held == copy.mirrored[i])
            beyond = std::max(beyond, copy.box.hi[i] + growth - (*piece.size)[i]);
    return beyond;
}

} // namespace

std::vector<DesignEdit> size_edits(const EditableDesign& design, std::size_t part, VariedSize what, Length size, HeldSide held)
{
    const Piece& piece = design.piece();
    const Part& of = piece.parts[part];
    const Axis axis = axis_of(of, what);
    const double growth = in_metres(size - (what == VariedSize::thickness ? of.thickness : of.width));
    std::vector<DesignEdit> edits{length_edit(DesignEdit::Table::part, of.id, std::string(name_of(what)), size)};
    if (held == HeldSide::other) {
        if (const DesignValue* at = design.part_value(of.id, "at"))
            hold_other_side(*at, "at", of.id, axis, growth, piece.units, edits);
        if (const DesignValue* copies = design.part_value(of.id, "copies"))
            for (std::size_t i = 0; i < copies->items.size(); ++i)
                if (const DesignValue* at = copies->items[i].find("at"))
                    hold_other_side(*at, fmt::format("copies.{}.at", i), of.id, axis, growth, piece.units, edits);
    }
    const double beyond = beyond_size(design, part, axis, growth, held);
    if (beyond <= 0 || mirrors_along(design, axis)) return edits;
    Point grown = *piece.size;
    grown[index_of(axis)] += beyond;
    DesignEdit enlarged = take_away(DesignEdit::Table::piece, "", "size");
    enlarged.value = std::vector<double>(grown.begin(), grown.end());
    enlarged.unit = DesignEdit::Unit::metres;
    edits.push_back(std::move(enlarged));
    return edits;
}

} // namespace jointwright
