// Does the piece tip over under someone at its edge, a child on its front, or a pull at its top? The worst of all is one ratio.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/standing/tip_ways.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kWholeTurn = 1; // the ratio at which the piece goes over

std::string remedy_of_tip(bool is_case)
{
    return is_case ? "anchor it to the wall; children die under cases that tip"
                   : "set the feet farther out, or let the top stand over less";
}

std::string headline_of_tip(const Tipped& tipped, double passes_to, bool is_case)
{
    const bool firm = tipped.ratio <= passes_to;
    const char* words = firm ? "stands firm" : tipped.ratio <= kWholeTurn ? "is near to tipping" : "tips over";
    std::string line = fmt::format("The piece {} with {}: {:.0f} % of what it takes to tip it, where {:.0f} % is let pass", words,
                                   tipped.by.name, tipped.ratio * 100, passes_to * 100);
    if (firm && is_case) line += "; anchor it to the wall all the same: children climb, and drawers are full";
    return line + ".";
}

/// What was put on, pulled out and pulled at, as the working tells it.
void add_working(const Prepared& prepared, Finding& f, const Tipped& tipped, const Footing& footing, const Datum<double>& pass)
{
    const Facts& facts = *prepared.facts;
    const Tipping& by = tipped.by;
    f.working.push_back({by.taken.down > 0 ? "The piece's own weight, nothing on it, without what is open"
                                           : "The piece's own weight, nothing on it",
                         "W", "", tipped.weight, "N", "mass of the parts"});
    f.working.push_back({"How far inside the line of its feet the weight acts; its centre is that of the volumes", "a",
                         fmt::format("{} above the floor", size_words(prepared, footing.height)), tipped.inside, "m",
                         "geometry"});
    if (by.lean > 0)
        f.working.push_back({"It leans to the front on carpet under its rear feet, by so much in its depth", "", "",
                             facts.number("tip_case_carpet").value, "m", facts.number("tip_case_carpet").cite.text()});
    if (!by.live.empty())
        f.working.push_back(
            {"How far outside that line the load acts; inside it helps", "e", by.name, tipped.outside, "m", by.source});
    double open = 0;
    for (const Weight& w : by.moved) open += w.down;
    for (const Weight& w : by.against) open += w.down;
    if (open > 0)
        f.working.push_back({"Drawers and doors that are open, and what is in them: outside they overturn, inside they help",
                             "W_o", "", open, "N", facts.number("tip_case_open").cite.text()});
    if (footing.unborne.down > 0)
        f.working.push_back(
            {"What hangs on nothing is not relied on to hold it down", "", "", footing.unborne.down, "N", "geometry"});
    f.working.push_back({"Overturning moment", "F max(e, 0) + H h",
                         fmt::format("F = {} N, H = {} N, h = {}", write_number(by.live.empty() ? 0 : by.live.front().down, 3),
                                     write_number(by.aside, 3), size_words(prepared, by.height)),
                         tipped.overturning, "N m", by.source});
    f.working.push_back({"Restoring moment", "W a + F max(−e, 0)", "", tipped.restoring, "N m",
                         facts.cite("mechanics", "balance about the foot line")});
    f.working.push_back({"Passes to this ratio, since floors are uneven", "", "", pass.value, "1", pass.cite.text()});
    f.working.push_back({"Share used", "u = overturning/restoring/limit", fmt::format("{}", write_number(tipped.ratio, 3)),
                         tipped.ratio / pass.value, "1", pass.cite.text()});
}

} // namespace

std::vector<Finding> check_tip(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    if (!piece.wall.empty()) return {};
    if (!prepared.masses_known())
        return {cannot_tell("tip", piece.name,
                            "Whether the piece tips over cannot be told: the density of some part is not known.",
                            "give [[wood]] properties with density")};
    const Footing footing = footing_of(prepared);
    const CaseTipping as_case = tipped_as_case(prepared, footing);
    const bool is_case = !as_case.ways.empty();
    const auto worst = soonest_tipped(footing, is_case ? as_case.ways : tipped_by_people(prepared, footing));
    if (!worst) return {};
    const Datum<double>& pass = prepared.facts->number("tip_pass");
    Finding f;
    f.check = "tip";
    f.subject = piece.name;
    f.utilisation = worst->ratio / pass.value;
    // What light cases without drawers and doors need is an anchor and not another shape.
    const bool may_fail = !is_case || as_case.opens;
    if (may_fail) f.fails_from = kWholeTurn / pass.value;
    f.verdict = worst->ratio <= pass.value                ? Verdict::pass
                : worst->ratio <= kWholeTurn || !may_fail ? Verdict::warn
                                                          : Verdict::fail;
    f.where = worst->by.name;
    f.headline = headline_of_tip(*worst, pass.value, is_case);
    if (f.verdict != Verdict::pass) f.remedy = remedy_of_tip(is_case);
    f.values = {{"overturning_ratio", worst->ratio, "1"}, {"overturning", worst->overturning, "N m"},
                {"restoring", worst->restoring, "N m"},   {"outside", worst->outside, "m"},
                {"inside", worst->inside, "m"},           {"weight_height", footing.height, "m"}};
    add_working(prepared, f, *worst, footing, pass);
    gather_sources(f);
    return {f};
}

} // namespace jointwright
