// What is let into one part: ends mitred where they meet, shorter tenons.

#include "review/remedies/remedy_way.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWorthHaving = 0.010; // m: a tenon shorter than that is no remedy

/// The deepest meeting of two tenons in the part that a finding is about.
const Meeting* meeting_of(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 1) return nullptr;
    const LetIns& let_ins = bench.layout.let_ins;
    const Meeting* deepest = nullptr;
    for (const Meeting& m : let_ins.meetings) {
        const LetIn &a = let_ins.all[m.first], &b = let_ins.all[m.second];
        if (m.mitred || bench.piece.copies[a.into].part != finding.about.parts.front()) continue;
        if (a.kind != LetIn::Kind::tenon || b.kind != LetIn::Kind::tenon) continue;
        if (deepest == nullptr || m.depth > deepest->depth + kTouch) deepest = &m;
    }
    return deepest;
}

const Joint& joint_of(const RemedyBench& bench, const LetIn& in)
{
    return bench.piece.joints[*bench.layout.contacts[in.contact].joint];
}

const std::string& rail_of(const RemedyBench& bench, const LetIn& in) { return bench.piece.part_of(in.other).id; }

RemedyWay single(std::vector<DesignEdit> edits, std::string says)
{
    RemedyWay way;
    way.edits = [edits = std::move(edits)](int) { return edits; };
    way.says = [says = std::move(says)](int) { return says; };
    return way;
}

DesignEdit length_of(const RemedyBench& bench, const LetIn& in, double length)
{
    return length_edit(DesignEdit::Table::joint, id_of(joint_of(bench, in)), "tenon.length", metres(length));
}

/// One tenon cut back to a whole shop step.
Ways cut_back(const RemedyBench& bench, const LetIn& in, double clear)
{
    const double length = std::floor(clear / bench.shop_step() + 1e-6) * bench.shop_step();
    if (length < kWorthHaving) return {};
    return {single({length_of(bench, in, length)}, fmt::format("make the tenon of {} {} long, {} now", rail_of(bench, in),
                                                               bench.words(length), bench.words(in.length())))};
}

} // namespace

Ways mitred_ends(const RemedyBench& bench, const Finding& finding)
{
    const Meeting* m = meeting_of(bench, finding);
    if (m == nullptr || std::min(m->mitre_first, m->mitre_second) < kWorthHaving) return {};
    const LetIn &a = bench.layout.let_ins.all[m->first], &b = bench.layout.let_ins.all[m->second];
    std::vector<DesignEdit> edits;
    for (const LetIn* in : {&a, &b})
        if (!in->mitred) edits.push_back(truth_edit(DesignEdit::Table::joint, id_of(joint_of(bench, *in)), "tenon.mitred", true));
    return {single(std::move(edits), fmt::format("mitre the ends of the tenons of {} and {} where they meet", rail_of(bench, a),
                                                 rail_of(bench, b)))};
}

Ways one_tenon_shorter(const RemedyBench& bench, const Finding& finding)
{
    const Meeting* m = meeting_of(bench, finding);
    if (m == nullptr) return {};
    const LetIn &a = bench.layout.let_ins.all[m->first], &b = bench.layout.let_ins.all[m->second];
    if (a.along.dot(b.along) < -0.9) { // from opposite sides: both give way alike
        const double each = std::floor((a.length() + b.length() - m->depth) / 2 / bench.shop_step() + 1e-6) * bench.shop_step();
        if (each < kWorthHaving) return {};
        std::vector<DesignEdit> edits{length_of(bench, a, each)};
        if (&joint_of(bench, a) != &joint_of(bench, b)) edits.push_back(length_of(bench, b, each));
        return {single(std::move(edits), fmt::format("make both tenons {} long", bench.words(each)))};
    }
    Ways ways = cut_back(bench, a, m->clear_first), other = cut_back(bench, b, m->clear_second);
    if (b.length() - m->clear_second < a.length() - m->clear_first) std::swap(ways, other); // the one that loses less first
    for (RemedyWay& way : other) ways.push_back(std::move(way));
    return ways;
}

Ways shallower_let_in(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 2) return {};
    Ways ways = shorter_tenon(bench, finding);
    for (RemedyWay& way : ways) {
        way.may_end = true; // a wall that is thick enough is not told of
        way.most = std::min(way.most, 10);
    }
    return ways;
}

} // namespace jointwright
