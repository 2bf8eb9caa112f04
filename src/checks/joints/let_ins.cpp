// What is let into one part: does it meet inside, and what wood is left round it?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/bore_row_findings.hpp"
#include "judging/joints/let_in_words.hpp"
#include "mechanics/prepared.hpp"
#include "piece/let_ins/let_in_walls.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <optional>

namespace jointwright {

namespace {

constexpr double kRounding = 1e-6; // m
constexpr double kTrimmed = 0.003; // m: up to here a tenon that stands out is trimmed flush
constexpr const char* kCheck = "let-ins";

/// What is known of one part when all its copies have been looked at.
struct PartLook {
    std::size_t count = 0; ///< of what is let in, screws aside
    std::optional<double> thinnest;
    std::string beside; ///< what the thinnest wall is beside
};

/// Tenons and dowels whose sizes are not stated: nobody can tell what they meet.
void add_unknown_sizes(const Prepared& prepared, std::vector<Finding>& findings)
{
    for (const Contact& contact : prepared.layout->contacts) {
        if (!contact.joint) continue;
        const Joint& joint = prepared.piece->joints[*contact.joint];
        const bool tenon = joint.kind == JointKind::tenon && !joint.tenon,
                   dowel = joint.kind == JointKind::dowel && !joint.dowels;
        if (!tenon && !dowel) continue;
        const std::string &first = prepared.piece->part_of(contact.first).id,
                          &second = prepared.piece->part_of(contact.second).id;
        keep_worst(findings,
                   cannot_tell(kCheck, pair_subject(prepared, contact),
                               fmt::format("What the {} of {} meet inside {}, and what wood they leave, cannot be told: their "
                                           "sizes are missing.",
                                           tenon ? "tenons" : "dowels", first, second),
                               tenon ? "tenon = { length = ..., width = ..., thickness = ... }"
                                     : "dowels = { diameter = ..., length = ..., count = ... }"));
    }
}

/// Two that share space.
Finding meeting_finding(const Prepared& prepared, const Meeting& m, std::size_t places)
{
    const LetIns& let_ins = prepared.layout->let_ins;
    const LetIn &a = let_ins.all[m.first], &b = let_ins.all[m.second];
    const bool screws = a.kind == LetIn::Kind::screw && b.kind == LetIn::Kind::screw;
    Finding f;
    f.check = kCheck;
    f.subject = prepared.piece->part_of(a.into).id;
    f.verdict = screws ? Verdict::warn : Verdict::fail; // a row of screws is set over by a hand's turn
    f.where = fmt::format("{}: {} and {}{}", prepared.piece->label(a.into, true), prepared.piece->label(a.other, true),
                          prepared.piece->label(b.other, true),
                          places > 1 ? fmt::format(", and {} more {}", places - 1, places == 2 ? "place" : "places") : "");
    f.about.copies = {a.into, a.other, b.other};
    f.headline =
        fmt::format("{} meet inside {} by {}{}.", pair_of_let_ins(prepared, a, b), f.subject, size_words(prepared, m.depth),
                    screws ? " where the design spaces them" : ": what they share holds neither");
    f.remedy = meeting_remedies(prepared, m);
    f.values = {{"depth_shared", m.depth, "m"},
                {"length_first", a.length(), "m"},
                {"length_second", b.length(), "m"},
                {"clear_first", m.clear_first, "m"},
                {"clear_second", m.clear_second, "m"}};
    f.working.push_back({"Depth of the space that both fill", "their bodies met with each other",
                         fmt::format("clear up to {} and {} of their length", size_words(prepared, m.clear_first),
                                     size_words(prepared, m.clear_second)),
                         m.depth, "m", "geometry"});
    f.weight = m.depth;
    gather_sources(f);
    return f;
}

void add_meetings(const Prepared& prepared, std::vector<Finding>& findings)
{
    const LetIns& let_ins = prepared.layout->let_ins;
    std::map<std::size_t, std::size_t> places; // by part
    for (const Meeting& m : let_ins.meetings)
        if (!m.mitred) ++places[prepared.piece->copies[let_ins.all[m.first].into].part];
    for (const Meeting& m : let_ins.meetings)
        if (!m.mitred)
            keep_worst(findings, meeting_finding(prepared, m, places[prepared.piece->copies[let_ins.all[m.first].into].part]));
}

/// What one wall asks for: the verdict, and the least that would pass.
struct WallVerdict {
    Verdict verdict = Verdict::pass;
    double wanted = 0;
};

WallVerdict judge(const Facts& facts, const LetIn& in, const Wall& wall)
{
    const double least = facts.number("wall_least").value;
    const bool bottom = wall.place == Wall::Place::bottom, tongue = in.kind == LetIn::Kind::tenon;
    if (wall.left < 0) {
        if (!bottom || in.bore()) return {Verdict::fail, least};
        return {-wall.left > kTrimmed ? Verdict::warn : Verdict::pass, 0};
    }
    if (wall.left == 0) return {}; // open to that side
    const bool strict = !in.bore() && wall.place != Wall::Place::end_of_run;
    if (wall.left < least - kRounding) return {strict ? Verdict::fail : Verdict::warn, least};
    const double half = facts.number("wall_share").value * in.thickness;
    if (tongue && !bottom && wall.left < half - kRounding) return {Verdict::warn, half};
    return {};
}

Finding wall_finding(const Prepared& prepared, const LetIn& in, const Wall& wall, const WallVerdict& judged)
{
    const Contact& contact = prepared.layout->contacts[in.contact];
    const std::string what = let_in_words(prepared, in), &part = prepared.piece->part_of(in.into).id;
    Finding f;
    f.check = kCheck;
    f.subject = pair_subject(prepared, contact);
    f.verdict = judged.verdict;
    f.where = fmt::format("{}, {}", pair_place(prepared, contact), side_words(wall.out));
    f.about.copies = {contact.first, contact.second};
    const std::string left = size_words(prepared, std::abs(wall.left));
    if (wall.left < 0)
        f.headline = fmt::format("{} comes out of {} {} by {}.", what, part, side_words(wall.out), left);
    else
        f.headline = fmt::format("{} leaves only {} of {} {}.", what, left, part, side_words(wall.out));
    f.headline.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(f.headline.front())));
    f.remedy = wall_remedy(prepared, in, wall, judged.wanted);
    f.values = {{"wall_left", wall.left, "m"}, {"wall_wanted", judged.wanted, "m"}};
    const bool by_share = judged.verdict == Verdict::warn && in.kind == LetIn::Kind::tenon && wall.left > 0;
    const Datum<double>& limit = prepared.facts->number(by_share ? "wall_share" : "wall_least");
    f.working.push_back({"Wall left", "from the let-in to the face of the part", "", wall.left, "m", "geometry"});
    f.working.push_back({"Wall wanted", by_share ? "half the tenon's thickness" : "the least that stays whole",
                         by_share ? fmt::format("t = {}", size_words(prepared, in.thickness)) : "", judged.wanted, "m",
                         limit.cite.text()});
    f.weight = -wall.left;
    gather_sources(f);
    return f;
}

