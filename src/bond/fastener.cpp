#include "bond/fastener.hpp"

#include "bond/joints/joint_capacity.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

std::string in_mm(Length v) { return write_number(in_millimetres(v), 4); }

/// What one family of metal fasteners has in common.
struct Family {
    std::string key; ///< "screw", "lag", "nail"
    double gravity_power = 2, diameter_power = 1, lateral_power = 2;
    std::string withdrawal, lateral; ///< formulas
};

Family family_of(FastenerKind kind)
{
    if (kind == FastenerKind::lag_screw)
        return {"lag", 1.5, 0.75, 2, "F = c G^1.5 D^0.75 L, N and mm", "P = 0.533 K D², N and mm"};
    if (kind == FastenerKind::nail) return {"nail", 2.5, 1, 1.5, "F = c G^2.5 D L, N and mm", "P = 0.75 K D^1.5, N and mm"};
    return {"screw", 2, 1, 2, "F = c G² D L, N and mm", "P = 0.75 K D², N and mm"};
}

/// Diameters that a fastener must go in to count across it.
const char* least_depth_key(FastenerKind kind)
{
    return kind == FastenerKind::lag_screw || kind == FastenerKind::nail ? "lateral_least_depth" : "screw_lateral_least_depth";
}

/// Factor for loads across the fastener by how deep it goes in.
double depth_share(const Facts& facts, FastenerKind kind, double gravity, double depth_over_diameter)
{
    double full = facts.number("lateral_full_depth").value;
    if (kind == FastenerKind::lag_screw) {
        // 7 D in the harder woods, 11 D in the lightest, straight between specific gravities 0.61 and 0.42.
        const double soft = facts.number("lag_lateral_full_depth_soft").value;
        full += (soft - full) * std::clamp((0.61 - gravity) / (0.61 - 0.42), 0.0, 1.0);
    }
    constexpr double slack = 1e-9; // of a depth that is just enough
    if (depth_over_diameter < facts.number(least_depth_key(kind)).value - slack) return 0;
    return std::min(1.0, depth_over_diameter / full);
}

/// Lag screws pushed across the grain, over along it; straight between the diameters of the table.
double lag_across_share(const Facts& facts, Length diameter)
{
    constexpr std::array<std::pair<double, const char*>, 8> table{
        {{4.8, "4_8"}, {6.4, "6_4"}, {7.9, "7_9"}, {9.5, "9_5"}, {12.7, "12_7"}, {15.9, "15_9"}, {19.0, "19_0"}, {25.4, "25_4"}}};
    const double d = in_millimetres(diameter);
    const auto at = [&](std::size_t i) { return facts.number(std::string("lag_across_") + table[i].second).value; };
    if (d <= table.front().first) return at(0);
    for (std::size_t i = 1; i < table.size(); ++i)
        if (d <= table[i].first)
            return at(i - 1) + (at(i) - at(i - 1)) * (d - table[i - 1].first) / (table[i].first - table[i - 1].first);
    return at(table.size() - 1);
}

Length pilot_for(const Facts& facts, WoodKind kind, double gravity, const FastenerAsked& asked)
{
    constexpr double light = 0.475, dense = 0.565; // borders of the table of K
    const double d = in_metres(asked.diameter);
    if (asked.kind == FastenerKind::nail) return metres(d * facts.number("nail_pilot").value);
    if (asked.kind == FastenerKind::lag_screw)
        return metres(d *
                      facts.number(gravity < light   ? "lag_pilot_light"
                                   : gravity < dense ? "lag_pilot_medium"
                                                     : "lag_pilot_dense")
                          .value);
    return metres(d * facts.number("screw_root_share").value *
                  facts.number(kind == WoodKind::hardwood ? "screw_pilot_hardwood" : "screw_pilot_softwood").value);
}

void add_metal_notes(const FastenerAsked& asked, const LateralClass& row, double depth, FastenerCapacity& c)
{
    if (row.outside)
        c.notes.push_back(
            "the wood's specific gravity lies outside the table for loads across the fastener: its last row is taken");
    if (depth < 1)
        c.notes.push_back(
            "it does not go deep enough to carry its full load across: 7 diameters do, for lag screws in light woods up to 11");
    if (asked.end_grain && asked.kind != FastenerKind::lag_screw)
        c.notes.push_back("in end grain nothing is allowed in withdrawal: what it holds there is erratic");
    if (asked.kind == FastenerKind::nail && asked.end_grain == false)
        c.notes.push_back("a nail driven into wood that dries or moves through the seasons loses much of its hold");
    if (asked.kind == FastenerKind::pocket_screw) c.notes.push_back("the pocket's short grain under the head is not reckoned");
    if (asked.kind == FastenerKind::button)
        c.notes.push_back("the tongue of the button is reckoned to bear 150 N (estimated): keep its grain along the tongue");
    if (asked.kind == FastenerKind::figure_plate)
        c.notes.push_back("one screw in each part holds: the plate itself is far stronger");
}

