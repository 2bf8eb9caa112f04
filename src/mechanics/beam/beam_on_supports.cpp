#include "mechanics/beam/beam_on_supports.hpp"

#include "measure/write.hpp"
#include "mechanics/beam/beam_kernel.hpp"

#include <boost/math/interpolators/barycentric_rational.hpp>
#include <boost/math/tools/minima.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace boost::math::interpolators {
}

namespace jointwright {

namespace {

// Cells along the beam. Each halving costs four binary digits in the solver, so that a straight beam gets no more than a smooth curve needs.
constexpr double kTaperCells = 240, kStraightCells = 60;
constexpr double kAlike = 1e-9; // m

/// Notches of one side that weaken the beam as one.
struct NotchRow {
    bool from_top;
    double from, to, depth;
};

struct NetSection {
    double breadth = 0, depth = 0;
    double inertia() const { return breadth * depth * depth * depth / 12; }
    double modulus() const { return breadth * depth * depth / 6; }
    double area() const { return breadth * depth; }
};

/// The shape of the beam, in SI doubles.
class BeamShape {
public:
    BeamShape(const BeamOnSupports& beam, double tooth_over_depth)
        : beam_(beam), left_(-in_metres(beam.overhang_left)), right_(in_metres(beam.span) + in_metres(beam.overhang_right))
    {
        for (const bool top : {true, false}) gather_rows(top, tooth_over_depth);
    }

    double left() const { return left_; }
    double right() const { return right_; }
    const std::vector<NotchRow>& rows() const { return rows_; }

    /// The section at a place, as it is on the side where `within` lies: a notch begins and ends with a step.
    NetSection section(double at, double within) const
    {
        const double share = std::clamp((at - left_) / (right_ - left_), 0.0, 1.0);
        NetSection net;
        net.breadth = in_metres(beam_.width) + share * (in_metres(beam_.far_width) - in_metres(beam_.width));
        net.depth = in_metres(beam_.depth) + share * (in_metres(beam_.far_depth) - in_metres(beam_.depth));
        for (const NotchRow& row : rows_)
            if (within > row.from && within < row.to) net.depth -= row.depth;
        return net;
    }

private:
    void gather_rows(bool top, double tooth_over_depth)
    {
        std::vector<NotchRow> rows;
        for (const BeamNotch& n : beam_.notches)
            if (n.from_top == top)
                rows.push_back({top, in_metres(n.middle) - in_metres(n.width) / 2, in_metres(n.middle) + in_metres(n.width) / 2,
                                in_metres(n.depth)});
        std::sort(rows.begin(), rows.end(), [](const NotchRow& a, const NotchRow& b) { return a.from < b.from; });
        for (const NotchRow& row : rows) {
            const bool joins = !rows_.empty() && rows_.back().from_top == top &&
                               row.from - rows_.back().to <= tooth_over_depth * std::max(row.depth, rows_.back().depth);
            if (!joins) {
                rows_.push_back(row);
                continue;
            }
            rows_.back().to = std::max(rows_.back().to, row.to);
            rows_.back().depth = std::max(rows_.back().depth, row.depth);
        }
    }

    const BeamOnSupports& beam_;
    double left_, right_;
    std::vector<NotchRow> rows_;
};

std::vector<double> support_places(const BeamOnSupports& beam)
{
    std::vector<double> places{0};
    for (const Length& inner : beam.inner_supports) places.push_back(in_metres(inner));
    if (beam.ends != BeamEnds::cantilever) places.push_back(in_metres(beam.span));
    return places;
}

std::vector<bool> built_in_at(const BeamOnSupports& beam, std::size_t supports)
{
    std::vector<bool> built_in(supports, false);
    built_in.front() = beam.ends != BeamEnds::pinned;
    if (beam.ends == BeamEnds::fixed) built_in.back() = true;
    return built_in;
}

/// Cells so fine that a taper is met, cut wherever something begins or ends.
std::vector<kernel::BeamCell> cells_of(const BeamOnSupports& beam, const BeamShape& shape, const std::vector<PlacedLoad>& loads)
{
    std::vector<double> cuts = support_places(beam);
    for (const PlacedLoad& load : loads) cuts.insert(cuts.end(), {in_metres(load.from), in_metres(load.to)});
    for (const NotchRow& row : shape.rows()) cuts.insert(cuts.end(), {row.from, row.to});
    for (double& cut : cuts) cut = std::clamp(cut, shape.left(), shape.right());
    cuts.insert(cuts.end(), {shape.left(), shape.right()});
    std::sort(cuts.begin(), cuts.end());

    std::vector<kernel::BeamCell> cells;
    const bool tapers = beam.far_depth != beam.depth || beam.far_width != beam.width;
    const double step = (shape.right() - shape.left()) / (tapers ? kTaperCells : kStraightCells);
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        const double from = cuts[i], length = cuts[i + 1] - from;
        if (length < 1e-6) continue;
        const int parts = static_cast<int>(std::ceil(length / step - 1e-9));
        for (int k = 0; k < parts; ++k) {
            const double a = from + length * k / parts, b = from + length * (k + 1) / parts, middle = (a + b) / 2;
            const NetSection net = shape.section(middle, middle);
            cells.push_back(
                {a, b, beam.modulus_along.value() * net.inertia(), beam.shear_modulus.value() * net.area() * 5.0 / 6});
        }
    }
    return cells;
}

/// Walks along the response and keeps the largest of everything.
class Extremes {
public:
    Extremes(const BeamShape& shape, const kernel::BeamResponse& response) : shape_(shape), r_(response)
    {
        for (std::size_t i = 0; i + 1 < r_.at.size(); i += 2) element(i);
    }

