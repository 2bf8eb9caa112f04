// Seats and shelves worked by hand, through the whole program. Cases of our own: 12 % moisture throughout.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <cmath>

using namespace checked;

namespace {

constexpr const char* kRoom = R"(
[room]
driest = { moisture = 12 }
dampest = { moisture = 12 }
moisture_at_glue_up = 12
)";

/// Two long rails of a bench, 7/8 × 3 in over 39 in, notched 0.4 in deep all along for its slats; people sit right on them.
constexpr const char* kNotchedRails = R"(
[piece]
name = "Rails"
units = "in"
use = "seat"
carries = ["rail"]
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "post"
wood = "oak"
length = 14
width = 2
thickness = 0.1
grain = "z"
face = "x"
at = [-0.05, 0, 0]
copies = [ { at = [38.95, 0, 0] }, { at = [-0.05, 12, 0] }, { at = [38.95, 12, 0] } ]
[[part]]
id = "rail"
wood = "oak"
length = 39.1
width = 3
thickness = 0.875
grain = "x"
face = "y"
at = [-0.05, 0.5, 14]
copies = [ { at = [-0.05, 12.5, 14] } ]
notches = [ { from = "top", depth = 0.4, width = 1.75, first = 0.1, step = 2.65, count = 15 } ]
[limits]
seats = 2
sitter = "120 kg"
sag = "span/240"
)";

/// A load that lies evenly on both rails.
std::string on_both_rails(double newtons)
{
    return "[[load]]\nname = \"even\"\non = \"rail\"\nforce = \"" + std::to_string(newtons) +
           " N\"\npatch = [39, 13]\nat = [19.5, 7]\n";
}

/// Slats of a bench, 1 3/4 × 5/8 in, between bearings 12 in apart.
constexpr const char* kSlats = R"(
[piece]
name = "Slats"
units = "in"
use = "seat"
carries = ["slat"]
[[wood]]
id = "cherry"
species = "black cherry"
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "ledge"
wood = "oak"
length = 40
width = 16
thickness = 0.5
grain = "x"
face = "y"
at = [0, 0, 0]
copies = [ { at = [0, 12, 0] } ]
[[part]]
id = "slat"
wood = "cherry"
length = 12.5
width = 1.75
thickness = 0.625
grain = "y"
face = "z"
at = [1, 0, 16]
repeat = { count = 14, along = "x", gap = 0.5 }
[limits]
seats = 1
)";

/// A shelf of 18 mm white pine, 280 mm deep, on two bearings.
constexpr const char* kShelf = R"(
[piece]
name = "Shelf"
units = "mm"
use = "shelf"
carries = ["shelf"]
[[wood]]
id = "pine"
species = "eastern white pine"
[[part]]
id = "bearing"
wood = "pine"
length = 300
width = 280
thickness = 10
grain = "z"
face = "x"
at = [0, 0, 0]
copies = [ { at = [$span, 0, 0] } ]
[[part]]
id = "shelf"
wood = "pine"
length = $length
width = 280
thickness = 18
grain = "x"
face = "z"
at = [0, 0, 300]
[limits]
shelf_load = "392.3 N/m"
)"; // 40 kg of books on each metre

/// Case of a finding that is not its worst: the finding with other loads struck out is not to be had, so the members are asked.
double stress_in(const Bench& bench, std::string_view part_copy, std::string_view load_case)
{
    for (const MemberResult& m : bench.prepared.statics.members)
        if (m.copy == bench.copy(part_copy) && bench.prepared.statics.cases.cases[m.load_case].name == load_case) return m.stress;
    throw std::logic_error("no such case: " + std::string(load_case));
}

double sag_in(const Bench& bench, std::string_view part_copy, std::string_view load_case)
{
    double most = 0;
    for (const MemberResult& m : bench.prepared.statics.members)
        if (m.copy == bench.copy(part_copy) && bench.prepared.statics.cases.cases[m.load_case].name.find(load_case) == 0)
            most = std::max(most, m.sag);
    return most;
}

