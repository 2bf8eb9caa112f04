// Beams on several supports, with overhangs, taper and notches, against closed forms and quadrature.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "mechanics/beam/beam_on_supports.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <cmath>
#include <numeric>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

constexpr double kE = 12e9, kG = 0.75e9, kWide = 0.08, kDeep = 0.04; // Pa, m
constexpr double kEI = kE * kWide * kDeep * kDeep * kDeep / 12;
constexpr double kStiffInShear = 1e20; // Pa: shear deflection left out, as the closed forms of slender beams do

BeamOnSupports plank(double span, double shear_modulus = kStiffInShear)
{
    BeamOnSupports beam;
    beam.span = metres(span);
    beam.width = beam.far_width = metres(kWide);
    beam.depth = beam.far_depth = metres(kDeep);
    beam.modulus_along = pascals(kE);
    beam.shear_modulus = pascals(shear_modulus);
    return beam;
}

SupportedBeamAnswer solved(const BeamOnSupports& beam, const std::vector<PlacedLoad>& loads)
{
    return solve_on_supports(beam, loads, shared_facts());
}

PlacedLoad point_at(double force, double at) { return {newtons(force), metres(at), metres(at)}; }
PlacedLoad evenly(double force, double from, double to) { return {newtons(force), metres(from), metres(to)}; }

} // namespace

TEST_CASE("Two equal spans under an even load: 3/8, 10/8, 3/8, and −w L²/8 over the middle", "[beam][supports]")
{
    // Three-moment equation; largest deflection w L⁴/(185 E I) at 0.4215 L (184.6: the root of the cubic, worked out here).
    const double span = 1.2, w = 900;
    BeamOnSupports beam = plank(2 * span);
    beam.inner_supports = {metres(span)};
    const SupportedBeamAnswer answer = solved(beam, {evenly(w * 2 * span, 0, 2 * span)});
    REQUIRE(answer.reactions.size() == 3);
    CHECK_THAT(answer.reactions[0].value(), WithinRel(3.0 / 8 * w * span, 1e-9));
    CHECK_THAT(answer.reactions[1].value(), WithinRel(10.0 / 8 * w * span, 1e-9));
    CHECK_THAT(answer.moment.value(), WithinRel(-w * span * span / 8, 1e-9));
    CHECK_THAT(in_metres(answer.moment_at), WithinAbs(span, 1e-9));
    const double x = 0.421535; // of the span, from the outer support
    const double exact = w * std::pow(span, 4) * (x - 3 * std::pow(x, 3) + 2 * std::pow(x, 4)) / (48 * kEI);
    CHECK_THAT(in_metres(answer.deflection), WithinRel(exact, 1e-6));
    CHECK_THAT(answer.span_ratio, WithinRel(span / exact, 1e-6));
}

TEST_CASE("A load at the end of an overhang: P a²(L + a)/(3 E I), and the far support is pulled up", "[beam][supports]")
{
    const double span = 1.0, a = 0.3, load = 500;
    BeamOnSupports beam = plank(span);
    beam.overhang_right = metres(a);
    const SupportedBeamAnswer answer = solved(beam, {point_at(load, span + a)});
    CHECK_THAT(in_metres(answer.deflection), WithinRel(load * a * a * (span + a) / (3 * kEI), 1e-8));
    CHECK_THAT(in_metres(answer.deflection_at), WithinAbs(span + a, 1e-9));
    CHECK_THAT(answer.reactions[0].value(), WithinRel(-load * a / span, 1e-9));
    CHECK_THAT(answer.reactions[1].value(), WithinRel(load * (span + a) / span, 1e-9));
    CHECK_THAT(answer.moment.value(), WithinRel(-load * a, 1e-9));
    CHECK_THAT(in_metres(answer.bay), WithinAbs(a, 1e-9));

    // Mirrored, the same on the left.
    BeamOnSupports other = plank(span);
    other.overhang_left = metres(a);
    const SupportedBeamAnswer left = solved(other, {point_at(load, -a)});
    CHECK_THAT(in_metres(left.deflection), WithinRel(in_metres(answer.deflection), 1e-9));
    CHECK_THAT(left.reactions[1].value(), WithinRel(answer.reactions[0].value(), 1e-9));
    CHECK_THAT(in_metres(left.deflection_at), WithinAbs(-a, 1e-9));
}

