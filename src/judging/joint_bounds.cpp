#include "judging/joint_bounds.hpp"

#include <fmt/core.h>

namespace jointwright {

void add_joint_bounds(const Prepared& prepared, Finding& f, const JointBounds& b)
{
    const std::string source =
        prepared.facts->cite("engineering-estimate", "stiffness of joints: wood beside their faces as a bed of springs");
    f.values.push_back({b.name + "_joints_soft", b.soft, b.unit});
    f.values.push_back({b.name + "_joints_stiff", b.stiff, b.unit});
    f.working.push_back({"The same with joints a third as stiff; with joints three times as stiff the value in brackets", "",
                         fmt::format("({})", b.stiff_words), b.soft, b.unit, source});
    if (!b.slick) return;
    f.values.push_back({b.name + "_no_friction", *b.slick, b.unit});
    f.working.push_back({"The same on a floor without friction; reckoned is a quarter of what presses on each foot", "", "",
                         *b.slick, b.unit,
                         prepared.facts->cite("engineering-estimate", "friction of felt or wood on a finished floor: 0.25")});
}

void warn_of_bounds(Finding& f, double worst, double fails, const std::string& words)
{
    if (f.verdict != Verdict::pass || worst <= fails) return;
    f.verdict = Verdict::warn;
    if (!f.headline.empty() && f.headline.back() == '.') f.headline.pop_back();
    f.headline += "; " + words + ".";
}

} // namespace jointwright
