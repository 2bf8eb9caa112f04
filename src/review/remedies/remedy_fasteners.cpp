// More, longer, thicker fasteners, or some where there are none.

#include "judging/finding_tools.hpp"
#include "review/remedies/remedy_way.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace jointwright {

namespace {

using Table = DesignEdit::Table;

/// Gauge numbers sold by the inch and diameters sold by the millimetre; common practice, no source.
constexpr std::array<int, 7> kGauges{4, 6, 8, 10, 12, 14, 18};
constexpr std::array<double, 9> kScrewsMetric{0.003, 0.0035, 0.004, 0.0045, 0.005, 0.006, 0.007, 0.008, 0.010};
constexpr std::array<double, 5> kDowelsMetric{0.006, 0.008, 0.010, 0.012, 0.016};
constexpr std::array<int, 5> kDowelSixteenths{4, 5, 6, 8, 10};
constexpr double kDowelLength = 5;         // diameters, half in either part; common practice, no source
constexpr double kScrewHold = 10;          // diameters of a screw in what it holds in
constexpr double kWallBehind = 0.003;      // m: wood left before the point of a screw
constexpr double kWallBehindDowel = 0.005; // m: and at the bottom of a dowel's hole
constexpr int kMostFasteners = 8;

double gauge_diameter(int number) { return (0.060 + 0.013 * number) * kMetresPerInch; }

struct Sized {
    double diameter = 0;
    std::string words; ///< "5 mm thick", "of number 10"
};

std::vector<Sized> screws_sold(const RemedyBench& bench)
{
    std::vector<Sized> all;
    if (bench.units == LengthUnit::inch)
        for (const int number : kGauges) all.push_back({gauge_diameter(number), fmt::format("of number {}", number)});
    else
        for (const double d : kScrewsMetric) all.push_back({d, bench.words(d) + " thick"});
    return all;
}

std::vector<Sized> dowels_sold(const RemedyBench& bench)
{
    std::vector<Sized> all;
    if (bench.units == LengthUnit::inch)
        for (const int n : kDowelSixteenths) {
            const double d = n * kMetresPerInch / 16;
            all.push_back({d, bench.words(d) + " thick"});
        }
    else
        for (const double d : kDowelsMetric) all.push_back({d, bench.words(d) + " thick"});
    return all;
}

/// One row of fasteners that a joint states.
struct Row {
    std::size_t joint = 0;
    std::string table, names; ///< "screws", "screws"
    int count = 0;
    double diameter = 0, length = 0; ///< 0 where it has none
    bool of_screw = false;
};

std::optional<Row> row_of(const RemedyBench& bench, std::size_t index)
{
    const Joint& joint = bench.piece.joints[index];
    if (joint.screws)
        return Row{index,
                   "screws",
                   std::string(name_of(joint.screws->kind)) + "s",
                   joint.screws->count,
                   in_metres(joint.screws->diameter),
                   in_metres(joint.screws->length),
                   joint.screws->kind == ScrewKind::wood_screw};
    if (joint.dowels)
        return Row{
            index, "dowels", "dowels", joint.dowels->count, in_metres(joint.dowels->diameter), in_metres(joint.dowels->length),
            false};
    if (joint.pegs) return Row{index, "pegs", "pegs", joint.pegs->count, in_metres(joint.pegs->diameter), 0, false};
    if (joint.buttons)
        return Row{index, "buttons", joint.buttons->plates ? "figure plates" : "buttons", joint.buttons->count, 0, 0, false};
    if (joint.keys) return Row{index, "key", "keys", joint.keys->count, 0, 0, false};
    return std::nullopt;
}

std::vector<Row> rows_of(const RemedyBench& bench, const Finding& finding)
{
    std::vector<Row> rows;
    for (const std::size_t joint : finding.about.joints)
        if (auto row = row_of(bench, joint)) rows.push_back(*std::move(row));
    return rows;
}

std::string between(const RemedyBench& bench, const Finding& finding)
{
    return fmt::format("between the {} and the {}", bench.piece.parts[finding.about.parts[0]].id,
                       bench.piece.parts[finding.about.parts[1]].id);
}

std::string id_at(const RemedyBench& bench, std::size_t joint) { return id_of(bench.piece.joints[joint]); }

/// Diameters sold that are thicker (or thinner) than the one there is, the nearest first.
std::vector<Sized> beyond(std::vector<Sized> sold, double now, bool thicker)
{
    std::erase_if(sold, [&](const Sized& s) { return thicker ? s.diameter <= now * 1.02 : s.diameter >= now * 0.98; });
    if (!thicker) std::reverse(sold.begin(), sold.end());
    return sold;
}

Ways other_diameter(const RemedyBench& bench, const Finding& finding, bool thicker)
{
    const auto rows = rows_of(bench, finding);
    if (rows.empty() || finding.about.parts.size() != 2 || rows.front().diameter <= 0) return {};
    const Row row = rows.front();
    const auto sold = beyond(row.table == "screws" ? screws_sold(bench) : dowels_sold(bench), row.diameter, thicker);
    if (sold.empty()) return {};
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const Row& r : rows)
            edits.push_back(length_edit(Table::joint, id_at(bench, r.joint), r.table + ".diameter",
                                        metres(sold[static_cast<std::size_t>(k - 1)].diameter)));
        return edits;
    };
    way.says = [=, &bench, place = between(bench, finding)](int k) {
        return fmt::format("use {} {} {}, {} thick now", row.names, sold[static_cast<std::size_t>(k - 1)].words, place,
                           bench.words(row.diameter));
    };
    way.most = static_cast<int>(std::min<std::size_t>(sold.size(), 4));
    return {std::move(way)};
}