void look_at_walls(const Prepared& prepared, std::vector<Finding>& findings, std::map<std::size_t, PartLook>& looks)
{
    for (const LetIn& in : prepared.layout->let_ins.all) {
        if (in.metal()) continue;
        PartLook& look = looks[prepared.piece->copies[in.into].part];
        ++look.count;
        for (const Wall& wall : walls_of(*prepared.piece, in)) {
            const WallVerdict judged = judge(*prepared.facts, in, wall);
            if (judged.verdict != Verdict::pass) keep_worst(findings, wall_finding(prepared, in, wall, judged));
            if (wall.left <= 0 || (look.thinnest && *look.thinnest <= wall.left + kRounding)) continue;
            look.thinnest = wall.left;
            look.beside = let_in_words(prepared, in);
        }
    }
}

Finding clear_finding(const Prepared& prepared, std::size_t part, const PartLook& look, bool mitred)
{
    Finding f;
    f.check = kCheck;
    f.subject = prepared.piece->parts[part].id;
    f.headline = fmt::format(
        "What is let into {} {}{}.", f.subject, mitred ? "is mitred where it meets" : "meets nowhere inside it",
        look.thinnest ? fmt::format("; the thinnest wall left is {}, at {}", size_words(prepared, *look.thinnest), look.beside)
                      : "");
    if (look.thinnest) f.values = {{"wall_left", *look.thinnest, "m"}};
    return f;
}

} // namespace

std::vector<Finding> check_let_ins(const Prepared& prepared)
{
    std::vector<Finding> findings, walls;
    std::map<std::size_t, PartLook> looks; // by part, in the order of the design
    add_unknown_sizes(prepared, findings);
    if (!prepared.layout->let_ins.whole)
        findings.push_back(cannot_tell(kCheck, prepared.piece->name,
                                       "There are more screws and dowels than are met with each other.",
                                       "state fewer of them, or check a smaller piece"));
    add_meetings(prepared, findings);
    for (Finding& f : crowded_rows(prepared)) keep_worst(walls, std::move(f));
    look_at_walls(prepared, walls, looks);
    std::vector<bool> mitred(prepared.piece->parts.size(), false);
    for (const Meeting& m : prepared.layout->let_ins.meetings)
        if (m.mitred) mitred[prepared.piece->copies[prepared.layout->let_ins.all[m.first].into].part] = true;
    for (const auto& [part, look] : looks) keep_worst(findings, clear_finding(prepared, part, look, mitred[part]));
    for (Finding& f : walls) keep_worst(findings, std::move(f));
    return findings;
}

} // namespace jointwright