/// The largest stress of a part; what lies on others turns freely there.
double free_stress_of(const Bench& bench, std::string_view part)
{
    double most = 0;
    for (const MemberResult& m : bench.prepared.statics.members)
        if (bench.piece.part_of(m.copy).id == part) most = std::max(most, m.stress);
    return most;
}

} // namespace

TEST_CASE("A notched oak rail under half of two sitters", "[seat][published]")
{
    // 1180 N evenly on the net section: 9.1 MPa of 37.6, a quarter used; sag 2.3 mm of 4.1. Proof load 1300 N: 10.0 MPa of 65.4.
    const std::string text = std::string(kNotchedRails) + kRoom;
    const auto findings = content_of(text).findings;
    const auto bench = bench_of(text);
    const auto even = bench_of(text + on_both_rails(2 * 1180)), proof = bench_of(text + on_both_rails(2 * 1300));
    CHECK_THAT(stress_in(*even, "rail #1", "even"), WithinAbs(9.1e6, 0.05e6));
    CHECK_THAT(stress_in(*proof, "rail #1", "even"), WithinAbs(10.0e6, 0.1e6)); // its own weight, 0.08 MPa, is left out by hand
    // 105 MPa, V 16 %, × 1.15/2.3 or /1.15, 66 mm deep: (51/66)^(1/9).
    const double lower = 105 * (1 - 1.645 * 0.16) * std::pow(51 / 66.04, 1.0 / 9);
    CHECK_THAT(lower * 1.15 / 2.3, WithinAbs(37.6, 0.05));
    CHECK_THAT(lower / 1.15, WithinAbs(65.4, 0.05));
    const Finding& bending = finding_of(findings, "bending", "rail");
    CHECK(bending.verdict == Verdict::pass);
    const double resistance = value_of(bending, "resistance") * 1e-6;
    const double hard = lower * 1.25;                                                  // someone sitting down hard
    CHECK((std::abs(resistance - 37.6) < 0.05 || std::abs(resistance - 65.4) < 0.05 || // by which case governs
           std::abs(resistance - hard) < 0.05));
    CHECK_THAT(value_of(bending, "net_depth"),
               WithinRel(2.6 * 0.0254, 1e-9)); // over the whole row: teeth of 0.9 in carry nothing

    const Finding& sag = finding_of(findings, "sag", "rail");
    CHECK(sag.verdict == Verdict::pass);
    CHECK_THAT(value_of(sag, "limit"), WithinAbs(4.1e-3, 0.05e-3));
    // By hand with the table's 12.3 GPa, which has some shear in it, 2.3 mm; the program takes 1.10 of it and adds shear, which at 15 times the
    // depth comes to 4 % less.
    const double q = 1180 / 0.9906, inertia = 0.022225 * std::pow(0.06604, 3) / 12;
    CHECK_THAT(5 * q * std::pow(0.9906, 4) / (384 * 12.3e9 * inertia) * 1e3, WithinAbs(2.3, 0.05));
    CHECK_THAT(sag_in(*even, "rail #1", "even") * 1e3, WithinAbs(2.2, 0.05));
    // Two people side by side take 800 mm, in the middle more than evenly: P (8 L³ − 4 L B² + B³)/(384 E I) against 5 P L³/(384 E I).
    const double span = 0.9906, block = 0.8,
                 more = (8 * std::pow(span, 3) - 4 * span * block * block + std::pow(block, 3)) / (5 * std::pow(span, 3));
    CHECK_THAT(more, WithinAbs(1.184, 0.0005));
    CHECK_THAT(sag_in(*bench, "rail #1", "2 people side by side"), WithinRel(sag_in(*even, "rail #1", "even") * more, 0.01));
    CHECK_THAT(value_of(sag, "deflection_at_once"), WithinRel(sag_in(*bench, "rail #1", "2 people side by side"), 1e-9));
}