FastenerCapacity metal_capacity(const Facts& facts, const WoodState& wood, std::string_view wood_name, const FastenerAsked& asked,
                                Working* working)
{
    const Family family = family_of(asked.kind);
    const double g = wood.specific_gravity->value, d = in_millimetres(asked.diameter), l = in_millimetres(asked.penetration);
    const Datum<double>&ultimate = facts.number(family.key + "_withdrawal"),
          &allowed = facts.number(family.key + "_withdrawal_allowable"), &end = facts.number(family.key + "_end_share");
    const double slope = asked.kind == FastenerKind::pocket_screw ? facts.number("pocket_angle_cosine").value : 1;
    const double size = std::pow(g, family.gravity_power) * std::pow(d, family.diameter_power) * l * slope;
    FastenerCapacity c;
    c.withdrawal_ultimate = newtons(ultimate.value * size * (asked.end_grain ? end.value : 1));
    const double end_allowed = asked.kind == FastenerKind::lag_screw ? end.value : 0;
    c.withdrawal_allowable = newtons(allowed.value * size * (asked.end_grain ? end_allowed : 1));

    const LateralClass row = lateral_class(wood.kind, g);
    const Datum<double>& k = facts.number(family.key + "_lateral_" + row.row);
    const double share = facts.number(family.key == "lag" ? "lag_lateral_share" : "lateral_share").value;
    const double depth = depth_share(facts, asked.kind, g, l / d);
    const double across_end = asked.end_grain ? facts.number("end_lateral_share").value : 1;
    c.lateral = newtons(share * k.value * std::pow(d, family.lateral_power) * depth * across_end);
    c.least_depth = facts.number(least_depth_key(asked.kind)).value;
    c.lateral_shallow = newtons(share * k.value * std::pow(d, family.lateral_power) * across_end *
                                std::min(1.0, l / d / facts.number("lateral_full_depth").value));
    if (asked.kind == FastenerKind::button)
        c.withdrawal_allowable = std::min(c.withdrawal_allowable, newtons(facts.number("button_pull").value));
    if (family.key == "lag") c.lateral_across = *c.lateral * lag_across_share(facts, asked.diameter);
    c.pilot = pilot_for(facts, wood.kind, g, asked);
    if (asked.kind != FastenerKind::nail) c.clearance = asked.diameter + metres(facts.number("clearance_hole_extra").value);
    add_metal_notes(asked, row, depth, c);
    if (!working) return c;

    const std::string with =
        fmt::format("G = {}, D = {} mm, L = {} mm", write_number(g, 3), in_mm(asked.diameter), in_mm(asked.penetration));
    working->push_back({fmt::format("Specific gravity of {}", wood_name), "G", wood.specific_gravity->note, g, "1",
                        wood.specific_gravity->source});
    working->push_back(
        {asked.end_grain ? "Withdrawal from end grain, mean at failure" : "Withdrawal from side grain, mean at failure",
         family.withdrawal, fmt::format("c = {}, {}", write_number(ultimate.value, 5), with), c.withdrawal_ultimate.value(), "N",
         ultimate.cite.text()});
    if (asked.end_grain)
        working->push_back({"Share of it in end grain", "ultimate × share", "", end.value, "1", end.cite.text()});
    working->push_back({"Allowable withdrawal", asked.end_grain && end_allowed == 0 ? "none in end grain" : family.withdrawal,
                        fmt::format("c = {}", write_number(allowed.value, 5)), c.withdrawal_allowable.value(), "N",
                        allowed.cite.text()});
    working->push_back({"Allowable load across the fastener", family.lateral,
                        fmt::format("K = {}, share for the depth {}, for end grain {}", write_number(k.value, 4),
                                    write_number(depth, 3), write_number(across_end, 3)),
                        c.lateral->value(), "N", k.cite.text()});
    if (asked.kind == FastenerKind::button)
        working->push_back({"Pull that one button may bear, its sizes not being stated", "", "", c.withdrawal_allowable.value(),
                            "N", facts.number("button_pull").cite.text()});
    working->push_back(
        {"Pilot hole for the thread", "share of the root or shank", "", c.pilot.value(), "m",
         facts.number(family.key == "screw" ? "screw_pilot_hardwood"
                      : family.key == "lag" ? "lag_pilot_dense"
                                            : "nail_pilot")
             .cite.text()});
    return c;
}

