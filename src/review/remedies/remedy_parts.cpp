// Other sizes and woods of parts.

#include "review/remedies/remedy_way.hpp"

#include "piece/solid/solid.hpp"
#include "piece/vary/size_edits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr int kMostSteps = 200;

/// One size of a part that may change, and the side that it is held by.
struct PartSize {
    std::size_t part = 0;
    VariedSize what = VariedSize::thickness;
    HeldSide held = HeldSide::stated;
    double now = 0;
};

double size_of(const Part& part, VariedSize what)
{
    return in_metres(what == VariedSize::thickness ? part.thickness : part.width);
}

std::vector<DesignEdit> edits_of(const RemedyBench& bench, const PartSize& size, double wanted)
{
    return wanted > 0 ? size_edits(bench.design, size.part, size.what, metres(wanted), size.held) : std::vector<DesignEdit>{};
}

/// The side to hold, so that the piece with a little more (or less) is still one; nothing where neither side will do.
std::optional<PartSize> sized(const RemedyBench& bench, std::size_t part, VariedSize what, bool grows)
{
    PartSize size{part, what, HeldSide::stated, size_of(bench.piece.parts[part], what)};
    const double step = bench.shop_step(), wanted = grows ? bench.above(size.now, step, 1) : bench.below(size.now, step, 1);
    for (const HeldSide held : {HeldSide::stated, HeldSide::other}) {
        size.held = held;
        const auto edits = edits_of(bench, size, wanted);
        if (!edits.empty() && bench.changed(edits)) return size;
    }
    return std::nullopt;
}

/// The size of a lying part that stands upright: what bends it the most with.
std::optional<VariedSize> upright_size(const Part& part)
{
    if (part.grain == Axis::z) return std::nullopt;
    return part.face == Axis::z ? VariedSize::thickness : VariedSize::width;
}

std::string_view adjective(const Part& part, VariedSize what)
{
    if (what == VariedSize::thickness) return "thick";
    return part.width_axis() == Axis::z ? "deep" : "wide";
}

std::string size_words(const RemedyBench& bench, const PartSize& size, double wanted)
{
    const Part& part = bench.piece.parts[size.part];
    return fmt::format("make the {} {} {}, {} now", part.id, bench.words(wanted), adjective(part, size.what),
                       bench.words(size.now));
}

Ways grown(const RemedyBench& bench, const Finding& finding, std::size_t part, VariedSize what, double power)
{
    const auto size = sized(bench, part, what, true);
    if (!size) return {};
    const double step = bench.shop_step();
    RemedyWay way;
    way.edits = [=, &bench](int k) { return edits_of(bench, *size, bench.above(size->now, step, k)); };
    way.says = [=, &bench](int k) { return size_words(bench, *size, bench.above(size->now, step, k)); };
    way.most = std::clamp(static_cast<int>(size->now / step), 1, kMostSteps); // at most twice as much
    way.guess = steps_to_limit(finding, size->now, step, power);
    return {std::move(way)};
}

double power_of(const Finding& finding)
{
    if (finding.check == "sag" || finding.check == "creep") return 3;
    return finding.check == "bending" || finding.check == "leg" ? 2 : 1;
}

/// Upright parts that others are tenoned, dowelled or bridled into.
std::vector<std::size_t> posts_of(const RemedyBench& bench)
{
    std::vector<std::size_t> posts;
    for (const Contact& contact : bench.layout.contacts) {
        const std::size_t part = bench.piece.copies[contact.second].part;
        if (!contact.joint || bench.piece.parts[part].grain != Axis::z) continue;
        const JointKind kind = bench.piece.joints[*contact.joint].kind;
        if (kind != JointKind::tenon && kind != JointKind::dowel && kind != JointKind::bridle) continue;
        if (std::find(posts.begin(), posts.end(), part) == posts.end()) posts.push_back(part);
    }
    return posts;
}

