// Does every part touch the rest, and does the load of every part find its way to the floor?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/standing/falls_apart.hpp"
#include "judging/standing/hung_findings.hpp"
#include "judging/standing/missed_pairs.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

namespace jointwright {

namespace {

/// Nothing of what people or goods bear on stands on anything: the piece falls to its feet.
void add_falling(const Prepared& prepared, std::vector<Finding>& findings)
{
    const Piece& piece = *prepared.piece;
    std::optional<std::size_t> first;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (!prepared.carried[i]) continue;
        if (prepared.layout->path.reached[i]) return;
        if (!first) first = i;
    }
    if (!first) return;
    Finding f;
    f.check = "stands";
    f.subject = piece.name;
    f.verdict = Verdict::fail;
    f.where = piece.label(*first, true);
    f.about.copies = {*first};
    f.headline = fmt::format("The piece falls: {}, on which people or goods bear, hangs on nothing that stands on the {}.",
                             piece.part_of(*first).id, piece.wall.empty() ? "floor" : "wall");
    f.remedy = "check the `at` of the parts under it: those that carry it must touch it and each other, down to the lowest";
    findings.push_back(std::move(f));
}

/// Parts that nothing keeps from moving though they touch others: the piece folds up, or a part swings.
void add_loose(const Prepared& prepared, std::vector<Finding>& findings)
{
    const auto& loose = prepared.statics.loose;
    if (loose.empty()) return;
    std::vector<std::string> names;
    for (const std::size_t i : loose)
        if (const std::string& id = prepared.piece->part_of(i).id; std::find(names.begin(), names.end(), id) == names.end())
            names.push_back(id);
    std::string list;
    for (std::size_t k = 0; k < std::min<std::size_t>(names.size(), 4); ++k) list += (k == 0 ? "" : ", ") + names[k];
    if (names.size() > 4) list += " and others";
    Finding f;
    f.check = "stands";
    f.subject = prepared.piece->part_of(loose.front()).id;
    f.verdict = Verdict::fail;
    f.where = prepared.piece->label(loose.front(), true);
    f.about.copies = {loose.front()};
    f.headline = fmt::format("Nothing keeps {} from moving: the piece folds up or falls over there.", list);
    f.remedy = "join these parts so that they cannot slide, swing or turn: glue or peg their joints, or add a brace";
    findings.push_back(std::move(f));
}

/// A push under which the piece leans over and on: its joints hold nothing upright.
void add_folding(const Prepared& prepared, std::vector<Finding>& findings)
{
    const Statics& statics = prepared.statics;
    if (!statics.loose.empty()) return;
    for (std::size_t k = 0; k < statics.sways.size(); ++k) {
        const SwayResult& s = statics.sways[k];
        if (!statics.cases.cases[k].push || !statics.settled[k] || s.sway < kFolds * s.height) continue;
        Finding f;
        f.check = "stands";
        f.subject = prepared.piece->name;
        f.verdict = Verdict::fail;
        f.where = fmt::format("{}, {}", prepared.piece->label(s.copy, true), statics.cases.cases[k].name);
        f.about.copies = {s.copy};
        const std::string& with = statics.cases.cases[k].name;
        f.headline =
            s.play > s.sway / 2
                ? fmt::format("With {} the piece folds up: the clearance of its joints lets it lean {} at a height of {} "
                              "before they press.",
                              with, small_words(prepared, s.play), size_words(prepared, s.height))
                : fmt::format("With {} the piece folds up: its joints hardly keep it upright.", with);
        f.remedy = s.play > s.sway / 2 ? "cut the joints closer, glue or peg them, or hold the piece square by a back"
                                       : "join legs and top by rails with tenons, by a back, or by braces";
        findings.push_back(std::move(f));
        return;
    }
}

/// Loads under which a part comes away or the piece topples.
void add_coming_away(const Prepared& prepared, std::vector<Finding>& findings)
{
    const Statics& statics = prepared.statics;
    if (!statics.loose.empty()) return;
    for (std::size_t k = 0; k < statics.settled.size(); ++k) {
        if (statics.settled[k] || statics.cases.cases[k].lift) continue; // a loose slat that is lifted off is no fault
        Finding f;
        f.check = "stands";
        f.subject = prepared.piece->name;
        f.verdict = Verdict::fail;
        f.where = statics.cases.cases[k].name;
        f.headline =
            fmt::format("With {} a part comes away, or the piece topples: faces that only lie on each other cannot pull.",
                        statics.cases.cases[k].name);
        f.remedy = "fasten what lies loose, or bring its supports farther out";
        if (!prepared.piece->hung.empty() && prepared.piece->wall.empty())
            f.remedy = "name under `wall` the post or frame that stands in the ground or is screwed to the wall";
        findings.push_back(std::move(f));
        return;
    }
}

/// A top or seat that only lies there: it slides off, or tips up under who leans on its edge.
void add_lying_loose(const Prepared& prepared, std::vector<Finding>& findings)
{
    const Piece& piece = *prepared.piece;
    if (piece.use != Use::seat && piece.use != Use::table) return;
    std::vector<bool> joined(piece.copies.size(), false);
    for (const Contact& c : prepared.layout->contacts)
        if (c.joint) joined[c.first] = joined[c.second] = true;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (!prepared.carried[i] || joined[i] || !prepared.layout->path.reached[i] || piece.copies.size() == 1) continue;
        Finding f;
        f.check = "stands";
        f.subject = piece.part_of(i).id;
        f.verdict = Verdict::warn;
        f.where = piece.label(i, true);
        f.about.copies = {i};
        f.headline =
            fmt::format("{} only lies on what bears it: nothing keeps it from sliding off or tipping up.", piece.label(i, true));
        f.remedy = "state what holds it: buttons, screws in slots, or a joint";
        keep_worst(findings, std::move(f));
    }
}

