// bearing, leg, rack, tip, creep: what only the whole piece tells, against sums by hand.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "checks/trestle.hpp"

#include <cmath>
#include <numbers>

using namespace checked;

namespace {

/// Two posts and a rail tenoned between them, red oak at 12 %; posts 50 × 50, 450 high, middles 850 mm apart.
std::string portal(const char* more = "")
{
    return design({
        head_text({.name = "Portal", .use = "seat", .carries = {"rail"}}),
        wood_text("red oak"),
        part_text("post", {450, 50, 50}, "z", "x", "{ left = 0, front = 0, bottom = 0 }",
                  "copies = [ { at = { right = 900, front = 0, bottom = 0 } } ]"),
        part_text("rail", {800, 63.5, 22.2}, "x", "y", "{ left = 50, front = 14, top = 450 }"),
        joint_text("rail", "post", "tenon", "PVA", "tenon = { length = 32, width = 38, thickness = 9.5 }"),
        more,
    });
}

} // namespace

TEST_CASE("A post dents the board on it by its force over its end", "[bearing]")
{
    const auto pressed = [](const char* newtons) {
        Trestle t;
        t.more = point_load(newtons, "500");
        return bench_of(t.text());
    };
    const auto bench = pressed("1000");
    const double own = bench->prepared.masses[bench->copy("board #1")] * kStandardGravity;
    const double mean = bench->prepared.parts[1].loaded.compression_across->value.value();
    const auto finding = [](const char* newtons) {
        Trestle t;
        t.more = point_load(newtons, "500");
        return finding_of(content_of(t.text()).findings, "bearing");
    };
    const Finding light = finding("1000");
    CHECK_THAT(value_of(light, "force"),
               WithinRel((1000 + own) / 2, 1e-3)); // the load stands beside the middle of the width, not of the length
    CHECK_THAT(value_of(light, "area"), WithinRel(0.040 * 0.120, 1e-6));
    CHECK_THAT(value_of(light, "resistance"), WithinRel(mean / 1.67, 1e-9));
    CHECK_THAT(*light.utilisation, WithinRel(value_of(light, "force") / (0.040 * 0.120) / (mean / 1.67), 1e-9));
    CHECK(light.verdict == Verdict::pass);
    // From 1/1.67 of the mean it dents, from the mean it is crushed.
    const double crushing = 2 * mean * 0.040 * 0.120;
    CHECK(finding(std::to_string(0.8 * crushing).c_str()).verdict == Verdict::warn);
    CHECK(finding(std::to_string(1.1 * crushing).c_str()).verdict == Verdict::fail);
}

TEST_CASE("A post on a wall bends by the force at its end, and is pressed by what stands on it", "[leg]")
{
    // A peg tenoned into a block on the wall: 200 N sideways and 1000 N down at its top, 382 mm above the block.
    const std::string text = design({
        head_text({.name = "Peg", .wall = {"block"}}),
        wood_text("red oak", ""),
        part_text("block", {200, 100, 60}, "x", "z", "[0, 0, 0]"),
        part_text("post", {400, 40, 40}, "z", "y", "[80, 30, 60]"),
        joint_text("post", "block", "tenon", "PVA", "tenon = { length = 30, width = 25, thickness = 14 }"),
        load_text("coat", "post", 200, "[100, 50, 442]", "direction = [1, 0, 0]"),
        load_text("pot", "post", 1000, "[100, 50, 460]"),
    });
    const Finding f = finding_of(content_of(text).findings, "leg", "post");
    // All stated loads together: at the shoulder M = 200 × 0.382, the thrust with it 1000 N and the post's own weight.
    const double bending = 6 * 200 * 0.382 / std::pow(0.040, 3);
    CHECK_THAT(value_of(f, "bending_stress"), WithinRel(bending, 1e-3));
    CHECK_THAT(value_of(f, "moment"), WithinRel(200 * 0.382, 1e-3));
    CHECK(value_of(f, "thrust") > 1000);
    CHECK(value_of(f, "thrust") < 1000 + 5);
    CHECK_THAT(value_of(f, "thrust_stress"), WithinRel(value_of(f, "thrust") / 0.0016, 1e-6));
    CHECK_FALSE(f.sources.empty());
}