TEST_CASE("One person standing on one cherry slat", "[seat][published]")
{
    // 1300 N over a foot of 100 mm: 44 MPa of 54.4; u 0.82 passes (mean strength 85 MPa). As a point 53 MPa.
    const std::string text = std::string(kSlats) + kRoom;
    const auto bench = bench_of(text);
    // By hand its ends turn freely; in the frame the rails hold them a little.
    CHECK_THAT(free_stress_of(*bench, "slat"), WithinAbs(44e6, 0.5e6));
    const double held = stress_in(*bench, "slat #7", "one person standing on slat #7, at its middle");
    CHECK(held < 44.5e6);
    CHECK(held > 0.95 * 44e6);
    const Finding bending = finding_of(content_of(text).findings, "bending", "slat");
    CHECK(bending.verdict == Verdict::pass);
    CHECK_THAT(*bending.utilisation, WithinAbs(0.82, 0.01));
    CHECK_THAT(value_of(bending, "resistance"),
               WithinRel(85e6 * (1 - 1.645 * 0.16) / 1.15, 1e-9)); // 54.46: the hand's 54.4 cuts the digit
    CHECK_THAT(*bending.where, ContainsSubstring("standing on slat"));
    const auto at_point =
        bench_of(text + "[[load]]\nname = \"heel\"\non = \"slat #7\"\nforce = \"1300 N\"\nat = [15.375, 6.25, 16.5]\n");
    CHECK(stress_in(*at_point, "slat #7", "heel") < 53.5e6);
    CHECK(stress_in(*at_point, "slat #7", "heel") > 0.95 * 53e6);
}

TEST_CASE("A sitter spread over slats sags them little", "[seat][published]")
{
    // Over six slats, each as if loaded in its middle: 0.8 mm at most, of 1.7 mm allowed.
    const Finding sag = finding_of(content_of(std::string(kSlats) + kRoom).findings, "sag", "slat");
    CHECK(sag.verdict == Verdict::pass);
    CHECK(value_of(sag, "deflection") < 0.85e-3);
    CHECK(value_of(sag, "deflection") > 0.3e-3); // the sitter is as deep as the span: less than a point would give
    CHECK_THAT(value_of(sag, "limit"), WithinAbs(1.7e-3, 0.05e-3));
}

TEST_CASE("A white-pine shelf of books", "[seat][published]")
{
    // 900 × 280 × 18 mm, 40 kg/m and itself. By hand with the table's 8.5 GPa: 3.0 mm at once, 4.9 mm with creep of 0.6, limit 4.5 mm.
    const auto shelf = [](double span) {
        return content_of(fill(kShelf, {{"span", std::to_string(span)}, {"length", std::to_string(span + 10)}}) + kRoom).findings;
    };
    const double inertia = 0.280 * std::pow(0.018, 3) / 12, books = 392.3;
    const double by_table = 5 * (books + 19.3) * std::pow(0.9, 4) / (384 * 8.5e9 * inertia);
    CHECK_THAT(by_table * 1e3, WithinAbs(3.0, 0.05));
    CHECK_THAT(by_table * 1.6 * 1e3, WithinAbs(4.9, 0.05));
    // The program takes 1.10 of the table's modulus and adds the shear deflection, a hundredth here: 9 % less. A plate bent along its grain also bends
    // the other way across it (by ν times as much): its edges hang ν κ (b/2)²/3 = 0.07 mm below its mean, 2.4 % here at most.
    const auto findings = shelf(900);
    const Finding& sag = finding_of(findings, "sag", "shelf");
    CHECK_THAT(value_of(sag, "limit"), WithinAbs(4.5e-3, 1e-9));
    CHECK_THAT(value_of(sag, "deflection_at_once"), WithinRel(by_table / 1.10 * 1.01, 0.024));
    CHECK_THAT(value_of(sag, "deflection"), WithinRel(1.6 * value_of(sag, "deflection_at_once"), 1e-9));
    CHECK_THAT(*sag.utilisation, WithinAbs(1.0, 0.02));
    CHECK(finding_of(shelf(930), "sag", "shelf").verdict == Verdict::warn);
    const Finding& bending = finding_of(findings, "bending", "shelf");
    CHECK(bending.verdict == Verdict::pass);
    CHECK_THAT(*bending.utilisation, WithinAbs(0.15, 0.005));
}