std::optional<FastenerCapacity> dowel_capacity(const Facts& facts, const WoodState& wood, std::string_view wood_name,
                                               const FastenerAsked& asked, Working* working)
{
    if (!wood.shear) return std::nullopt;
    const double f = wood.shear->value.value(), d = in_metres(asked.diameter), l = in_metres(asked.penetration);
    const double share = asked.end_grain ? 1 : facts.number("crossed_grain_share").value;
    const double by_glue = f * share * std::numbers::pi * d * l,
                 by_expression =
                     dowel_expression(facts, asked.diameter, asked.penetration, wood.shear->value, wood.shear->value).value();
    const double factor =
        facts.number("joint_lower_share_other").value / duration_and_safety_divisor(facts, StrengthKind::shear, wood.kind).value;
    FastenerCapacity c;
    c.withdrawal_ultimate =
        dowel_withdrawal(facts, asked.diameter, asked.penetration, newtons(by_glue), wood.shear->value, wood.moisture, nullptr);
    c.withdrawal_allowable = c.withdrawal_ultimate * factor;
    const double section = 0.75 * f * std::numbers::pi * d * d / 4;
    c.lateral = newtons(section * factor);
    c.pilot = asked.diameter;
    c.notes.push_back("glued, the dowel of a wood at least as strong; a dry dowel holds nothing in withdrawal");
    if (!working) return c;
    working->push_back({fmt::format("Shear strength of {} along the grain (mean)", wood_name), "S", wood.shear->note, f, "Pa",
                        wood.shear->source});
    working->push_back({"Withdrawal by the published expression", "F = 0.834 D L^0.89 (0.95 S1 + S2), in and psi",
                        fmt::format("D = {} mm, L = {} mm, S1 = S2", in_mm(asked.diameter), in_mm(asked.penetration)),
                        by_expression, "N", facts.number("dowel_expression").cite.text()});
    working->push_back({"Withdrawal by the glue line round it", "F = f π D L",
                        asked.end_grain ? "grains parallel" : "grains crossed: a third", by_glue, "N",
                        facts.number("crossed_grain_share").cite.text()});
    working->push_back({"The lower of both, but not less than dowels were measured to bear on their surface", "5 MPa at 12 %", "",
                        c.withdrawal_ultimate.value(), "N", facts.number("dowel_surface_typical").cite.text()});
    working->push_back({"Allowable withdrawal", "× 0.67/k", "", c.withdrawal_allowable.value(), "N",
                        facts.number("joint_lower_share_other").cite.text()});
    working->push_back({"Allowable load across it: shear of its own section", "P = 3/4 S π D²/4 × 0.67/k", "", c.lateral->value(),
                        "N", "mechanics"});
    return c;
}

std::optional<FastenerCapacity> barrel_capacity(const Facts& facts, const WoodState& wood, const FastenerAsked& asked,
                                                Working* working)
{
    if (!wood.compression_along || !wood.shear) return std::nullopt;
    const double area = in_metres(asked.diameter) * in_metres(asked.penetration), f = wood.compression_along->value.value();
    FastenerCapacity c;
    c.withdrawal_ultimate = newtons(area * f);
    const Stress allowed = lower_strength(facts, StrengthKind::compression_along, wood.compression_along->value) /
                           duration_and_safety_divisor(facts, StrengthKind::compression_along, wood.kind).value;
    c.withdrawal_allowable = newtons(area * allowed.value());
    c.pilot = asked.diameter;
    c.notes.push_back("the pull of the bolt on the cross dowel; the bolt itself, and the wood under its head, are not reckoned");
    c.notes.push_back(
        "keep the cross dowel at least seven of its diameters from the end of the rail, or the wood ahead of it shears out");
    if (working) {
        working->push_back(
            {"Compression along the grain (mean)", "f_c", wood.compression_along->note, f, "Pa", wood.compression_along->source});
        working->push_back({"Pull on the cross dowel, mean at failure", "F = f_c D L",
                            fmt::format("D = {} mm, L = {} mm", in_mm(asked.diameter), in_mm(asked.penetration)),
                            c.withdrawal_ultimate.value(), "N", "mechanics"});
        working->push_back({"Allowable pull", "F = f05/k D L", "", c.withdrawal_allowable.value(), "N",
                            duration_and_safety_divisor(facts, StrengthKind::compression_along, wood.kind).cite.text()});
    }
    return c;
}

} // namespace

std::string_view name_of(FastenerKind kind)
{
    switch (kind) {
    case FastenerKind::wood_screw: return "wood screw";
    case FastenerKind::pocket_screw: return "pocket screw";
    case FastenerKind::lag_screw: return "lag screw";
    case FastenerKind::nail: return "nail";
    case FastenerKind::dowel: return "dowel";
    case FastenerKind::bolt_and_barrel: return "bolt with cross dowel";
    case FastenerKind::button: return "button";
    case FastenerKind::figure_plate: return "figure plate";
    }
    return "wood screw";
}