/// How thick either part of a joint is, through its largest face.
struct Through {
    double first = 0, second = 0;
};

std::optional<Through> through_of(const RemedyBench& bench, std::size_t joint)
{
    for (const Contact& contact : bench.layout.contacts) {
        if (contact.joint != joint || contact.patches.empty()) continue;
        const Axis axis = main_axis_of(contact.patches.front().normal);
        return Through{bench.piece.copies[contact.first].box.size(axis), bench.piece.copies[contact.second].box.size(axis)};
    }
    return std::nullopt;
}

/// Joints of a finding that are plain glued faces.
std::vector<std::size_t> plain_faces(const RemedyBench& bench, const Finding& finding)
{
    std::vector<std::size_t> joints = finding.about.joints;
    std::erase_if(joints, [&](std::size_t j) {
        const JointKind kind = bench.piece.joints[j].kind;
        return kind != JointKind::face && kind != JointKind::butt && kind != JointKind::edge;
    });
    return joints;
}

double thinnest(const Part& part) { return in_metres(std::min({part.length, part.width, part.thickness})); }

double rounded_up(double length, double step) { return std::ceil(length / step - 1e-6) * step; }

} // namespace

Ways longer_slot(const RemedyBench& bench, const Finding& finding)
{
    auto rows = rows_of(bench, finding);
    std::erase_if(rows, [](const Row& r) { return r.table == "dowels" || r.table == "key"; });
    if (rows.empty() || finding.about.parts.size() != 2) return {};
    const auto slot_of = [&](const Row& row) {
        const Joint& joint = bench.piece.joints[row.joint];
        const auto stated = joint.screws ? joint.screws->slot : joint.pegs ? joint.pegs->slot : joint.buttons->slot;
        return stated ? in_metres(*stated) : 0.0;
    };
    const double step = bench.shop_step(), now = slot_of(rows.front());
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const Row& r : rows)
            edits.push_back(
                length_edit(Table::joint, id_at(bench, r.joint), r.table + ".slot", metres(bench.above(now, step, k))));
        return edits;
    };
    way.says = [=, &bench, place = between(bench, finding), names = rows.front().names](int k) {
        return fmt::format("let the {} {} travel {} in slots across the grain, {}", names, place,
                           bench.words(bench.above(now, step, k)), now > 0 ? bench.words(now) + " now" : "tight now");
    };
    way.most = 40;
    const double needed = value_of(finding, "travel_needed").value_or(value_of(finding, "needed").value_or(now));
    way.guess = std::max(1, static_cast<int>(std::ceil((needed - now) / step - 1e-6)));
    return {std::move(way)};
}

Ways more_fasteners(const RemedyBench& bench, const Finding& finding)
{
    const auto rows = rows_of(bench, finding);
    if (rows.empty() || finding.about.parts.size() != 2) return {};
    const Row row = rows.front();
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const Row& r : rows)
            edits.push_back(count_edit(Table::joint, id_at(bench, r.joint), r.table + ".count", r.count + k));
        return edits;
    };
    way.says = [=, place = between(bench, finding)](int k) {
        return fmt::format("use {} {} {}, {} now", row.count + k, row.names, place, row.count);
    };
    way.most = std::max(2, row.count);
    const double use = finding.utilisation.value_or(1);
    way.guess = std::max(1, static_cast<int>(std::ceil(row.count * std::min(use, 10.0)) - row.count));
    return {std::move(way)};
}