    double moment = 0, moment_at = 0, shear = 0, shear_at = 0;
    double bending_stress = 0, bending_at = 0, shear_stress = 0, shear_stress_at = 0;
    NetSection bending_section;
    bool stretched_notch = false;

private:
    void element(std::size_t i)
    {
        const double middle = (r_.at[i] + r_.at[i + 1]) / 2;
        place(r_.at[i], middle, r_.moment[i], r_.shear[i]);
        place(r_.at[i + 1], middle, r_.moment[i + 1], r_.shear[i + 1]);
        const double v0 = r_.shear[i], v1 = r_.shear[i + 1], length = r_.at[i + 1] - r_.at[i];
        if (v0 * v1 >= 0) return;
        // Under an even load the shear falls along a straight line; where it is zero the moment peaks.
        const double zero = v0 / (v0 - v1) * length;
        place(r_.at[i] + zero, middle, r_.moment[i] + v0 * zero / 2, 0);
    }

    void place(double at, double within, double m, double v)
    {
        const NetSection net = shape_.section(at, within);
        const double sigma = std::abs(m) / net.modulus(), tau = 1.5 * std::abs(v) / net.area();
        if (std::abs(m) > std::abs(moment) * (1 + kAlike)) std::tie(moment, moment_at) = std::pair(m, at);
        if (std::abs(v) > std::abs(shear) * (1 + kAlike)) std::tie(shear, shear_at) = std::pair(v, at);
        if (sigma > bending_stress * (1 + kAlike)) {
            std::tie(bending_stress, bending_at) = std::pair(sigma, at);
            bending_section = net;
        }
        if (tau > shear_stress * (1 + kAlike)) std::tie(shear_stress, shear_stress_at) = std::pair(tau, at);
        const double small = 1e-6 * std::abs(moment);
        for (const NotchRow& row : shape_.rows())
            if (within > row.from && within < row.to && (row.from_top ? m < -small : m > small)) stretched_notch = true;
    }

    const BeamShape& shape_;
    const kernel::BeamResponse& r_;
};

/// True when no force enters or leaves at a node between two, so that the deflection is one smooth curve there. Entries 2k − 1 and 2k of a
/// response are one node, seen from its left and from its right; nodes are given by the first of them.
bool is_smooth(const kernel::BeamResponse& r, std::size_t from, std::size_t to)
{
    for (std::size_t i = from + 2; i < to; i += 2)
        if (std::abs(r.shear[i] - r.shear[i + 1]) > 1e-6 * (std::abs(r.shear[i]) + std::abs(r.shear[i + 1]))) return false;
    return true;
}

/// The largest sag, with its place: at a node, or between nodes at the top of the quartic through the five nearest.
std::pair<double, double> largest_sag(const kernel::BeamResponse& r)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < r.sag.size(); ++i)
        if (std::abs(r.sag[i]) > std::abs(r.sag[best]) * (1 + kAlike)) best = i;
    const std::size_t reach = 4;
    if (best < reach || best + reach >= r.sag.size() || !is_smooth(r, best - reach, best + reach))
        return {r.sag[best], r.at[best]};
    std::vector<double> x, y;
    for (std::size_t i = best - reach; i <= best + reach; i += 2) {
        x.push_back(r.at[i]);
        y.push_back(std::abs(r.sag[i]));
    }
    const double sign = r.sag[best] < 0 ? -1 : 1, from = x[1], to = x[3];
    // Boost of Debian 12 has the curve in its namespace math, that of Debian 13 in math::interpolators.
    using namespace boost::math;
    using namespace boost::math::interpolators;
    const barycentric_rational<double> curve(std::move(x), std::move(y), reach);
    const auto [place, least] = boost::math::tools::brent_find_minima([&](double at) { return -curve(at); }, from, to,
                                                                      std::numeric_limits<float>::digits);
    return {-sign * least, place};
}

/// The stretch between supports, or the overhang, that a place lies in.
double bay_length(const BeamShape& shape, const std::vector<double>& supports, double at)
{
    std::vector<double> ends = supports;
    ends.insert(ends.begin(), shape.left());
    ends.push_back(shape.right());
    for (std::size_t i = 0; i + 1 < ends.size(); ++i)
        if (ends[i + 1] - ends[i] > kAlike && at <= ends[i + 1] + kAlike) return ends[i + 1] - ends[i];
    return ends.back() - ends.front();
}

std::string mm(double length) { return write_number(length * 1e3, 5) + " mm"; }

