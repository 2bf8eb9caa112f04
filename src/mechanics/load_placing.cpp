#include "mechanics/load_placing.hpp"

#include <algorithm>

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

void add_case(LoadCases& cases, std::string name, bool proof, LoadDuration duration, bool sag, std::vector<CopyLoad> loads,
              const Citation& cite)
{
    if (loads.empty()) return;
    LoadCase load_case;
    load_case.name = std::move(name);
    load_case.proof = proof;
    load_case.duration = duration;
    load_case.counts_for_sag = sag;
    load_case.source = cite.text();
    for (const CopyLoad& load : loads) load_case.total -= load.direction[2] * load.force; // down
    load_case.loads = std::move(loads);
    cases.cases.push_back(std::move(load_case));
}

std::string_view level_key(ProofLevel level)
{
    switch (level) {
    case ProofLevel::home: return "home";
    case ProofLevel::contract: return "contract";
    case ProofLevel::severe: return "severe";
    }
    return "home";
}

} // namespace jointwright