RemedyWay both_sizes(const RemedyBench& bench, const Finding& finding, const PartSize& thick, const PartSize& wide)
{
    const double step = bench.shop_step();
    const auto at = [=, &bench](const PartSize& size, int k) { return bench.above(size.now, step, k); };
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits = edits_of(bench, thick, at(thick, k));
        for (DesignEdit& edit : edits_of(bench, wide, at(wide, k))) edits.push_back(std::move(edit));
        return edits;
    };
    way.says = [=, &bench](int k) {
        return fmt::format("make the {} {} × {}, {} × {} now", bench.piece.parts[thick.part].id, bench.words(at(wide, k)),
                           bench.words(at(thick, k)), bench.words(wide.now), bench.words(thick.now));
    };
    way.most = std::clamp(static_cast<int>(thick.now / step), 1, kMostSteps);
    way.guess = steps_to_limit(finding, thick.now, step, 3);
    return way;
}

std::string species_words(const WoodChoice& wood)
{
    return wood.species.size() == 1 ? wood.species.front() : fmt::format("the wood \"{}\"", wood.id);
}

} // namespace

Ways bent_way_thicker(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 1) return {};
    const std::size_t part = finding.about.parts.front();
    const auto what = upright_size(bench.piece.parts[part]);
    return what ? grown(bench, finding, part, *what, power_of(finding)) : Ways{};
}

Ways both_ways_thicker(const RemedyBench& bench, const Finding& finding)
{
    Ways ways;
    for (const std::size_t part : finding.about.parts.empty() ? posts_of(bench) : finding.about.parts) {
        const auto thick = sized(bench, part, VariedSize::thickness, true), wide = sized(bench, part, VariedSize::width, true);
        if (thick && wide) ways.push_back(both_sizes(bench, finding, *thick, *wide));
    }
    return ways;
}

Ways wider(const RemedyBench& bench, const Finding& finding)
{
    Ways ways;
    for (const std::size_t part : finding.about.parts) {
        const Part& of = bench.piece.parts[part];
        const VariedSize what = of.face == Axis::z || of.grain == Axis::z ? VariedSize::width : VariedSize::thickness;
        for (RemedyWay& way : grown(bench, finding, part, what, 1)) ways.push_back(std::move(way));
    }
    return ways;
}

Ways narrower(const RemedyBench& bench, const Finding& finding)
{
    std::vector<PartSize> sizes;
    for (const std::size_t part : finding.about.parts) {
        const auto size = sized(bench, part, VariedSize::width, false);
        if (size) sizes.push_back(*size);
        if (finding.check != "mitre-gap")
            break; // a mitre has two members of one width; elsewhere the first is the one that swells
    }
    if (sizes.empty()) return {};
    const double step = bench.shop_step();
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const PartSize& size : sizes)
            for (DesignEdit& edit : edits_of(bench, size, bench.below(size.now, step, k))) edits.push_back(std::move(edit));
        return edits;
    };
    way.says = [=, &bench](int k) {
        std::string words;
        for (const PartSize& size : sizes)
            words += (words.empty() ? "" : " and ") + size_words(bench, size, bench.below(size.now, step, k));
        return words;
    };
    way.most = std::clamp(static_cast<int>(sizes.front().now / step / 2), 1, kMostSteps);
    return {std::move(way)};
}

Ways shallower_notches(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 1) return {};
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    if (part.notches.empty()) return {};
    const double step = bench.shop_step(), now = in_metres(part.notches.front().depth);
    RemedyWay way;
    way.edits = [=, &bench, &part](int k) {
        std::vector<DesignEdit> edits;
        for (std::size_t n = 0; n < part.notches.size(); ++n) {
            const double depth = bench.below(in_metres(part.notches[n].depth), step, k);
            if (depth <= 0) return std::vector<DesignEdit>{};
            edits.push_back(length_edit(DesignEdit::Table::part, part.id, fmt::format("notches.{}.depth", n), metres(depth)));
        }
        return edits;
    };
    way.says = [=, &bench, &part](int k) {
        return fmt::format("cut the notches of the {} {} deep, {} now", part.id, bench.words(bench.below(now, step, k)),
                           bench.words(now));
    };
    way.most = std::clamp(static_cast<int>(now / step) - 1, 1, kMostSteps);
    return {std::move(way)};
}

