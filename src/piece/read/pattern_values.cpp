#include "piece/read/pattern_values.hpp"

#include <cmath>

namespace jointwright {

namespace {

/// Makes values that all stand at one spot and have their lengths in one unit.
class ValueMaker {
public:
    ValueMaker(LengthUnit unit, Spot spot) : unit_(unit), spot_(spot) {}

    DesignValue empty(DesignValue::Kind kind) const
    {
        DesignValue value;
        value.kind = kind;
        value.spot = spot_;
        return value;
    }
    DesignValue text(std::string_view words) const
    {
        DesignValue value = empty(DesignValue::Kind::text);
        value.text = words;
        return value;
    }
    DesignValue whole(int count) const
    {
        DesignValue value = empty(DesignValue::Kind::whole);
        value.number = count;
        return value;
    }
    DesignValue number(double plain) const
    {
        DesignValue value = empty(DesignValue::Kind::number);
        value.number = std::round(plain * 1e7) / 1e7 + 0.0; // no tails of binary fractions, no -0
        return value;
    }
    DesignValue length(double size) const { return number(number_in(metres(size), unit_)); }
    DesignValue length(Length size) const { return length(in_metres(size)); }
    DesignValue point(const Point& p) const
    {
        DesignValue value = empty(DesignValue::Kind::list);
        for (const double coordinate : p) value.items.push_back(length(coordinate));
        return value;
    }
    void add(DesignValue& table, std::string_view key, DesignValue value) const
    {
        table.entries.push_back({std::string(key), spot_, std::move(value)});
    }
    DesignValue table(std::vector<std::pair<std::string_view, DesignValue>> entries) const
    {
        DesignValue value = empty(DesignValue::Kind::table);
        for (auto& [key, entry] : entries) add(value, key, std::move(entry));
        return value;
    }

private:
    LengthUnit unit_;
    Spot spot_;
};

/// The keys that go with glue and fit.
void add_glue(const ValueMaker& make, const Joint& joint, DesignValue& table)
{
    if (joint.glue) make.add(table, "glue", make.text(*joint.glue));
    if (joint.glued)
        make.add(table, "glued", make.table({{"length", make.length(joint.glued->length)}, {"at", make.text("middle")}}));
    if (joint.clearance != Length{}) make.add(table, "clearance", make.length(joint.clearance));
}

DesignValue fasteners(const ValueMaker& make, int count, const std::optional<Length>& diameter,
                      const std::optional<Length>& length, const std::optional<Length>& slot)
{
    DesignValue table = make.empty(DesignValue::Kind::table);
    if (diameter) make.add(table, "diameter", make.length(*diameter));
    if (length) make.add(table, "length", make.length(*length));
    make.add(table, "count", make.whole(count));
    if (slot) make.add(table, "slot", make.length(*slot));
    return table;
}

void add_sizes(const ValueMaker& make, const Joint& joint, DesignValue& table)
{
    if (const auto& t = joint.tenon)
        make.add(table, "tenon",
                 make.table({{"length", make.length(t->length)},
                             {"width", make.length(t->width)},
                             {"thickness", make.length(t->thickness)}}));
    if (joint.groove_depth) make.add(table, "groove", make.table({{"depth", make.length(*joint.groove_depth)}}));
    if (const auto& d = joint.dowels) make.add(table, "dowels", fasteners(make, d->count, d->diameter, d->length, std::nullopt));
    if (const auto& s = joint.screws) make.add(table, "screws", fasteners(make, s->count, s->diameter, s->length, s->slot));
    if (const auto& p = joint.pegs) make.add(table, "pegs", fasteners(make, p->count, p->diameter, std::nullopt, p->slot));
    if (const auto& b = joint.buttons) make.add(table, "buttons", fasteners(make, b->count, std::nullopt, std::nullopt, b->slot));
    if (const auto& d = joint.dovetail)
        make.add(table, "dovetail", make.table({{"tails", make.whole(d->tails)}, {"slope", make.number(d->slope)}}));
}

} // namespace

DesignValue point_value(const Point& point, LengthUnit unit, Spot spot) { return ValueMaker(unit, spot).point(point); }

DesignValue texts_value(const std::vector<std::string>& texts, Spot spot)
{
    const ValueMaker make(LengthUnit::millimetre, spot);
    DesignValue value = make.empty(DesignValue::Kind::list);
    for (const std::string& text : texts) value.items.push_back(make.text(text));
    return value;
}

DesignValue part_value(const PatternPart& part, const PatternOrder& order, Spot spot)
{
    const ValueMaker make(order.units, spot);
    DesignValue table = make.table({{"id", make.text(part.id)},
                                    {"wood", make.text(part.wood)},
                                    {"length", make.length(part.length)},
                                    {"width", make.length(part.width)},
                                    {"thickness", make.length(part.thickness)},
                                    {"grain", make.text(name_of(part.grain))},
                                    {"face", make.text(name_of(part.face))},
                                    {"at", make.point(part.corners.at(0))}});
    DesignValue others = make.empty(DesignValue::Kind::list);
    for (std::size_t i = 1; i < part.corners.size(); ++i)
        others.items.push_back(make.table({{"at", make.point(part.corners[i])}}));
    if (!others.items.empty()) make.add(table, "copies", std::move(others));
    if (part.round_over > 0) make.add(table, "round_over", make.length(part.round_over));
    if (part.boards > 1)
        make.add(table, "glued_up", make.table({{"boards", make.whole(part.boards)}, {"glue", make.text(order.glue)}}));
    return table;
}

DesignValue joint_value(const Joint& joint, LengthUnit unit, Spot spot)
{
    const ValueMaker make(unit, spot);
    DesignValue between = texts_value({joint.first, joint.second}, spot);
    DesignValue table = make.table({{"between", std::move(between)}, {"kind", make.text(name_of(joint.kind))}});
    add_glue(make, joint, table);
    add_sizes(make, joint, table);
    return table;
}

} // namespace jointwright