Ways longer_fasteners(const RemedyBench& bench, const Finding& finding)
{
    const auto rows = rows_of(bench, finding);
    if (rows.empty() || finding.about.parts.size() != 2 || rows.front().length <= 0) return {};
    const Row row = rows.front();
    const double step = bench.glued_step(); // they are sold by 5 mm and by 1/4 in
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const Row& r : rows)
            edits.push_back(
                length_edit(Table::joint, id_at(bench, r.joint), r.table + ".length", metres(bench.above(r.length, step, k))));
        return edits;
    };
    way.says = [=, &bench, place = between(bench, finding)](int k) {
        return fmt::format("use {} {} long {}, {} now", row.names, bench.words(bench.above(row.length, step, k)), place,
                           bench.words(row.length));
    };
    way.most = std::max(2, static_cast<int>(row.length / step));
    return {std::move(way)};
}

Ways thicker_fasteners(const RemedyBench& bench, const Finding& finding) { return other_diameter(bench, finding, true); }

Ways thinner_screws(const RemedyBench& bench, const Finding& finding)
{
    return finding.utilisation.value_or(1) < 0.5 ? other_diameter(bench, finding, false) : Ways{};
}

Ways dowels_instead(const RemedyBench& bench, const Finding& finding)
{
    const auto joints = plain_faces(bench, finding);
    if (joints.empty() || finding.about.parts.size() != 2) return {};
    const double thin =
        std::min(thinnest(bench.piece.parts[finding.about.parts[0]]), thinnest(bench.piece.parts[finding.about.parts[1]]));
    Sized dowel;
    for (const Sized& sold : dowels_sold(bench))
        if (sold.diameter <= thin / 2) dowel = sold; // a third to half of the thickness
    if (dowel.diameter <= 0) return {};
    const auto through = through_of(bench, joints.front());
    if (!through) return {};
    const double room = 2 * (std::min(through->first, through->second) - kWallBehindDowel), step = bench.glued_step();
    const double length = std::min(rounded_up(kDowelLength * dowel.diameter, step), std::floor(room / step + 1e-6) * step);
    if (length < 2 * dowel.diameter) return {};
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const std::size_t j : joints) {
            const std::string id = id_at(bench, j);
            edits.push_back(text_edit(Table::joint, id, "kind", "dowel"));
            edits.push_back(length_edit(Table::joint, id, "dowels.diameter", metres(dowel.diameter)));
            edits.push_back(length_edit(Table::joint, id, "dowels.length", metres(length)));
            edits.push_back(count_edit(Table::joint, id, "dowels.count", 1 + k));
        }
        return edits;
    };
    way.says = [=, &bench, place = between(bench, finding)](int k) {
        return fmt::format("glue {} dowels {} and {} long into each joint {}", 1 + k, dowel.words, bench.words(length), place);
    };
    way.most = kMostFasteners - 1;
    way.may_end = true;
    return {std::move(way)};
}

Ways screws_as_well(const RemedyBench& bench, const Finding& finding)
{
    const auto joints = plain_faces(bench, finding);
    if (joints.empty() || finding.about.parts.size() != 2) return {};
    const auto through = through_of(bench, joints.front());
    if (!through) return {};
    const bool inch = bench.units == LengthUnit::inch;
    const double diameter = inch ? gauge_diameter(8) : 0.004, step = bench.glued_step();
    const double most = through->first + through->second - kWallBehind;
    double length = rounded_up(through->first + kScrewHold * diameter, step);
    while (length > most) length -= step;
    if (length <= through->first + 4 * diameter) return {};
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const std::size_t j : joints) {
            const std::string id = id_at(bench, j);
            edits.push_back(text_edit(Table::joint, id, "kind", "screws"));
            edits.push_back(length_edit(Table::joint, id, "screws.diameter", metres(diameter)));
            edits.push_back(length_edit(Table::joint, id, "screws.length", metres(length)));
            edits.push_back(count_edit(Table::joint, id, "screws.count", k));
        }
        return edits;
    };
    way.says = [=, &bench, place = between(bench, finding)](int k) {
        return fmt::format("screw each joint {} as well, by {} wood screw{} {} and {} long", place, k, k == 1 ? "" : "s",
                           inch ? std::string("of number 8") : bench.words(diameter) + " thick", bench.words(length));
    };
    way.most = kMostFasteners;
    way.guess = 2;
    way.may_end = true;
    return {std::move(way)};
}

} // namespace jointwright
