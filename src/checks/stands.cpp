// Does every part touch the rest, and does the load of every part find its way to the floor?

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"

#include <fmt/core.h>

namespace jointwright {

std::vector<Finding> check_stands(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<bool> touched(piece.copies.size(), false);
    for (const Contact& c : prepared.layout->contacts) touched[c.first] = touched[c.second] = true;
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const bool alone = !touched[i] && piece.copies.size() > 1;
        const bool floats = !prepared.statics.path.reached[i];
        if (!alone && !floats) continue;
        Finding f;
        f.check = "stands";
        f.subject = piece.part_of(i).id;
        f.verdict = Verdict::warn;
        f.where = piece.label(i, true);
        f.headline = alone ? fmt::format("{} touches nothing: is it where it should be?", piece.label(i, true)) : fmt::format("{} hangs on nothing that stands on the floor.", piece.label(i, true));
        f.remedy = "check its `at`, or state the joint that holds it";
        keep_worst(findings, std::move(f));
    }
    if (!findings.empty()) return findings;
    Finding f;
    f.check = "stands";
    f.subject = piece.name;
    f.headline = "Every part touches another and stands, directly or through others, on the floor or the wall.";
    f.values = {{"mass", prepared.whole_mass(), "kg"}};
    findings.push_back(std::move(f));
    return findings;
}

} // namespace jointwright