TEST_CASE("A propped beam: 5/8 of an even load at the built-in end, W L³/(185 E I)", "[beam][supports]")
{
    const double span = 1.5, load = 800;
    BeamOnSupports beam = plank(span);
    beam.ends = BeamEnds::propped;
    const SupportedBeamAnswer answer = solved(beam, {evenly(load, 0, span)});
    CHECK_THAT(answer.reactions[0].value(), WithinRel(5.0 / 8 * load, 1e-9));
    CHECK_THAT(answer.moment.value(), WithinRel(-load * span / 8, 1e-9));
    // Handbook: kb 1/185 (three digits printed), at 0.4215 of the span from the free end.
    CHECK_THAT(in_metres(answer.deflection) * kEI / (load * span * span * span), WithinRel(1.0 / 185, 0.5 / 185));
    CHECK_THAT((span - in_metres(answer.deflection_at)) / span, WithinAbs(0.4215, 0.00005 + 1e-4));
}

TEST_CASE("Two supports: the solver and the handbook's closed forms agree, shear included", "[beam][supports]")
{
    const bool fixed = GENERATE(false, true);
    BeamOnSupports beam = plank(0.9, kG);
    beam.ends = fixed ? BeamEnds::fixed : BeamEnds::pinned;
    const SimpleBeam simple{beam.span, beam.width, beam.depth, beam.modulus_along, beam.shear_modulus, fixed};
    BeamLoads loads;
    loads.point = newtons(300);
    loads.uniform = newtons_per_metre(450);
    loads.patch = newtons(200);
    loads.patch_length = metres(0.25);
    const BeamAnswer closed = beam_answer(simple, loads, shared_facts());
    const SupportedBeamAnswer answer = solved(beam, placed_loads(beam, loads));
    CHECK_THAT(in_metres(answer.deflection), WithinRel(in_metres(closed.deflection), 1e-9));
    CHECK_THAT(answer.bending_stress.value(), WithinRel(closed.bending_stress.value(), 1e-9));
    CHECK_THAT(answer.shear_stress.value(), WithinRel(closed.shear_stress.value(), 1e-9));
}

TEST_CASE("A tapered cantilever against quadrature of the unit-load integral", "[beam][supports]")
{
    const double span = 0.8, load = 250, thin_end = 0.4;
    BeamOnSupports beam = plank(span, kG);
    beam.ends = BeamEnds::cantilever;
    beam.far_depth = metres(thin_end * kDeep);
    beam.far_width = metres(0.7 * kWide);
    const SupportedBeamAnswer answer = solved(beam, {point_at(load, span)});
    const auto section = [&](double x) {
        return std::pair(kWide * (1 + (0.7 - 1) * x / span), kDeep * (1 + (thin_end - 1) * x / span));
    };
    const auto slope = [&](double x) {
        const auto [b, d] = section(x);
        const double arm = span - x;
        return load * arm * arm / (kE * b * d * d * d / 12) + load / (kG * b * d * 5 / 6);
    };
    const double exact = boost::math::quadrature::gauss_kronrod<double, 31>::integrate(slope, 0.0, span, 10, 1e-12);
    const double in_a_step = (1 - thin_end) / thin_end / 240; // share of the depth that the taper takes in one of its 240 steps
    CHECK_THAT(in_metres(answer.deflection), WithinRel(exact, in_a_step * in_a_step / 2));

    // σ = 6 P (L − x)/(b d²) is not largest at the wall: found on a fine grid.
    double most = 0, most_at = 0;
    for (int i = 0; i <= 4000; ++i) {
        const double x = span * i / 4000;
        const auto [b, d] = section(x);
        const double sigma = 6 * load * (span - x) / (b * d * d);
        if (sigma > most) std::tie(most, most_at) = std::pair(sigma, x);
    }
    CHECK(most_at > 0.1 * span);
    CHECK_THAT(answer.bending_stress.value(), WithinRel(most, 1e-4));
    CHECK_THAT(in_metres(answer.bending_at), WithinAbs(most_at, span / 240));
    // The shear is the same everywhere: its stress is largest in the thinnest section, at the tip.
    CHECK_THAT(answer.shear_stress.value(), WithinRel(1.5 * load / (0.7 * kWide * thin_end * kDeep), 1e-9));
}

