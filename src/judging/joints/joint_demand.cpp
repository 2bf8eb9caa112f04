#include "judging/joints/joint_demand.hpp"

#include "judging/joints/worst_forces.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <cmath>

namespace jointwright {

namespace {

constexpr double kNothing = 1; // N and N m: less is rounding

double size_of(const Point& p) { return std::hypot(p[0], p[1], p[2]); }

} // namespace

std::vector<JointDemand> joint_demand(const Prepared& prepared, std::size_t contact)
{
    std::vector<JointMeasure> measures = {[](const JointForce& f) { return size_of(f.moment); },
                                          [](const JointForce& f) { return size_of(f.force); }};
    for (std::size_t k = 0; k < 3; ++k) {
        measures.push_back([k](const JointForce& f) { return std::abs(f.moment[k]); });
        measures.push_back([k](const JointForce& f) { return f.force[k]; });
        measures.push_back([k](const JointForce& f) { return -f.force[k]; });
    }
    std::vector<JointDemand> demands;
    for (const JointForce* f : worst_joint_forces(prepared, contact, measures)) {
        if (size_of(f->force) < kNothing && size_of(f->moment) < kNothing) continue;
        const LoadCase& load_case = prepared.statics.cases.cases[f->load_case];
        JointDemand demand;
        demand.name = load_case.name;
        demand.proof = load_case.proof;
        demand.kind = load_case.kind;
        demand.duration = load_case.duration;
        demand.push = load_case.push;
        demand.lift = load_case.lift;
        for (std::size_t k = 0; k < 3; ++k) { // what the second does to the first
            demand.force[k] = -f->force[k];
            demand.moment[k] = -f->moment[k];
        }
        demand.sum = fmt::format("the piece solved as one frame: {} N and {} N m at the middle of the joint",
                                 write_number(size_of(f->force), 3), write_number(size_of(f->moment), 3));
        demand.source = load_case.source;
        demands.push_back(std::move(demand));
    }
    return demands;
}

std::vector<std::string> joint_demand_assumptions(const Prepared& prepared)
{
    if (prepared.statics.joints.empty()) return {};
    return {"joints give as the wood beside their faces does (estimated); what stiffer or looser ones would change is shown with "
            "sag, bending "
            "and sway"};
}

} // namespace jointwright
