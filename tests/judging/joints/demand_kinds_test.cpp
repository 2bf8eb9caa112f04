// Which kind of load governs, and what follows from more weight, a longer seat, more slats.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <algorithm>
#include <map>

using namespace checked;

namespace {

/// A table of white oak: aprons of unlike depth tenoned into four legs, the top on buttons' places left dry.
std::string table(const std::string& limits)
{
    return design({
        head_text({.name = "Table", .use = "table", .carries = {"top"}, .more = "size = [900, 900, 740]"}),
        wood_text("white oak"),
        part_text("leg", {715, 60, 60}, "z", "y", "[0, 0, 0]", "mirror = [\"x\", \"y\"]"),
        part_text("apron", {780, 90, 22}, "x", "y", "{ left = 60, front = 19, top = 715 }", "mirror = [\"y\"]"),
        part_text("end apron", {780, 70, 22}, "y", "x", "{ left = 19, front = 60, top = 715 }", "mirror = [\"x\"]"),
        part_text("top", {900, 900, 25}, "x", "z", "[0, 0, 715]", "glued_up = { boards = 5, glue = \"PVA\" }"),
        joint_text("apron", "leg", "tenon", "PVA", "tenon = { length = 35, width = 70, thickness = 9 }"),
        joint_text("end apron", "leg", "tenon", "PVA", "tenon = { length = 35, width = 50, thickness = 9 }"),
        limits,
    });
}

/// A plank on two trestles of uprights, 1100 mm from middle to middle.
std::string plank_seat(double thickness, const std::string& limits, double span = 1100)
{
    return design({
        head_text({.name = "Plank", .use = "seat", .carries = {"plank"}}),
        wood_text("white oak"),
        part_text("side", {400, 140, 40}, "z", "x", "[0, 0, 0]", fmt::format("copies = [ {{ at = [{}, 0, 0] }} ]", span)),
        part_text("plank", {span + 40, 140, thickness}, "x", "z", "[0, 0, 400]"),
        limits,
    });
}

/// Slats across two rails on four legs; so many over 1200 mm.
std::string slatted(int count, const std::string& limits = "")
{
    return design({
        head_text({.name = "Slats", .use = "seat", .carries = {"slat"}, .more = "size = [1200, 380, 450]"}),
        wood_text("white oak"),
        part_text("leg", {430, 50, 50}, "z", "y", "[0, 0, 0]", "mirror = [\"x\", \"y\"]"),
        part_text("rail", {1100, 60, 25}, "x", "y", "{ left = 50, front = 12, top = 430 }", "mirror = [\"y\"]"),
        part_text("end rail", {280, 60, 25}, "y", "x", "{ left = 12, front = 50, top = 430 }", "mirror = [\"x\"]"),
        part_text("slat", {380, 60, 20}, "y", "z", "[0, 0, 430]",
                  fmt::format("repeat = {{ count = {}, along = \"x\", to = 1200 }}", count)),
        joint_text("rail", "leg", "tenon", "PVA", "tenon = { length = 35, width = 50, thickness = 9 }"),
        joint_text("end rail", "leg", "tenon", "PVA", "tenon = { length = 35, width = 50, thickness = 9 }"),
        joint_text("slat", "rail", "face", "PVA"),
        limits,
    });
}

/// The step of a working with these words in it.
const WorkingStep& step_of(const Finding& finding, std::string_view words)
{
    for (const WorkingStep& step : finding.working)
        if (step.says.find(words) != std::string::npos) return step;
    throw std::logic_error("no step " + std::string(words) + " in " + finding.headline);
}

/// The largest stress and sag of a part's copies in the cases that begin so.
struct Worst {
    double stress = 0, sag = 0;
};
Worst worst_of(const std::string& text, std::string_view part, std::string_view begins)
{
    const auto bench = bench_of(text);
    Worst worst;
    for (const MemberResult& m : bench->prepared.statics.members) {
        if (bench->piece.part_of(m.copy).id != part) continue;
        if (bench->prepared.statics.cases.cases[m.load_case].name.find(begins) != 0) continue;
        worst.stress = std::max(worst.stress, m.stress);
        worst.sag = std::max(worst.sag, m.sag);
    }
    return worst;
}

std::map<std::string, double> utilisations(const std::string& text)
{
    std::map<std::string, double> by;
    for (const Finding& f : content_of(text).findings)
        if (f.utilisation) by[f.check + " " + f.subject] = *f.utilisation;
    return by;
}

} // namespace

