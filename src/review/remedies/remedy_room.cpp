// Room to move: gaps, panels in their grooves, quarter-sawn stock, stock that has settled.

#include "review/remedies/remedy_way.hpp"

#include "measure/write.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using Table = DesignEdit::Table;

constexpr double kQuarterFrom = 60;     // degrees: what is cut so is quarter-sawn already
constexpr double kMoistureStep = 0.5;   // per cent: what a meter shows
constexpr double kSettledWithin = 0.75; // per cent: nearer to the mean it is settled already
constexpr double kSpotOfGlue = 0.025;   // m; common practice, no source

RemedyWay of_quarter(const RemedyBench& bench, const std::vector<std::size_t>& parts)
{
    std::string names;
    for (const std::size_t p : parts) names += (names.empty() ? "the " : " and the ") + bench.piece.parts[p].id;
    RemedyWay way;
    way.edits = [&bench, parts](int) {
        std::vector<DesignEdit> edits;
        for (const std::size_t p : parts)
            edits.push_back(text_edit(DesignEdit::Table::part, bench.piece.parts[p].id, "rings", "quarter"));
        return edits;
    };
    way.says = [names](int) { return fmt::format("use quarter-sawn stock for {}", names); };
    return way;
}

/// Parts of a finding that are not quarter-sawn.
std::vector<std::size_t> flat_parts(const RemedyBench& bench, const Finding& finding)
{
    std::vector<std::size_t> flat;
    for (const std::size_t part : finding.about.parts) {
        const Part& of = bench.piece.parts[part];
        const auto& rings = of.own_rings ? of.rings : bench.piece.woods[of.wood].rings;
        const bool already = std::all_of(rings.begin(), rings.end(), [](Angle a) { return in_degrees(a) > kQuarterFrom; });
        if (!already && std::find(flat.begin(), flat.end(), part) == flat.end()) flat.push_back(part);
    }
    return flat;
}

/// A part placed by one coordinate across its width: the key of that and its value.
struct Placed {
    std::string key;
    double at = 0;
};

std::optional<Placed> placed_across(const RemedyBench& bench, const Part& part)
{
    static constexpr const char* kSides[3][2] = {{"left", "right"}, {"front", "back"}, {"bottom", "top"}};
    const std::size_t axis = index_of(part.width_axis());
    const DesignValue* at = bench.design.part_value(part.id, "at");
    if (at == nullptr || bench.design.part_value(part.id, "copies") != nullptr) return std::nullopt;
    if (at->kind == DesignValue::Kind::list && axis < at->items.size())
        if (const auto place = length_stated(at->items[axis], bench.piece.units))
            return Placed{fmt::format("at.{}", axis), in_metres(*place)};
    for (const char* side : kSides[axis])
        if (const DesignValue* stated = at->find(side))
            if (const auto place = length_stated(*stated, bench.piece.units))
                return Placed{fmt::format("at.{}", side), in_metres(*place)};
    return std::nullopt;
}

/// The other grooves of a panel, those that it moves along, glued by a spot in their middle: where it is pinned.
std::vector<DesignEdit> pinned(const RemedyBench& bench, const Finding& finding)
{
    std::vector<DesignEdit> edits;
    for (const Contact& contact : bench.layout.contacts) {
        if (!contact.joint || bench.piece.copies[contact.first].part != finding.about.parts.front()) continue;
        const Joint& joint = bench.piece.joints[*contact.joint];
        const auto& about = finding.about.joints;
        if (joint.kind != JointKind::groove || joint.glue || std::find(about.begin(), about.end(), *contact.joint) != about.end())
            continue;
        const std::string id = id_of(joint);
        if (std::any_of(edits.begin(), edits.end(), [&](const DesignEdit& e) { return e.id == id; })) continue;
        edits.push_back(text_edit(Table::joint, id, "glue", "PVA"));
        edits.push_back(length_edit(Table::joint, id, "glued.length", metres(bench.above(kSpotOfGlue, bench.shop_step(), 0))));
    }
    return edits;
}

RemedyWay with_pin(const RemedyBench& bench, const Finding& finding, const RemedyWay& plain)
{
    RemedyWay way = plain;
    const std::vector<DesignEdit> pin = pinned(bench, finding);
    way.edits = [edits = plain.edits, pin](int k) {
        std::vector<DesignEdit> all = edits(k);
        all.insert(all.end(), pin.begin(), pin.end());
        return all;
    };
    way.says = [says = plain.says, id = bench.piece.parts[finding.about.parts.front()].id](int k) {
        return fmt::format("{}, and hold the {} by a spot of glue at the middle of its ends", says(k), id);
    };
    return way;
}

double mean_moisture(const RemedyBench& bench)
{
    const double dry = moisture_in(bench.piece.room.driest).percent(), damp = moisture_in(bench.piece.room.dampest).percent();
    return std::round((dry + damp) / 2 / kMoistureStep) * kMoistureStep;
}

} // namespace

