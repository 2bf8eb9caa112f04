#include "judging/joints/worst_forces.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace jointwright {

std::vector<const JointForce*> worst_joint_forces(const Prepared& prepared, std::size_t contact,
                                                  const std::vector<JointMeasure>& measures)
{
    const Statics& statics = prepared.statics;
    const auto& cases = statics.cases.cases;
    std::vector<const JointForce*> worst;
    if (cases.empty() || statics.joints.empty()) return worst;
    // Every case tells the same joints in the same order.
    const std::size_t joints = statics.joints.size() / cases.size();
    std::size_t rank = 0;
    while (rank < joints && statics.joints[rank].contact != contact) ++rank;
    if (rank == joints) return worst;
    constexpr std::size_t kinds = kDemandKinds + 2; // service loads by their duration
    std::vector<std::array<std::pair<double, const JointForce*>, kinds>> largest(measures.size());
    for (std::size_t k = 0; k < cases.size(); ++k) {
        if (!statics.settled[k]) continue;
        const JointForce& force = statics.joints[k * joints + rank];
        if (!asks_joints(cases[k].kind)) continue;
        const std::size_t kind = cases[k].kind == DemandKind::service ? static_cast<std::size_t>(cases[k].duration)
                                                                      : 2 + static_cast<std::size_t>(cases[k].kind);
        for (std::size_t m = 0; m < measures.size(); ++m) {
            const double size = measures[m](force);
            auto& [most, by] = largest[m][kind];
            if (size <= 0 || (by && size <= most * (1 + 1e-9))) continue;
            most = size;
            by = &force;
        }
    }
    std::set<const JointForce*> kept;
    for (const auto& by_kind : largest)
        for (const auto& [size, force] : by_kind)
            if (force) kept.insert(force);
    worst.assign(kept.begin(), kept.end());
    return worst;
}

} // namespace jointwright
