#include "mechanics/load_placing.hpp"

#include <algorithm>

namespace jointwright {

namespace {

double overlap_area(const Plan& a, const Plan& b)
{
    return std::max(0.0, std::min(a.x1, b.x1) - std::max(a.x0, b.x0)) *
           std::max(0.0, std::min(a.y1, b.y1) - std::max(a.y0, b.y0));
}

} // namespace

Plan plan_of(const Box& box) { return {box.lo[0], box.hi[0], box.lo[1], box.hi[1]}; }

Plan joint_plan(const Piece& piece, const std::vector<std::size_t>& copies)
{
    Plan all = plan_of(piece.copies[copies.front()].box);
    for (const std::size_t i : copies) {
        const Plan p = plan_of(piece.copies[i].box);
        all = {std::min(all.x0, p.x0), std::max(all.x1, p.x1), std::min(all.y0, p.y0), std::max(all.y1, p.y1)};
    }
    return all;
}

std::vector<CopyLoad> spread(const Piece& piece, const std::vector<std::size_t>& copies, const Plan& patch, double force)
{
    std::vector<CopyLoad> loads;
    double whole = 0;
    for (const std::size_t i : copies) whole += overlap_area(plan_of(piece.copies[i].box), patch);
    if (whole <= 0) return loads;
    for (const std::size_t i : copies) {
        const Plan p = plan_of(piece.copies[i].box);
        const double area = overlap_area(p, patch);
        if (area <= 0) continue;
        const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0;
        const std::size_t a = 1 - g;
        CopyLoad load;
        load.copy = i;
        load.from = std::max(p.lo(g), patch.lo(g));
        load.to = std::min(p.hi(g), patch.hi(g));
        load.across = (std::max(p.lo(a), patch.lo(a)) + std::min(p.hi(a), patch.hi(a))) / 2;
        load.force = force * area / whole;
        load.breadth = std::min(p.hi(a), patch.hi(a)) - std::max(p.lo(a), patch.lo(a));
        loads.push_back(load);
    }
    return loads;
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