Ways wider_gap(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.empty()) return {};
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    const DesignValue* repeat = bench.design.part_value(part.id, "repeat");
    const DesignValue* gap = repeat != nullptr ? repeat->find("gap") : nullptr;
    if (gap == nullptr) return {};
    const auto now = length_stated(*gap, bench.piece.units);
    if (!now) return {};
    const double step = bench.shop_step(), from = in_metres(*now), today = value_of(finding, "gap_least_today").value_or(from);
    RemedyWay way;
    way.edits = [=, &bench, id = part.id](int k) {
        return std::vector<DesignEdit>{length_edit(Table::part, id, "repeat.gap", metres(bench.above(from, step, k)))};
    };
    way.says = [=, &bench, id = part.id](int k) {
        return fmt::format("leave {} between each {} and the next, {} now", bench.words(bench.above(from, step, k)), id,
                           bench.words(from));
    };
    way.most = 30;
    way.guess = std::max(1, static_cast<int>(std::ceil((today - from) / step - 1e-6)));
    return {std::move(way)};
}

Ways narrower_with_gaps(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.empty()) return {};
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    const DesignValue* repeat = bench.design.part_value(part.id, "repeat");
    const DesignValue* gap = repeat != nullptr ? repeat->find("gap") : nullptr;
    const auto between = gap != nullptr ? length_stated(*gap, bench.piece.units) : std::nullopt;
    if (!between) return {};
    const double step = bench.shop_step(), now = in_metres(part.width), room = in_metres(*between);
    RemedyWay way;
    way.edits = [=, &bench, &part](int k) {
        const double width = bench.below(now, step, k);
        if (width <= 0) return std::vector<DesignEdit>{};
        return std::vector<DesignEdit>{length_edit(Table::part, part.id, "width", metres(width)),
                                       length_edit(Table::part, part.id, "repeat.gap", metres(room + now - width))};
    };
    way.says = [=, &bench, &part](int k) {
        const double width = bench.below(now, step, k);
        return fmt::format("make each {} {} wide, {} now, and leave {} between them", part.id, bench.words(width),
                           bench.words(now), bench.words(room + now - width));
    };
    way.most = std::max(1, static_cast<int>(now / step / 4));
    const double today = value_of(finding, "gap_least_today").value_or(room);
    way.guess = std::max(1, static_cast<int>(std::ceil((today - room) / step - 1e-6)));
    return {std::move(way)};
}

Ways deeper_groove_pinned(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 2 || pinned(bench, finding).empty()) return {};
    Ways ways;
    for (const RemedyWay& plain : deeper_groove(bench, finding)) ways.push_back(with_pin(bench, finding, plain));
    return ways;
}

Ways narrower_panel(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 2) return {};
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    const auto place = placed_across(bench, part);
    if (!place) return {};
    const bool from_far = place->key.ends_with("right") || place->key.ends_with("back") || place->key.ends_with("top");
    const double step = bench.shop_step(), now = in_metres(part.width);
    RemedyWay plain;
    plain.edits = [=, &bench, &part, at = *place](int k) {
        const double width = bench.below(now, step, k), inwards = (now - width) / 2;
        if (width <= 0) return std::vector<DesignEdit>{};
        return std::vector<DesignEdit>{
            length_edit(Table::part, part.id, "width", metres(width)),
            length_edit(Table::part, part.id, at.key, metres(at.at + (from_far ? -inwards : inwards)))};
    };
    plain.says = [=, &bench, &part](int k) {
        return fmt::format("make the {} {} wide, {} now", part.id, bench.words(bench.below(now, step, k)), bench.words(now));
    };
    plain.most = std::clamp(static_cast<int>(now / step / 8), 1, 40);
    Ways ways{plain};
    if (!pinned(bench, finding).empty()) ways.push_back(with_pin(bench, finding, plain));
    return ways;
}

Ways quarter_sawn(const RemedyBench& bench, const Finding& finding)
{
    const std::vector<std::size_t> flat = flat_parts(bench, finding);
    if (flat.empty()) return {};
    if (finding.check == "mitre-gap") return {of_quarter(bench, flat)};
    Ways ways;
    for (const std::size_t part : flat) ways.push_back(of_quarter(bench, {part}));
    return ways;
}

Ways settled_stock(const RemedyBench& bench, const Finding& finding)
{
    const double now = bench.piece.room.at_glue_up.percent(), mean = mean_moisture(bench);
    if (std::abs(now - mean) < kSettledWithin) return {};
    RemedyWay way;
    way.edits = [mean](int) { return std::vector<DesignEdit>{percent_edit(Table::room, "", "moisture_at_glue_up", mean)}; };
    way.says = [=](int) {
        return fmt::format("let the stock settle to {} before you cut it, {} now", write_percent(mean), write_percent(now));
    };
    Ways ways{way};
    const std::vector<std::size_t> flat = flat_parts(bench, finding);
    if (finding.check != "mitre-gap" || flat.empty()) return ways;
    const RemedyWay quarter = of_quarter(bench, flat);
    RemedyWay both = way;
    both.edits = [one = way.edits, other = quarter.edits](int k) {
        std::vector<DesignEdit> edits = one(k);
        for (DesignEdit& edit : other(k)) edits.push_back(std::move(edit));
        return edits;
    };
    both.says = [one = way.says, other = quarter.says](int k) { return fmt::format("{}, and {}", one(k), other(k)); };
    ways.push_back(std::move(both));
    return ways;
}

} // namespace jointwright