void explain(const BeamOnSupports& beam, const BeamShape& shape, const std::vector<PlacedLoad>& loads,
             const SupportedBeamAnswer& answer, const Extremes& most, const Facts& facts, Working& working)
{
    const std::string source = facts.cite("wood-handbook-2010", "eq. 9-2, solved with Timoshenko elements");
    std::string acting;
    for (const PlacedLoad& load : loads) {
        if (!acting.empty()) acting += "; ";
        acting += load.to > load.from ? fmt::format("{} N from {} to {}", write_number(load.force.value(), 4),
                                                    mm(in_metres(load.from)), mm(in_metres(load.to)))
                                      : fmt::format("{} N at {}", write_number(load.force.value(), 4), mm(in_metres(load.from)));
    }
    for (const NotchRow& row : shape.rows())
        working.push_back(
            {fmt::format("Depth that a notch, or a row of them, takes off at the {}", row.from_top ? "top" : "bottom"),
             "d_n = d − notch", fmt::format("from {} to {}", mm(row.from), mm(row.to)), row.depth, "m",
             facts.number("tooth_over_depth").cite.text()});
    for (std::size_t i = 0; i < answer.supports.size(); ++i)
        working.push_back({fmt::format("Support at {} pushes up with", mm(in_metres(answer.supports[i]))),
                           "equilibrium and equal slopes over each support", acting, answer.reactions[i].value(), "N", source});
    working.push_back({fmt::format("Largest bending moment, at {} (positive: stretched below)", mm(most.moment_at)), "M", "",
                       most.moment, "N m", source});
    working.push_back({fmt::format("Largest deflection, at {}", mm(in_metres(answer.deflection_at))),
                       "(E I v'')'' = w, with the shear part V/(G A')",
                       fmt::format("E = {} GPa, G = {} GPa", write_number(beam.modulus_along.value() * 1e-9, 4),
                                   write_number(beam.shear_modulus.value() * 1e-9, 4)),
                       answer.deflection.value(), "m", source});
    working.push_back({fmt::format("Bending stress, at {}", mm(most.bending_at)), "σ = 6 M/(b d²), net section",
                       fmt::format("b = {}, d = {}", mm(most.bending_section.breadth), mm(most.bending_section.depth)),
                       most.bending_stress, "Pa", "mechanics"});
    working.push_back({fmt::format("Shear stress, at {}", mm(most.shear_stress_at)), "τ = 3 V/(2 b d), net section",
                       fmt::format("largest V = {} N", write_number(most.shear, 4)), most.shear_stress, "Pa", "mechanics"});
}

} // namespace

SupportedBeamAnswer solve_on_supports(const BeamOnSupports& beam, const std::vector<PlacedLoad>& loads, const Facts& facts,
                                      Working* working)
{
    const BeamShape shape(beam, facts.number("tooth_over_depth").value);
    const std::vector<double> supports = support_places(beam);
    const kernel::Beam solver(cells_of(beam, shape, loads), supports, built_in_at(beam, supports.size()));
    std::vector<kernel::BeamLoad> acting;
    for (const PlacedLoad& load : loads) acting.push_back({in_metres(load.from), in_metres(load.to), load.force.value()});
    kernel::BeamResponse response = solver.solve(acting);
    const Extremes most(shape, response);

    SupportedBeamAnswer answer;
    const auto [sag, sag_at] = largest_sag(response);
    const double bay = bay_length(shape, supports, sag_at);
    answer.deflection = metres(sag);
    answer.deflection_at = metres(sag_at);
    answer.bay = metres(bay);
    answer.span_ratio = sag != 0 ? bay / std::abs(sag) : 0;
    answer.bending_stress = pascals(most.bending_stress);
    answer.bending_at = metres(most.bending_at);
    answer.shear_stress = pascals(most.shear_stress);
    answer.shear_at = metres(most.shear_stress_at);
    answer.moment = newton_metres(most.moment);
    answer.moment_at = metres(most.moment_at);
    answer.shear = newtons(most.shear);
    answer.shear_force_at = metres(most.shear_at);
    for (const double place : supports) answer.supports.push_back(metres(place));
    for (const double reaction : response.reactions) answer.reactions.push_back(newtons(reaction));
    answer.cut_on_stretched_side = most.stretched_notch;
    if (working) explain(beam, shape, loads, answer, most, facts, *working);
    answer.curves = {std::move(response.at), std::move(response.sag), std::move(response.moment), std::move(response.shear)};
    return answer;
}

std::vector<PlacedLoad> placed_loads(const BeamOnSupports& beam, const BeamLoads& loads)
{
    std::vector<PlacedLoad> placed;
    const Length middle = beam.span / 2.0, left = -beam.overhang_left, right = beam.span + beam.overhang_right;
    if (loads.point.value() != 0) placed.push_back({loads.point, middle, middle});
    if (loads.patch.value() != 0)
        placed.push_back({loads.patch, middle - loads.patch_length / 2.0, middle + loads.patch_length / 2.0});
    if (loads.uniform.value() != 0) placed.push_back({newtons(loads.uniform.value() * in_metres(right - left)), left, right});
    return placed;
}

} // namespace jointwright
