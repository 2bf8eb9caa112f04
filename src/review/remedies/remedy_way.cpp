#include "review/remedies/remedy_way.hpp"

#include "measure/write.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kOnStep = 1e-6; // of a step: what lies so near to one is on it

/// Ways by check. A check that is not here is mended by no size: what it says in words stands alone.
struct WaysOfCheck {
    std::string_view check;
    std::vector<MakeWays> ways;
    bool keeps_words = false;
};

const std::vector<WaysOfCheck>& ways_of_checks()
{
    static const std::vector<WaysOfCheck> all{
        {"sag", {bent_way_thicker, other_wood_in_stock}},
        {"bending", {bent_way_thicker, wider, other_wood_in_stock}},
        {"shear", {bent_way_thicker, wider, other_wood_in_stock}},
        {"creep", {bent_way_thicker, other_wood_in_stock}, true},
        {"leg", {both_ways_thicker, other_wood_in_stock}, true},
        {"notch", {shallower_notches, bent_way_thicker}},
        {"bearing", {wider, other_wood_in_stock}},
        {"rack", {deeper_rails, longer_tenon, all_glued, both_ways_thicker}, true},
        {"stands", {all_glued}, true},
        {"joint-capacity",
         {longer_tenon, wider_tenon, glue_instead_of_dry, thicker_tenon, deeper_slip, more_fasteners, longer_fasteners,
          thicker_fasteners, thicker_bridle, deeper_rail_and_tenon},
         true},
        {"let-ins", {mitred_ends, one_tenon_shorter, shallower_let_in}, true},
        {"fastener", {more_fasteners, longer_fasteners, thicker_fasteners, thinner_screws}, true},
        {"glue-line",
         {longer_tenon, wider_tenon, deeper_slip, more_fasteners, longer_fasteners, dowels_instead, screws_as_well,
          deeper_rail_and_tenon, wider},
         true},
        {"cross-grain", {glued_at_the_middle, buttons_instead, left_dry, settled_stock, quarter_sawn}},
        {"slot-length", {longer_slot, settled_stock, quarter_sawn}},
        {"bind", {more_clearance, narrower}},
        {"groove-room", {deeper_groove, narrower_panel, deeper_groove_pinned, settled_stock, quarter_sawn}},
        {"slat-gap", {narrower_with_gaps, wider_gap, narrower, settled_stock, quarter_sawn}},
        {"cup", {more_boards, bent_way_thicker, quarter_sawn}},
        {"out-of-square", {settled_stock, quarter_sawn}},
        {"mitre-gap", {settled_stock, quarter_sawn, narrower}},
        {"glue-suits", {glue_for_damp}},
        {"assembly-time", {slower_glue}},
    };
    return all;
}

const WaysOfCheck* ways_of(const std::string& check)
{
    for (const WaysOfCheck& row : ways_of_checks())
        if (row.check == check) return &row;
    return nullptr;
}

} // namespace

RemedyBench::RemedyBench(const EditableDesign& of, const Facts& tables, const Layout& drawn, LengthUnit read_in)
    : design(of), piece(of.piece()), facts(tables), layout(drawn), units(read_in)
{
    for (const Contact& contact : drawn.contacts) touching.insert(std::minmax(contact.first, contact.second));
}

std::optional<LaidOut> RemedyBench::changed(const std::vector<DesignEdit>& edits) const
{
    DesignRead read = design.with(edits);
    if (!read.piece) return std::nullopt;
    LaidOut laid = lay_out(*std::move(read.piece));
    std::set<std::pair<std::size_t, std::size_t>> still;
    for (const Contact& contact : laid.layout->contacts) still.insert(std::minmax(contact.first, contact.second));
    const bool whole = std::includes(still.begin(), still.end(), touching.begin(), touching.end());
    if (!whole) return std::nullopt;
    return laid;
}

double RemedyBench::shop_step() const { return units == LengthUnit::inch ? kMetresPerInch / 16 : 0.001; }
double RemedyBench::fine_step() const { return units == LengthUnit::inch ? kMetresPerInch / 64 : 0.0005; }
double RemedyBench::glued_step() const { return units == LengthUnit::inch ? kMetresPerInch / 4 : 0.005; }

double RemedyBench::above(double size, double step, int count) const
{
    return (std::floor(size / step + kOnStep) + count) * step;
}

double RemedyBench::below(double size, double step, int count) const { return (std::ceil(size / step - kOnStep) - count) * step; }

std::string RemedyBench::words(double length) const { return write_length(metres(length), units); }

std::vector<RemedyWay> ways_to_mend(const RemedyBench& bench, const Finding& finding)
{
    std::vector<RemedyWay> ways;
    const WaysOfCheck* row = ways_of(finding.check);
    if (row == nullptr) return ways;
    for (const MakeWays make : row->ways)
        for (RemedyWay& way : make(bench, finding)) ways.push_back(std::move(way));
    return ways;
}

std::optional<double> value_of(const Finding& finding, std::string_view name)
{
    for (const NamedValue& value : finding.values)
        if (value.name == name && std::isfinite(value.value)) return value.value;
    return std::nullopt;
}

int steps_to_limit(const Finding& finding, double size, double step, double power)
{
    const double use = finding.utilisation.value_or(1);
    if (!(use > 1)) return 1;
    const double wanted = size * (std::pow(use, 1 / power) - 1) / step;
    return std::max(1, static_cast<int>(std::ceil(std::min(wanted, 1000.0))));
}

bool keeps_its_words(const Finding& finding)
{
    const WaysOfCheck* row = ways_of(finding.check);
    return row == nullptr || row->keeps_words;
}

} // namespace jointwright
