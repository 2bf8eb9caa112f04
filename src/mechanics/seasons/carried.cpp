#include "mechanics/seasons/carried.hpp"

#include <Eigen/SparseCholesky>

#include <algorithm>

namespace jointwright {

namespace {

// Where a wood has no modulus of its own: middling wood along and across its grain. Only their ratio counts.
constexpr double kUsualAlong = 12e9, kUsualAcross = 0.8e9;
constexpr double kStiffTie = 1e6; // times the stiffest bar: a joint that does not give

double modulus_of(const Given& given, std::size_t copy, Axis axis)
{
    const WoodState& wood = given.state_of(copy).usual;
    if (runs_along(*given.piece, copy, axis)) return wood.modulus_along ? wood.modulus_along->value.value() : kUsualAlong;
    return wood.modulus_tangential ? wood.modulus_tangential->value.value() : kUsualAcross;
}

double volume_of(const Part& part) { return in_metres(part.length) * in_metres(part.width) * in_metres(part.thickness); }

} // namespace

CarriedParts::CarriedParts(const Given& given, const Ties& ties, Axis axis, const TiedBody* without)
{
    make_bars(given, ties, axis, without);
    const std::vector<Tie> all = ties_between(given, ties, axis);
    group_bars(all);
    solve(all);
}

void CarriedParts::make_bars(const Given& given, const Ties& ties, Axis axis, const TiedBody* without)
{
    const Piece& piece = *given.piece;
    bar_of_.assign(piece.copies.size(), kNone);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const TiedBody& body = ties.body_of(i);
        if (body.copies.front() != i || (without && without->copies.front() == i)) continue;
        Bar bar;
        bar.middle = body.box.middle(axis);
        bar.free = ties.body_strain(i, axis);
        bar.group = bars_.size();
        for (const std::size_t member : body.copies) {
            bar.stiffness += modulus_of(given, member, axis) * volume_of(piece.part_of(member));
            bar_of_[member] = bars_.size();
        }
        bars_.push_back(bar);
    }
}

std::vector<CarriedParts::Tie> CarriedParts::ties_between(const Given& given, const Ties& ties, Axis axis) const
{
    std::vector<Tie> all;
    const auto& contacts = given.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const std::size_t a = bar_of_[contacts[c].first], b = bar_of_[contacts[c].second];
        if (!contacts[c].joint || a == kNone || b == kNone || a == b) continue;
        for (const double at : ties.held_places(c, axis)) all.push_back({a, b, at});
    }
    return all;
}

void CarriedParts::group_bars(const std::vector<Tie>& all)
{
    bool changed = true; // the lowest bar of a group stands for it
    while (changed) {
        changed = false;
        for (const Tie& tie : all) {
            const std::size_t least = std::min(bars_[tie.a].group, bars_[tie.b].group);
            changed = changed || bars_[tie.a].group != least || bars_[tie.b].group != least;
            bars_[tie.a].group = bars_[tie.b].group = least;
        }
    }
}

void CarriedParts::solve(const std::vector<Tie>& all)
{
    const Eigen::Index size = 2 * static_cast<Eigen::Index>(bars_.size()); // of each bar its shift and its strain
    if (size == 0) return;
    const auto shift = [](std::size_t bar) { return 2 * static_cast<Eigen::Index>(bar); };
    double stiffest = 0;
    for (const Bar& bar : bars_) stiffest = std::max(stiffest, bar.stiffness);
    const double firm = kStiffTie * std::max(stiffest, 1.0);
    std::vector<Eigen::Triplet<double>> entries;
    Eigen::MatrixXd pulls = Eigen::MatrixXd::Zero(size, 2);
    for (std::size_t i = 0; i < bars_.size(); ++i) {
        const Bar& bar = bars_[i];
        const double stiffness = std::max(bar.stiffness, 1e-9 * firm);
        entries.emplace_back(shift(i) + 1, shift(i) + 1, stiffness);
        pulls(shift(i) + 1, 0) = stiffness * bar.free.dry;
        pulls(shift(i) + 1, 1) = stiffness * bar.free.damp;
        if (bar.group == i) entries.emplace_back(shift(i), shift(i), firm); // one of each group stays where it is
    }
    for (const Tie& tie : all) {
        const Eigen::Index at[4] = {shift(tie.a), shift(tie.a) + 1, shift(tie.b), shift(tie.b) + 1};
        const double share[4] = {1, tie.at - bars_[tie.a].middle, -1, bars_[tie.b].middle - tie.at};
        for (int i = 0; i < 4; ++i)
            for (int j = 0; j < 4; ++j) entries.emplace_back(at[i], at[j], firm * share[i] * share[j]);
    }
    Eigen::SparseMatrix<double> matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factored(matrix);
    const Eigen::MatrixXd solved = factored.solve(pulls);
    for (std::size_t i = 0; i < bars_.size(); ++i) {
        bars_[i].shift = {solved(shift(i), 0), solved(shift(i), 1)};
        bars_[i].strain = {solved(shift(i) + 1, 0), solved(shift(i) + 1, 1)};
    }
}

bool CarriedParts::tied(std::size_t a, std::size_t b) const
{
    return bar_of_[a] != kNone && bar_of_[b] != kNone && bars_[bar_of_[a]].group == bars_[bar_of_[b]].group;
}

SeasonalStrains CarriedParts::apart(std::size_t a, double at_a, std::size_t b, double at_b) const
{
    if (!tied(a, b)) return {};
    const Bar &one = bars_[bar_of_[a]], &other = bars_[bar_of_[b]];
    const double from_a = at_a - one.middle, from_b = at_b - other.middle;
    return {other.shift.dry + other.strain.dry * from_b - one.shift.dry - one.strain.dry * from_a,
            other.shift.damp + other.strain.damp * from_b - one.shift.damp - one.strain.damp * from_a};
}

} // namespace jointwright
