#include "mechanics/loads/placing.hpp"

#include "measure/quantity.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

Plan joint_plan(const Piece& piece, const std::vector<std::size_t>& copies)
{
    Plan all{1e30, -1e30, 1e30, -1e30};
    for (const std::size_t i : copies) {
        const Plan p = plan_of(bounds_of(piece.part_of(i), piece.copies[i]));
        all = {std::min(all.x0, p.x0), std::max(all.x1, p.x1), std::min(all.y0, p.y0), std::max(all.y1, p.y1)};
    }
    return all;
}

std::vector<CopyLoad> spread(const Piece& piece, const std::vector<std::size_t>& copies, const Plan& patch, double force)
{
    std::vector<CopyLoad> loads;
    std::vector<double> areas;
    double whole = 0;
    for (const std::size_t i : copies) {
        const auto under = Lying(piece.part_of(i), piece.copies[i]).under(patch);
        if (!under) continue;
        loads.push_back({i, under->from, under->to, 0, under->across, under->breadth});
        areas.push_back(under->area);
        whole += under->area;
    }
    for (std::size_t k = 0; k < loads.size(); ++k) loads[k].force = force * areas[k] / whole;
    return loads;
}

CopyLoad load_at(const Lying& lying, std::size_t copy, double along, double length, double breadth, double force)
{
    return {copy, along - length / 2, along + length / 2, force, lying.middle(), std::min(breadth, lying.breadth())};
}

CopyLoad load_on_all(const Lying& lying, std::size_t copy, double force)
{
    return {copy, lying.from(), lying.to(), force, lying.middle(), lying.breadth()};
}

Plan patch_at(double x, double y, double size_x, double size_y)
{
    return {x - size_x / 2, x + size_x / 2, y - size_y / 2, y + size_y / 2};
}

void add_case(LoadCases& cases, std::string name, DemandKind kind, LoadDuration duration, bool sag, std::vector<CopyLoad> loads,
              const Citation& cite)
{
    if (loads.empty()) return;
    LoadCase load_case;
    load_case.name = std::move(name);
    load_case.kind = kind;
    load_case.proof = kind != DemandKind::service;
    load_case.duration = duration;
    load_case.counts_for_sag = sag && kind == DemandKind::service;
    load_case.source = cite.text();
    for (const CopyLoad& load : loads) load_case.total -= load.direction[2] * load.force; // down
    load_case.loads = std::move(loads);
    cases.cases.push_back(std::move(load_case));
}

Datum<double> weight_of_each(const Piece& piece, const Facts& facts, int people)
{
    Datum<double> weight = facts.number(people <= 1 ? "sitter_mass" : fmt::format("sitter_mass_{}", std::min(people, 4)));
    if (piece.limits.sitter) {
        weight.value = piece.limits.sitter->value();
        weight.cite = {"the design's [limits] sitter", "", Provenance::retrieved, ""};
    }
    weight.value *= kStandardGravity;
    return weight;
}

std::string repeats_words(const Piece& piece, const Facts& facts)
{
    const double repeats = facts.number("durability_repeats_" + std::string(name_of(piece.limits.level))).value;
    const long thousands = std::lround(repeats / 1000);
    return fmt::format("{},000 times", thousands);
}

} // namespace jointwright