TEST_CASE("A slender post buckles before it is crushed", "[leg]")
{
    // Pressed alone: 1/f = 1/f05 k_dur/k + (2ℓ/i)²/(π² E05), ℓ the whole post where nothing is joined to it.
    const auto pressed = [](double side) {
        return design({
            head_text({.name = "Post"}),
            wood_text("red oak", ""),
            part_text("post", {700, side, side}, "z", "y", "[0, 0, 0]"),
            load_text("weight", "post", 1000, fmt::format("[{0}, {0}, 700]", side / 2), "lasting = true"),
        });
    };
    for (const double side : {20.0, 60.0}) {
        CAPTURE(side);
        const std::string text = pressed(side);
        const auto bench = bench_of(text);
        const WoodState& oak = bench->prepared.parts[0].loaded;
        const Finding f = finding_of(content_of(text).findings, "leg", "post");
        const double area = side * side * 1e-6, crushed = oak.compression_along->value.value() * (1 - 1.645 * 0.18) * 0.9 / 2.1;
        const double slender = 2 * 0.7 / (side * 1e-3 / std::sqrt(12.0)), buckles = std::pow(std::numbers::pi, 2) *
                                                                                    oak.modulus_along->value.value() *
                                                                                    (1 - 1.645 * 0.22) / (slender * slender);
        const double whole = value_of(f, "thrust") / area * (1 / crushed + 1 / buckles);
        CHECK_THAT(*f.utilisation, WithinRel(whole, 1e-6));
        if (side < 30) CHECK(buckles < crushed);
    }
}

TEST_CASE("Softer joints let a piece sway more, stiffer ones less", "[rack]")
{
    const std::string text = portal("[limits]\nseats = 1\n");
    const auto bench = bench_of(text);
    const auto& statics = bench->prepared.statics;
    REQUIRE(statics.loose.empty());
    int pushes = 0;
    for (std::size_t k = 0; k < statics.cases.cases.size(); ++k) {
        const LoadCase& c = statics.cases.cases[k];
        if (!c.push || !statics.settled[k] || c.name.find("to the right") == std::string::npos) continue;
        ++pushes;
        CHECK(statics.sways[k].sway > 1.02 * statics.sways[k].stiff);
        CHECK(statics.sways[k].soft > 1.02 * statics.sways[k].sway);
    }
    CHECK(pushes > 0);
}

TEST_CASE("A bench whose ends stand out tips by the lever of who sits there", "[tip]")
{
    // Feet from x = 200 to 800, board from 0 to 1000, 420 mm high: a person 60 mm from its end is 140 mm outside the feet.
    const auto bench_with = [](const char* left, const char* right) {
        Trestle t;
        t.use = "seat";
        t.head = "carries = [\"board\"]";
        std::string text = t.text();
        text.replace(text.find("at = [0, 0, 0]"), 14, std::string("at = [") + left + ", 0, 0]");
        text.replace(text.find("{ at = [960, 0, 0] }"), 20, std::string("{ at = [") + right + ", 0, 0] }");
        return text;
    };
    const std::string text = bench_with("200", "760");
    const auto bench = bench_of(text);
    const Finding f = finding_of(content_of(text).findings, "tip");
    const double weight = bench->prepared.whole_mass() * kStandardGravity;
    CHECK_THAT(value_of(f, "overturning"), WithinRel(600 * 0.140 + 20 * 0.420, 1e-9));
    CHECK_THAT(value_of(f, "restoring"), WithinRel(weight * 0.300, 1e-9));
    CHECK_THAT(value_of(f, "overturning_ratio"), WithinRel((600 * 0.140 + 20 * 0.420) / (weight * 0.300), 1e-9));
    CHECK(f.verdict == Verdict::fail);
    // With the feet at the ends the person helps to hold it down.
    const Finding firm = finding_of(content_of(bench_with("0", "960")).findings, "tip");
    CHECK(firm.verdict == Verdict::pass);
    CHECK_THAT(value_of(firm, "outside"), WithinAbs(-0.060, 1e-9));
}

TEST_CASE("A lasting stress beyond a tenth of the strength warns of more creep", "[creep]")
{
    const auto loaded = [](const char* newtons) {
        Trestle t;
        t.more = point_load(newtons, "500");
        return finding_of(content_of(t.text()).findings, "creep", "board");
    };
    const Finding light = loaded("150"), heavy = loaded("600");
    CHECK(light.verdict == Verdict::pass);
    CHECK(heavy.verdict == Verdict::warn);
    CHECK_THAT(*light.utilisation, WithinRel(value_of(light, "share_of_strength") / 0.1, 1e-9));
    CHECK_THAT(value_of(light, "sag_final"), WithinRel(1.6 * value_of(light, "sag_at_once"), 1e-9));
}

TEST_CASE("What hardly sags is told so, not as nothing at all", "[sag]")
{
    const auto findings = content_of(built_in_design("boot-bench")).findings;
    const Finding& f = finding_of(findings, "sag", "side rail");
    REQUIRE(value_of(f, "deflection") < 5e-5);
    CHECK_THAT(f.headline, ContainsSubstring("hardly sags, less than 0.002 in"));
    CHECK(f.headline.find("sags 0 in") == std::string::npos);
}