WoodState fastened_state(const Facts& facts, const WoodRecord* wood, const OwnStrength& own)
{
    constexpr double twelve = 12;
    WoodState state = wood_state(facts, wood, own, MoistureContent::percent(twelve));
    if (wood == nullptr || own.density || !wood->dry.specific_gravity || wood->dry_moisture_pct != twelve) return state;
    const Datum<double>& printed = *wood->dry.specific_gravity;
    state.specific_gravity = Property<double>{printed.value, false, printed.cite.text(), "as the table prints it for 12 %"};
    return state;
}

LateralClass lateral_class(WoodKind kind, double g)
{
    // The table prints 0.33 to 0.47, 0.48 to 0.56, 0.57 to 0.74 and 0.29 to 0.42, 0.43 to 0.47, 0.48 to 0.52; borders lie between.
    if (kind == WoodKind::hardwood)
        return {g < 0.475 ? "hardwood_light" : g < 0.565 ? "hardwood_medium" : "hardwood_dense", g < 0.325 || g > 0.745};
    return {g < 0.425 ? "softwood_light" : g < 0.475 ? "softwood_medium" : "softwood_dense", g < 0.285 || g > 0.525};
}

FastenerDistances distances_for(const Facts& facts, Length diameter)
{
    const auto times = [&](const char* key) { return diameter * facts.number(key).value; };
    return {times("spacing_along"), times("spacing_across"),       times("end_distance_loaded"),
            times("end_distance"),  times("edge_distance_loaded"), times("edge_distance")};
}

std::optional<Force> pull_of_turning(const Facts& facts, Moment moment, const std::vector<Length>& from_edge)
{
    double squares = 0, farthest = 0;
    for (const Length& z : from_edge) {
        const double lever = std::max(0.0, in_metres(z));
        squares += lever * lever;
        farthest = std::max(farthest, lever);
    }
    if (squares <= 0) return std::nullopt;
    return newtons(std::abs(moment.value()) * farthest / (facts.number("tenon_lever_share").value * squares));
}

Length screw_of_number(int number) { return inches(0.060 + 0.013 * number); }

std::optional<FastenerCapacity> fastener_capacity(const Facts& facts, const WoodState& wood, std::string_view wood_name,
                                                  const FastenerAsked& asked, Working* working)
{
    std::optional<FastenerCapacity> c;
    if (asked.kind == FastenerKind::dowel)
        c = dowel_capacity(facts, wood, wood_name, asked, working);
    else if (asked.kind == FastenerKind::bolt_and_barrel)
        c = barrel_capacity(facts, wood, asked, working);
    else if (wood.specific_gravity)
        c = metal_capacity(facts, wood, wood_name, asked, working);
    if (c) c->distances = distances_for(facts, asked.diameter);
    return c;
}

std::optional<ScrewsOffered> screws_for(const Facts& facts, const WoodState& holding, const ScrewsWanted& wanted)
{
    constexpr int kMostScrews = 8;
    const double cover = facts.number("screw_tip_cover").value, depth = in_metres(wanted.depth) - cover,
                 duration = duration_factor(facts, wanted.duration).value;
    for (int count = 2; count <= kMostScrews; count += 2)
        for (const int number : {6, 8, 10, 12, 14}) {
            const Length d = screw_of_number(number);
            // A longer thread than ten diameters is seldom wanted, and screws come no longer than 90 mm.
            const double in_wood = std::min({depth, 10 * in_metres(d), 0.090 - in_metres(wanted.under_head)});
            if (in_wood < facts.number("screw_lateral_least_depth").value * in_metres(d)) continue;
            const auto one =
                fastener_capacity(facts, holding, "", {FastenerKind::wood_screw, d, metres(in_wood), wanted.end_grain});
            if (!one) return std::nullopt;
            const double across = count * one->lateral->value() * duration,
                         out = count * one->withdrawal_allowable.value() * duration;
            // Turned about an edge, the far half of the screws draws: as if all of them did.
            const auto far =
                pull_of_turning(facts, wanted.moment, std::vector<Length>(static_cast<std::size_t>(count / 2), wanted.lever));
            const double pull = std::max(0.0, wanted.withdrawal.value()) + (far ? count * far->value() : 0);
            if (pull > 0 && out <= 0) continue;
            const double use = wanted.lateral.value() / across + (pull > 0 ? pull / out : 0);
            if (use > 1) continue;
            return ScrewsOffered{count,
                                 number,
                                 d,
                                 metres(in_wood) + wanted.under_head,
                                 one->pilot,
                                 one->clearance,
                                 one->distances.end,
                                 one->distances.edge,
                                 one->distances.along,
                                 use};
        }
    return std::nullopt;
}

} // namespace jointwright
