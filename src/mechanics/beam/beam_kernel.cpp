#include "mechanics/beam/beam_kernel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace jointwright::kernel {

namespace {

constexpr double kSamePlace = 1e-6; // m
constexpr int kLeastElements = 24;

void keep_distinct(std::vector<double>& places)
{
    std::sort(places.begin(), places.end());
    std::vector<double> kept;
    for (const double p : places)
        if (kept.empty() || p - kept.back() > kSamePlace) kept.push_back(p);
    places = std::move(kept);
}

/// Shape functions of a cubic element at s = x/L in 0..1, for unit displacement and turn at each end.
Eigen::Vector4d shape(double s, double length)
{
    const double s2 = s * s, s3 = s2 * s;
    return {1 - 3 * s2 + 2 * s3, length * (s - 2 * s2 + s3), 3 * s2 - 2 * s3, length * (s3 - s2)};
}

} // namespace

Beam::Beam(const std::vector<BeamCell>& cells, std::vector<double> supports, const std::vector<bool>& built_in)
    : supports_(std::move(supports))
{
    place_nodes(cells);
    for (std::size_t i = 0; i + 1 < nodes_.size(); ++i) {
        const double middle = (nodes_[i] + nodes_[i + 1]) / 2, length = nodes_[i + 1] - nodes_[i];
        const auto beyond =
            std::upper_bound(cells.begin(), cells.end(), middle, [](double x, const BeamCell& cell) { return x < cell.to; });
        const BeamCell& here = beyond == cells.end() ? cells.back() : *beyond;
        const double ratio = here.shear > 0 ? 12 * here.bending / (here.shear * length * length) : 0;
        elements_.push_back({nodes_[i], length, here.bending, ratio});
    }
    hold(built_in);
    factorise();
}

void Beam::place_nodes(const std::vector<BeamCell>& cells)
{
    const double from = cells.front().from, to = cells.back().to;
    for (const BeamCell& cell : cells) nodes_.push_back(cell.from);
    nodes_.push_back(to);
    for (double& s : supports_) s = std::clamp(s, from, to);
    nodes_.insert(nodes_.end(), supports_.begin(), supports_.end());
    keep_distinct(nodes_);
    std::vector<double> finer = nodes_;
    const double step = (to - from) / kLeastElements;
    for (std::size_t i = 0; i + 1 < nodes_.size(); ++i) {
        const int parts = static_cast<int>(std::ceil((nodes_[i + 1] - nodes_[i]) / step - 1e-9));
        for (int k = 1; k < parts; ++k) finer.push_back(nodes_[i] + (nodes_[i + 1] - nodes_[i]) * k / parts);
    }
    keep_distinct(finer);
    nodes_ = std::move(finer);
}

void Beam::hold(const std::vector<bool>& built_in)
{
    free_of_.assign(2 * nodes_.size(), 0);
    for (std::size_t s = 0; s < supports_.size(); ++s) {
        const double place = supports_[s];
        const auto nearest = std::min_element(nodes_.begin(), nodes_.end(),
                                              [place](double a, double b) { return std::abs(a - place) < std::abs(b - place); });
        support_node_.push_back(static_cast<int>(nearest - nodes_.begin()));
        const auto sinks = static_cast<std::size_t>(2 * support_node_.back());
        free_of_[sinks] = -1;
        if (supports_.size() == 1 || (s < built_in.size() && built_in[s])) free_of_[sinks + 1] = -1;
    }
    for (int& f : free_of_)
        if (f == 0) f = free_++;
}

void Beam::factorise()
{
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(16 * elements_.size());
    for (std::size_t e = 0; e < elements_.size(); ++e) {
        const Eigen::Matrix4d k = stiffness(elements_[e]);
        for (int i = 0; i < 4; ++i)
            for (int j = 0; j < 4; ++j) {
                const int row = free_of_[2 * e + static_cast<std::size_t>(i)],
                          column = free_of_[2 * e + static_cast<std::size_t>(j)];
                if (row >= column && column >= 0) entries.emplace_back(row, column, k(i, j));
            }
    }
    Eigen::SparseMatrix<double> matrix(free_, free_);
    matrix.setFromTriplets(entries.begin(), entries.end());
    factor_ = std::make_shared<const Factor>(matrix);
}