/// People put on the end of an upright part while a broad face lies beside it: `carries` names the wrong part, and what bears them is not tried.
void add_upright_seats(const Prepared& prepared, std::vector<Finding>& findings)
{
    constexpr double beside = 0.05; // m: a face no lower than that is what people will use
    const Piece& piece = *prepared.piece;
    if (piece.use != Use::seat && piece.use != Use::table) return;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Part& part = piece.part_of(i);
        if (!prepared.carried[i] || part.grain != Axis::z) continue;
        const double top = bounds_of(part, piece.copies[i]).hi[2];
        for (std::size_t k = 0; k < piece.copies.size(); ++k) {
            const Part& other = piece.part_of(k);
            if (prepared.carried[k] || other.grain == Axis::z || other.face != Axis::z) continue;
            if (bounds_of(other, piece.copies[k]).hi[2] < top - beside) continue;
            Finding f;
            f.check = "stands";
            f.subject = part.id;
            f.verdict = Verdict::warn;
            f.where = piece.label(i, true);
            f.about.copies = {i};
            f.headline =
                fmt::format("`carries` puts people on the upper end of {}, and not on {} that lies flat beside it: what bears "
                            "them is not tried.",
                            piece.label(i, true), other.id);
            f.remedy = fmt::format("carries = [\"{}\"]", other.id);
            keep_worst(findings, std::move(f));
            break;
        }
    }
}

} // namespace

std::vector<Finding> check_stands(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<bool> touched(piece.copies.size(), false);
    for (const Contact& c : prepared.layout->contacts) touched[c.first] = touched[c.second] = true;
    HungFindings hung = hung_findings(prepared);
    std::vector<Finding> findings = std::move(hung.findings);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (hung.told[i]) continue;
        const bool alone = !touched[i] && piece.copies.size() > 1;
        const bool floats = !prepared.layout->path.reached[i];
        if (!alone && !floats) continue;
        Finding f;
        f.check = "stands";
        f.subject = piece.part_of(i).id;
        f.verdict = Verdict::warn;
        f.where = piece.label(i, true);
        f.about.copies = {i};
        f.headline = alone ? fmt::format("{} touches nothing: is it where it should be?", piece.label(i, true))
                           : fmt::format("{} hangs on nothing that stands on the floor.", piece.label(i, true));
        f.remedy = "check its `at`, or state the joint that holds it";
        keep_worst(findings, std::move(f));
    }
    if (auto falls = falls_over(prepared)) {
        findings.push_back(*std::move(falls));
        return findings; // the first thing to know, and what follows from it is no news
    }
    add_falling(prepared, findings);
    add_upright_seats(prepared, findings);
    add_lying_loose(prepared, findings);
    add_missed_pairs(prepared, findings);
    add_loose(prepared, findings);
    add_coming_away(prepared, findings);
    add_folding(prepared, findings);
    for (Finding& f : comes_apart(prepared)) keep_worst(findings, std::move(f));
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
