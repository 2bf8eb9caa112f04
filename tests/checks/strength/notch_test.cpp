// notch: cuts from the pressed and from the stretched side.

#include "catch.hpp"
#include "checks/trestle.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A board on edge, 22 × 76 mm, with one notch.
Trestle notched(const std::string& from, const std::string& depth, const std::string& first, double newtons = 300)
{
    Trestle t;
    t.width_mm = 76;
    t.thickness_mm = 22;
    t.face = "y";
    t.shape = "notches = [ { from = \"" + from + "\", depth = " + depth + ", width = 40, first = " + first +
              ", step = 60, count = 1 } ]\n";
    t.more = point_load(std::to_string(newtons), "500");
    return t;
}

Finding notch(const Trestle& t) { return finding_of(content_of(t.text()).findings, "notch", "board"); }

/// Gustafsson 1988 (from memory): shear force at which a sharp notch cracks [N].
double cracks_at(double b, double d, double alpha, double moment_over_shear, double energy, double e, double g)
{
    return b * alpha * d * std::sqrt(energy / d) /
           (std::sqrt(0.6 * (alpha - alpha * alpha) / g) +
            moment_over_shear / d * std::sqrt(6 * (1 / alpha - alpha * alpha) / e));
}

} // namespace

TEST_CASE("A notch from the pressed side costs depth and nothing else", "[notch]")
{
    const Finding f = notch(notched("top", "20", "480"));
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(value_of(f, "depth_left"), WithinRel(0.056, 1e-9));
    CHECK_THAT(value_of(f, "notch_depth"), WithinRel(0.020, 1e-9));
    // The net section carries: at its corner 20 mm from the middle, or in it.
    const auto t = notched("top", "20", "480");
    const Finding bending = finding_of(content_of(t.text()).findings, "bending", "board");
    CHECK_THAT(value_of(bending, "net_depth"), WithinRel(0.056, 1e-9));
}

TEST_CASE("A notch from the stretched side is judged by the crack it starts", "[notch]")
{
    const Trestle t = notched("bottom", "10", "300");
    const Finding f = notch(t);
    const auto bench = bench_of(t.text());
    const PartState& state = bench->prepared.parts[1];
    CHECK_THAT(value_of(f, "depth_left_share"), WithinRel(66.0 / 76, 1e-9));
    // Worst at the corner nearer the middle, 340 mm from the board's end, 320 mm from the bearing's middle.
    const double q = bench->prepared.masses[bench->copy("board #1")] * kStandardGravity, half = (300 + q * 0.960) / 2, x = 0.320;
    const double shear = half - q * x, moment = half * x - q * x * x / 2 - q * 0.020 * 0.020 / 2;
    CHECK_THAT(value_of(f, "shear_force"), WithinRel(shear, 1e-6));
    const double cracks = cracks_at(0.022, 0.076, 66.0 / 76, moment / shear, 300, state.loaded.modulus_along->value.value(),
                                    state.loaded.shear_modulus_lr->value.value());
    // The posts, held a little by their feet, take off a trifle of the moment.
    CHECK_THAT(value_of(f, "moment"), WithinRel(moment, 1e-4));
    CHECK_THAT(*f.utilisation, WithinRel(shear / (cracks * (1 - 1.645 * 0.25) * 0.9 / 2.3), 1e-4));
    CHECK_THAT(value_of(f, "resistance_moment"), WithinRel(moment / *f.utilisation, 1e-4));
}

TEST_CASE("Oak 76 mm deep cut to 66 mm cracks at about 28 MPa of net bending", "[notch]")
{
    // Four depths from the support: M = 4 V d. Worked by hand to two digits with 1.10 × 12.3 GPa, G/E 0.086 and 300 J/m².
    const double e = 1.1 * 12.3e9, alpha = 66.0 / 76, d = 0.076, b = 0.022;
    const double shear = cracks_at(b, d, alpha, 4 * d, 300, e, 0.086 * e);
    CHECK_THAT(6 * shear * 4 * d / (b * 0.066 * 0.066) * 1e-6, WithinAbs(28, 1));
}

TEST_CASE("A notch in the middle third of the stretched side warns at least, however light the load", "[notch]")
{
    const Finding f = notch(notched("bottom", "6", "480", 20));
    CHECK(*f.utilisation < 1);
    CHECK(f.verdict == Verdict::warn);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("pressed side"));
    CHECK_THAT(f.headline, ContainsSubstring("practice advises against"));
}

TEST_CASE("Outside the middle third a sixth of the depth is the limit of practice", "[notch]")
{
    CHECK(notch(notched("bottom", "12", "200", 20)).verdict == Verdict::pass);
    CHECK(notch(notched("bottom", "13", "200", 20)).verdict == Verdict::warn);
}

TEST_CASE("A deep notch under load fails", "[notch]")
{
    const Finding f = notch(notched("bottom", "30", "480", 600));
    CHECK(f.verdict == Verdict::fail);
    CHECK(*f.utilisation > 1);
}

TEST_CASE("Parts without a notch have no finding", "[notch]")
{
    Trestle t;
    t.more = point_load("300", "500");
    CHECK(count_of(content_of(t.text()).findings, "notch") == 0);
}

TEST_CASE("A softwood's fracture energy follows its density", "[notch]")
{
    Trestle t = notched("bottom", "10", "300");
    t.species = "eastern white pine";
    const Finding f = notch(t);
    const auto bench = bench_of(t.text());
    const PartState& state = bench->prepared.parts[1];
    const double energy = 1.07 * state.loaded.density->value.value() - 162; // G_c [J/m²], Gustafsson 1988 from memory
    bool shown = false;
    for (const WorkingStep& step : f.working)
        shown = shown || step.with.find("G_c = " + std::to_string(static_cast<int>(std::lround(energy)))) != std::string::npos;
    CHECK(shown);
}