Eigen::Matrix4d Beam::stiffness(const Element& element) const
{
    const double l = element.length, p = element.ratio;
    Eigen::Matrix4d k;
    k << 12, 6 * l, -12, 6 * l,                          //
        6 * l, (4 + p) * l * l, -6 * l, (2 - p) * l * l, //
        -12, -6 * l, 12, -6 * l,                         //
        6 * l, (2 - p) * l * l, -6 * l, (4 + p) * l * l;
    return k * (element.bending / ((1 + p) * l * l * l));
}

void Beam::add_load(Eigen::VectorXd& nodal, std::vector<Eigen::Vector4d>& equivalent, const BeamLoad& load) const
{
    const double first = nodes_.front(), last = nodes_.back();
    const double from = std::clamp(load.from, first, last), to = std::clamp(load.to, first, last);
    const auto put = [&](std::size_t e, const Eigen::Vector4d& p) {
        nodal.segment<4>(static_cast<int>(2 * e)) += p;
        equivalent[e] += p;
    };
    if (to - from <= kSamePlace) {
        std::size_t e = 0;
        while (e + 1 < elements_.size() && elements_[e].from + elements_[e].length < from - kSamePlace) ++e;
        // At a node the force belongs to neither element: the shear jumps between the two.
        for (std::size_t end = 0; end < 2; ++end)
            if (std::abs(nodes_[e + end] - from) <= kSamePlace) {
                nodal(static_cast<int>(2 * (e + end))) += load.force;
                return;
            }
        put(e, shape((from - elements_[e].from) / elements_[e].length, elements_[e].length) * load.force);
        return;
    }
    // Three-point Gauss over the loaded stretch of each element: exact for cubic shapes.
    constexpr std::array<double, 3> place{-0.7745966692414834, 0, 0.7745966692414834}, weight{5.0 / 9, 8.0 / 9, 5.0 / 9};
    for (std::size_t e = 0; e < elements_.size(); ++e) {
        const double a = std::max(from, elements_[e].from), b = std::min(to, elements_[e].from + elements_[e].length);
        if (b - a <= 0) continue;
        Eigen::Vector4d p = Eigen::Vector4d::Zero();
        for (std::size_t g = 0; g < 3; ++g) {
            const double x = (a + b) / 2 + place[g] * (b - a) / 2;
            p += shape((x - elements_[e].from) / elements_[e].length, elements_[e].length) * weight[g] / 2;
        }
        put(e, p * (load.force * (b - a) / (to - from)));
    }
}

BeamResponse Beam::solve(const std::vector<BeamLoad>& loads) const
{
    const int unknowns = static_cast<int>(free_of_.size());
    Eigen::VectorXd nodal = Eigen::VectorXd::Zero(unknowns);
    std::vector<Eigen::Vector4d> equivalent(elements_.size(), Eigen::Vector4d::Zero());
    for (const BeamLoad& load : loads) add_load(nodal, equivalent, load);

    Eigen::VectorXd reduced(free_);
    for (int i = 0; i < unknowns; ++i)
        if (free_of_[static_cast<std::size_t>(i)] >= 0) reduced(free_of_[static_cast<std::size_t>(i)]) = nodal(i);
    const Eigen::VectorXd solved = factor_->solve(reduced);
    Eigen::VectorXd u = Eigen::VectorXd::Zero(unknowns);
    for (int i = 0; i < unknowns; ++i)
        if (free_of_[static_cast<std::size_t>(i)] >= 0) u(i) = solved(free_of_[static_cast<std::size_t>(i)]);

    BeamResponse response;
    Eigen::VectorXd held = nodal; // loads less element forces: what the supports give, upwards
    for (std::size_t e = 0; e < elements_.size(); ++e) {
        const int at = static_cast<int>(2 * e);
        const Eigen::Vector4d ku = stiffness(elements_[e]) * u.segment<4>(at);
        held.segment<4>(at) -= ku;
        const Eigen::Vector4d f = ku - equivalent[e];
        response.at.insert(response.at.end(), {elements_[e].from, elements_[e].from + elements_[e].length});
        response.sag.insert(response.sag.end(), {u(at), u(at + 2)});
        response.moment.insert(response.moment.end(), {f(1), -f(3)});
        response.shear.insert(response.shear.end(), {-f(0), f(2)});
    }
    for (const int node : support_node_) response.reactions.push_back(held(2 * node));
    return response;
}

} // namespace jointwright::kernel