TEST_CASE("A table's tenons are governed by pushes repeated, which harder use repeats more often", "[demand-kinds]")
{
    const Finding home = finding_of(content_of(table("")).findings, "joint-capacity", "end apron / leg");
    const Finding severe =
        finding_of(content_of(table("[limits]\nlevel = \"severe\"\n")).findings, "joint-capacity", "end apron / leg");
    CHECK_THAT(home.headline, ContainsSubstring("25,000 times"));
    CHECK_THAT(severe.headline, ContainsSubstring("200,000 times"));
    CHECK_THAT(severe.headline, ContainsSubstring("300 N"));
    CHECK_THAT(step_of(home, "outlasts the repeats").value, WithinRel(0.75 * 0.565, 1e-9));
    CHECK_THAT(step_of(severe, "outlasts the repeats").value, WithinRel(0.75 * 0.32, 1e-9));
    // The same forces at both levels: the shares alone differ.
    CHECK_THAT(*severe.utilisation / *home.utilisation, WithinRel(0.565 / 0.32, 1e-6));
}

TEST_CASE("A plank that bears a sitter at rest may break under one who sits down hard", "[demand-kinds]")
{
    // 2.13 × 127 kg on 400 mm in the middle of 1.1 m: 2653 N × (1.1/4 − 0.4/8) m = 597 N m. White oak, 105 MPa: 140 × 15.6 mm break.
    const std::string one = "[limits]\nseats = 1\n";
    const Finding thin = finding_of(content_of(plank_seat(15.4, one)).findings, "bending", "plank");
    CHECK(thin.verdict == Verdict::fail);
    CHECK_THAT(thin.headline, ContainsSubstring("sitting down hard"));
    const WorkingStep& step = step_of(thin, "Resistance to someone sitting down hard");
    CHECK_THAT(step.value, WithinRel(105e6 * (1 - 1.645 * 0.16) * 1.25, 1e-9));
    // At rest, 280 N m, it is within what warns: 1.44 × 105 × 0.7368 × 1.15/2.3 MPa.
    CHECK(worst_of(plank_seat(15.4, one), "plank", "one person sitting ").stress > 105e6);
    const double at_rest = worst_of(plank_seat(15.4, one), "plank", "one person sitting ").stress / 2.13;
    CHECK(at_rest < 1.4375 * 105e6 * 0.7368 * 1.15 / 2.3);
    // A little thicker it warns: above the lower strength in an impact, under the mean.
    const Finding thicker = finding_of(content_of(plank_seat(16.0, one)).findings, "bending", "plank");
    CHECK(thicker.verdict == Verdict::warn);
    CHECK(finding_of(content_of(plank_seat(22, one)).findings, "bending", "plank").verdict == Verdict::pass);
}

TEST_CASE("A heavier sitter never makes anything better", "[demand-kinds][property]")
{
    std::map<std::string, double> before;
    for (const int kilograms : {60, 80, 100, 127, 160}) {
        const auto now = utilisations(slatted(13, fmt::format("[limits]\nsitter = \"{} kg\"\n", kilograms)));
        for (const auto& [what, use] : before) {
            CAPTURE(kilograms, what);
            REQUIRE(now.count(what));
            CHECK(now.at(what) >= use * (1 - 1e-6));
        }
        before = now;
    }
    CHECK(before.size() > 5);
}

TEST_CASE("A longer seat of the same boards never bears more", "[demand-kinds][property]")
{
    Worst before;
    for (int span = 850; span <= 1450; span += 100) {
        const std::string text = plank_seat(25, "[limits]\nseats = 2\n", span);
        CAPTURE(span);
        for (const char* who : {"one person sitting ", "2 people side by side"}) {
            const Worst now = worst_of(text, "plank", who);
            CHECK(now.stress > 0);
        }
        const Worst now = worst_of(text, "plank", "2 people side by side");
        CHECK(now.stress > before.stress);
        CHECK(now.sag > before.sag);
        before = now;
    }
}

TEST_CASE("One slat more on the same seat never loads the slats harder", "[demand-kinds][property]")
{
    Worst before{1e30, 1e30};
    for (int count = 9; count <= 17; ++count) {
        const Worst now = worst_of(slatted(count), "slat", "one person sitting ");
        CAPTURE(count);
        CHECK(now.stress > 0);
        CHECK(now.stress < before.stress * 1.02);
        CHECK(now.sag < before.sag * 1.02);
        before = now;
    }
}
