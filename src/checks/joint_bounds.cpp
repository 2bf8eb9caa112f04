#include "checks/joint_bounds.hpp"

#include <fmt/core.h>

namespace jointwright {

void add_joint_bounds(const Prepared& prepared, Finding& f, const JointBounds& b)
{
    const std::string source =
        prepared.facts->cite("engineering-estimate", "stiffness of joints: wood beside their faces as a bed of springs");
    if (!b.folds) f.values.push_back({b.name + "_joints_free", b.free, b.unit});
    f.values.push_back({b.name + "_joints_stiff", b.stiff, b.unit});
    if (b.folds)
        f.working.push_back({"With joints that turn freely it would fold up: its joints alone hold it. With joints that do not "
                             "turn at all",
                             "", "", b.stiff, b.unit, source});
    else
        f.working.push_back(
            {"The same with joints that turn freely; with joints that do not turn at all it would be the value in brackets", "",
             fmt::format("({})", b.stiff_words), b.free, b.unit, source});
}

} // namespace jointwright