Ways more_boards(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 1) return {};
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    if (!part.glued_up) return {};
    const int now = part.glued_up->boards;
    RemedyWay way;
    way.edits = [=, &part](int k) {
        return std::vector<DesignEdit>{count_edit(DesignEdit::Table::part, part.id, "glued_up.boards", now + k)};
    };
    way.says = [=, &part](int k) { return fmt::format("glue the {} up from {} boards, {} now", part.id, now + k, now); };
    way.most = std::max(2, now);
    return {std::move(way)};
}

Ways other_wood_in_stock(const RemedyBench& bench, const Finding& finding)
{
    Ways ways;
    if (finding.about.parts.empty()) return ways;
    const Part& part = bench.piece.parts[finding.about.parts.front()];
    for (std::size_t w = 0; w < bench.piece.woods.size(); ++w) {
        const WoodChoice& wood = bench.piece.woods[w];
        if (w == part.wood) continue;
        RemedyWay way;
        way.edits = [&part, id = wood.id](int) {
            return std::vector<DesignEdit>{text_edit(DesignEdit::Table::part, part.id, "wood", id)};
        };
        way.says = [&part, words = species_words(wood)](int) { return fmt::format("make the {} of {}", part.id, words); };
        ways.push_back(std::move(way));
    }
    return ways;
}

Ways deeper_rails(const RemedyBench& bench, const Finding& finding)
{
    std::vector<PartSize> rails;
    std::vector<std::size_t> joints;
    for (const Contact& contact : bench.layout.contacts) {
        const std::size_t rail = bench.piece.copies[contact.first].part, post = bench.piece.copies[contact.second].part;
        const bool tenoned = contact.joint && bench.piece.joints[*contact.joint].tenon;
        const auto& about = finding.about.joints;
        const bool meant = about.empty() ? bench.piece.parts[post].grain == Axis::z
                                         : contact.joint && std::find(about.begin(), about.end(), *contact.joint) != about.end();
        if (!tenoned || !meant) continue;
        const auto what = upright_size(bench.piece.parts[rail]);
        if (!what || *what != VariedSize::width) continue;
        if (std::find(joints.begin(), joints.end(), *contact.joint) == joints.end()) joints.push_back(*contact.joint);
        if (std::any_of(rails.begin(), rails.end(), [&](const PartSize& r) { return r.part == rail; })) continue;
        if (const auto size = sized(bench, rail, *what, true)) rails.push_back(*size);
    }
    if (rails.empty()) return {};
    const double step = bench.shop_step();
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const PartSize& rail : rails)
            for (DesignEdit& edit : edits_of(bench, rail, bench.above(rail.now, step, k))) edits.push_back(std::move(edit));
        for (const std::size_t j : joints)
            edits.push_back(length_edit(DesignEdit::Table::joint, id_of(bench.piece.joints[j]), "tenon.width",
                                        metres(bench.above(in_metres(bench.piece.joints[j].tenon->width), step, k))));
        return edits;
    };
    way.says = [=, &bench](int k) {
        std::string words;
        for (const PartSize& rail : rails)
            words += (words.empty() ? "" : " and ") + size_words(bench, rail, bench.above(rail.now, step, k));
        return fmt::format("{}, and {} tenons as much wider", words, rails.size() == 1 ? "its" : "their");
    };
    way.most = std::clamp(static_cast<int>(rails.front().now / step), 1, kMostSteps);
    way.guess = steps_to_limit(finding, rails.front().now, step, 2);
    return {std::move(way)};
}

} // namespace jointwright