TEST_CASE("A notch leaves the net section: its stress, and its softness over its own width", "[beam][supports]")
{
    const double span = 1.0, load = 400, deep = 0.01, wide = 0.05;
    const BeamOnSupports whole = plank(span);
    BeamOnSupports cut = whole;
    cut.notches = {{true, metres(span / 2), metres(wide), metres(deep)}};
    const SupportedBeamAnswer plain = solved(whole, {point_at(load, span / 2)}),
                              notched = solved(cut, {point_at(load, span / 2)});
    const double net = kDeep - deep;
    CHECK_THAT(notched.bending_stress.value(), WithinRel(6 * load * span / 4 / (kWide * net * net), 1e-9));
    CHECK_THAT(notched.moment.value(), WithinRel(plain.moment.value(), 1e-9));
    // Unit-load integral over the notch alone: 2 ∫ (P x/2)(x/2)/E (1/I_net − 1/I) dx from (L − wide)/2 to L/2.
    const double softer = 1 / (kE * kWide * net * net * net / 12) - 1 / kEI;
    const double a = (span - wide) / 2, b = span / 2;
    const double more = 2 * load / 4 * softer * (b * b * b - a * a * a) / 3;
    CHECK_THAT(in_metres(notched.deflection) - in_metres(plain.deflection), WithinRel(more, 1e-6));
    CHECK_FALSE(notched.cut_on_stretched_side);

    BeamOnSupports below = cut;
    below.notches.front().from_top = false;
    CHECK(solved(below, {point_at(load, span / 2)}).cut_on_stretched_side);
}

TEST_CASE("Teeth between notches carry nothing where they are short, and all where they are long", "[beam][supports]")
{
    const double span = 1.0, load = 400, deep = 0.004;
    const auto stress_with_notches_at = [&](double first, double second) {
        BeamOnSupports beam = plank(span);
        beam.notches = {{true, metres(first), metres(0.02), metres(deep)}, {true, metres(second), metres(0.02), metres(deep)}};
        return solved(beam, {point_at(load, span / 2)}).bending_stress.value();
    };
    const double gross = 6 * load * span / 4 / (kWide * kDeep * kDeep), net = gross * std::pow(kDeep / (kDeep - deep), 2);
    // 30 mm between the notches, under ten times 4 mm: the net section at the middle of the span too. 60 mm: only at the notches, whose
    // inner edges have 0.94 of the largest moment; with 240 mm between them, 0.76, the whole section at the middle governs.
    CHECK_THAT(stress_with_notches_at(0.475, 0.525), WithinRel(net, 1e-9));
    CHECK_THAT(stress_with_notches_at(0.46, 0.54), WithinRel(0.94 * net, 1e-9));
    CHECK_THAT(stress_with_notches_at(0.37, 0.63), WithinRel(gross, 1e-9));
}

TEST_CASE("Supports carry what is laid on, whatever the beam", "[beam][supports]")
{
    BeamOnSupports beam = plank(2.0, kG);
    beam.inner_supports = {metres(0.5), metres(1.4)};
    beam.overhang_left = metres(0.2);
    beam.far_depth = metres(0.02);
    beam.notches = {{true, metres(0.9), metres(0.1), metres(0.005)}};
    const SupportedBeamAnswer answer = solved(beam, {point_at(120, -0.1), evenly(300, 0.3, 1.1), point_at(80, 1.9)});
    double up = 0, turning = 0;
    for (std::size_t i = 0; i < answer.reactions.size(); ++i) {
        up += answer.reactions[i].value();
        turning += answer.reactions[i].value() * in_metres(answer.supports[i]);
    }
    CHECK_THAT(up, WithinRel(500.0, 1e-9));
    CHECK_THAT(turning, WithinRel(120 * -0.1 + 300 * 0.7 + 80 * 1.9, 1e-9));
}
