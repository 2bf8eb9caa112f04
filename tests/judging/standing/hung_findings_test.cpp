// Hung things: gates and doors hang by their stiles on hinges, and never stand on the floor.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/finding_tools.hpp"
#include "piece/contacts/hinge_line.hpp"

#include <algorithm>
#include <cmath>

using namespace checked;

namespace {

constexpr double kG = 9.80665;

/// A gate of two stiles and three rails, 900 wide and 1000 high, on a post to its left; millimetres.
struct Gate {
    std::string use = "gate", post_wood = "stock", rails = "tenon", rail_glue = "two-part PVA, D4";
    std::string rail_sizes = "tenon = { length = 50, width = 90, thickness = 13 }\npegs = { diameter = 10, count = 2 }";
    std::string hinges = "hinges = { count = 2, inset = 120, gap = 3 }";
    std::string screws = "screws = { diameter = 6, length = 60, count = 4 }";
    std::string between = "\"stile #1\", \"post\"", more;
    int bottom = 100, second_post = 0;
    bool hung = true, wall = true;

    std::string text() const
    {
        const auto at = [&](int x, int z) { return fmt::format("[{}, 30, {}]", x, bottom + z); };
        std::string post = part_text("post", {1200, 100, 100}, "z", "y", "[0, 0, 0]",
                                     second_post > 0 ? fmt::format("copies = [ {{ at = [{}, 0, 0] }} ]", second_post) : "");
        post.replace(post.find("stock"), 5, post_wood);
        const std::string pine = "[[wood]]\nid = \"soft\"\nspecies = \"Scots pine\"\nrings = \"flat\"\n";
        return design(
            {head_text(
                 {.name = "Gate", .use = use, .wall = wall ? std::vector<std::string>{"post"} : std::vector<std::string>{}}),
             wood_text("white oak"), pine, hung ? post : "",
             part_text("stile", {1000, 90, 45}, "z", "y", at(103, 0), fmt::format("copies = [ {{ at = {} }} ]", at(913, 0))),
             part_text("rail", {720, 120, 45}, "x", "y", at(193, 40),
                       fmt::format("copies = [ {{ at = {} }}, {{ at = {} }} ]", at(193, 440), at(193, 840))),
             joint_text("rail", "stile", rails, rail_glue, rail_sizes),
             hung ? fmt::format("[[joint]]\nbetween = [{}]\nkind = \"hinge\"\n{}\n{}\n", between, hinges, screws) : "", more});
    }
    std::vector<Finding> findings() const { return content_of(text()).findings; }
    Finding hinge() const { return finding_of(findings(), "fastener", "stile / post"); }
};

Verdict worst_of(const std::vector<Finding>& findings, std::string_view check, std::string_view subject)
{
    Verdict worst = Verdict::pass;
    for (const Finding& f : findings)
        if (f.check == check && f.subject == subject && severity(f.verdict) > severity(worst)) worst = f.verdict;
    return worst;
}

} // namespace

TEST_CASE("A child on the latch stile pulls the upper hinge by the couple between the two", "[hung][fastener]")
{
    const Gate gate;
    const auto bench = bench_of(gate.text());
    double weight = 0, about = 0; // of the leaf, and about the face of the hinge stile, x = 103
    for (std::size_t i = 0; i < bench->piece.copies.size(); ++i) {
        if (!bench->piece.hangs(i)) continue;
        weight += bench->prepared.masses[i] * kG;
        about += bench->prepared.masses[i] * kG * (bench->layout.centres[i][0] - 0.103);
    }
    CHECK(weight > 100);
    // The child, 300 N, stands on the latch stile, whose middle is at 958. The hinges are 1000 − 2 × 120 = 760 apart.
    const double turned = about + 300 * (0.958 - 0.103);
    const Finding f = gate.hinge();
    CHECK_THAT(value_of(f, "turned"), WithinRel(turned, 0.002));
    CHECK_THAT(value_of(f, "lever"), WithinAbs(0.760, 1e-9));
    CHECK_THAT(value_of(f, "pull"), WithinRel(turned / 0.760, 0.002));
    CHECK_THAT(value_of(f, "shear"), WithinRel((weight + 300) / 2, 0.005));
    REQUIRE(f.utilisation);
    CHECK_THAT(*f.where, ContainsSubstring("a child on the latch side"));
    // The frame is in balance: the post hands all of it to the wall.
    const Statics& statics = bench->prepared.statics;
    for (std::size_t k = 0; k < statics.cases.cases.size(); ++k) {
        CHECK(statics.settled[k]);
        CHECK_THAT(statics.on_floor[k], WithinRel(bench->prepared.whole_mass() * kG + statics.cases.cases[k].total, 1e-6));
    }
    CHECK(statics.loose.empty());
}

TEST_CASE("Where the hinges sit and how many they are counts", "[hung][fastener]")
{
    const Gate wide;
    Gate near_middle = wide, three = wide, quarters = wide;
    near_middle.hinges = "hinges = { count = 2, inset = 300, gap = 3 }";
    three.hinges = "hinges = { count = 3, inset = 120, gap = 3 }";
    quarters.hinges = "hinges = { gap = 3 }";
    const double pull = value_of(wide.hinge(), "pull");
    CHECK_THAT(value_of(near_middle.hinge(), "pull"), WithinRel(pull * 760 / 400, 0.005));
    CHECK_THAT(value_of(three.hinge(), "pull"), WithinRel(pull, 0.005)); // the one in the middle has no lever
    CHECK_THAT(value_of(three.hinge(), "shear"), WithinRel(value_of(wide.hinge(), "shear") * 2 / 3, 0.01));
    CHECK_THAT(value_of(quarters.hinge(), "lever"), WithinAbs(0.500, 1e-9)); // at a quarter and three quarters
}

TEST_CASE("The weaker of the two woods decides over the screws of a hinge", "[hung][fastener]")
{
    const Gate oak;
    Gate pine = oak;
    pine.post_wood = "soft";
    const Finding in_pine = pine.hinge(), in_oak = oak.hinge();
    CHECK(*in_pine.utilisation > *in_oak.utilisation * 1.2);
    CHECK_THAT(*in_pine.where, ContainsSubstring("Scots pine"));
    CHECK_THAT(in_pine.headline, ContainsSubstring("in post"));
    // u = V/(n V_a k) + H/(n N_a k) by the values of the finding.
    CHECK_THAT(*in_pine.utilisation, WithinRel(value_of(in_pine, "shear") / value_of(in_pine, "shear_allowed") +
                                                   value_of(in_pine, "pull") / value_of(in_pine, "pull_allowed"),
                                               1e-9));
    Gate thin = pine;
    thin.screws = "screws = { diameter = 3, length = 16, count = 1 }";
    CHECK(thin.hinge().verdict == Verdict::fail);
    Gate untold = oak;
    untold.screws = "";
    const Finding asked = untold.hinge();
    CHECK(asked.verdict == Verdict::cannot_tell);
    CHECK_THAT(value_of(asked, "pull"), WithinRel(value_of(in_oak, "pull"), 1e-9));
    CHECK_THAT(asked.remedy.words(), ContainsSubstring("screws = {"));
}

TEST_CASE("A hung gate hangs: its floor, its sill and the post on the latch side bear nothing of it", "[hung]")
{
    const Gate high;
    Gate low = high, closed = high;
    low.bottom = 0; // drawn as low as the post
    closed.second_post = 1003;
    closed.between = "\"stile #1\", \"post #1\"";
    const double pull = value_of(high.hinge(), "pull");
    CHECK_THAT(value_of(low.hinge(), "pull"), WithinRel(pull, 1e-6));
    CHECK_THAT(value_of(closed.hinge(), "pull"), WithinRel(pull, 1e-6));
    low.wall = false;
    const auto bench = bench_of(low.text());
    for (std::size_t i = 0; i < bench->piece.copies.size(); ++i)
        CHECK(bench->prepared.layout->path.on_floor[i] == (bench->piece.part_of(i).id == "post"));
}

TEST_CASE("The rails of a hung gate bear the child by their joints: pegged tenons do, butt joints do not",
          "[hung][joint-capacity]")
{
    const Gate sound;
    const auto findings = sound.findings();
    CHECK(worst_of(findings, "joint-capacity", "rail / stile") == Verdict::pass);
    CHECK(value_of(finding_of(findings, "joint-capacity", "rail / stile"), "moment") > 10);
    for (const Finding& f : findings) {
        CAPTURE(f.check, f.subject, f.headline);
        CHECK(f.verdict != Verdict::fail);
    }
    Gate butted = sound;
    butted.rails = "butt";
    butted.rail_sizes = "";
    const auto weak = butted.findings();
    CHECK(std::any_of(weak.begin(), weak.end(), [](const Finding& f) {
        return f.verdict == Verdict::fail && (f.subject == "rail / stile" || f.check == "stands");
    }));
}

TEST_CASE("A gate that says not how it hangs is asked", "[hung][stands]")
{
    Gate gate;
    gate.hung = gate.wall = false;
    gate.bottom = 0;
    const auto findings = gate.findings();
    const Finding& f = finding_of(findings, "stands", "stile");
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK_THAT(f.headline, ContainsSubstring("How is it hung?"));
    // With another use only where a load makes it matter.
    gate.use = "panel";
    CHECK(finding_of(gate.findings(), "stands").verdict == Verdict::pass);
    gate.more = load_text("child", "stile #2", 300, "[958, 52, 1000]");
    CHECK(finding_of(gate.findings(), "stands", "stile").verdict == Verdict::cannot_tell);
    std::string by_wall = gate.text();
    by_wall.replace(by_wall.find("use = \"panel\""), 13, "use = \"panel\"\nwall = [\"stile #1\"]");
    CHECK(count_of(content_of(by_wall).findings, "stands") == 1);
    CHECK(finding_of(content_of(by_wall).findings, "stands").verdict == Verdict::pass);
}

TEST_CASE("A gate that hangs on both its sides cannot be opened", "[hung][fastener]")
{
    Gate gate;
    gate.second_post = 1006;
    gate.between = "\"stile\", \"post\"";
    const Finding f = gate.hinge();
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("two lines"));
}

TEST_CASE("A door of one board takes the child beside its middle", "[hung]")
{
    // 600 wide, the hinges at its right side this time: the child 100 mm from the left one, 500 mm from the post.
    const auto bench = bench_of(design(
        {head_text({.name = "Door", .use = "door", .wall = {"post"}}), wood_text("white oak"),
         part_text("post", {1500, 80, 80}, "z", "y", "[600, 0, 0]"), part_text("door", {1200, 600, 22}, "z", "y", "[0, 20, 150]"),
         "[[joint]]\nbetween = [\"door\", \"post\"]\nkind = \"hinge\"\nhinges = { count = 2, inset = 200 }\n"}));
    const auto findings = content_of(bench->piece).findings;
    const Finding& f = finding_of(findings, "fastener", "door / post");
    const double weight = bench->prepared.masses[bench->copy("door")] * kG;
    CHECK_THAT(value_of(f, "turned"), WithinRel(300 * 0.500 + weight * 0.300, 0.01));
    CHECK_THAT(value_of(f, "pull"), WithinRel((300 * 0.500 + weight * 0.300) / 0.800, 0.01));
}

TEST_CASE("Hinges are read: a gap that is not bridged, glue, room without end", "[hung][joint]")
{
    const auto faults = [](const std::string& text) {
        return write_faults(read_design(text, testing::shared_facts()).faults, "gate.toml", text);
    };
    Gate gate;
    gate.hinges = "";
    const std::string apart = faults(gate.text());
    CHECK_THAT(apart, ContainsSubstring("[joint-apart]"));
    CHECK_THAT(apart, ContainsSubstring("fix: hinges = { count = 2, gap = \"3 mm\" }"));
    gate.hinges = "hinges = { count = 2, gap = \"3 mm\" }";
    CHECK(faults(gate.text()).empty());
    Gate glued;
    glued.hinges += "\nglue = \"PVA\"";
    CHECK_THAT(faults(glued.text()), ContainsSubstring("a joint of kind \"hinge\" takes no glue"));
    Gate wide;
    wide.hinges = "hinges = { gap = 80 }";
    CHECK_THAT(faults(wide.text()), ContainsSubstring("[out-of-range]"));
    Gate screwed;
    screwed.rail_sizes = "hinges = { count = 2 }\n" + screwed.rail_sizes;
    CHECK_THAT(faults(screwed.text()), ContainsSubstring("a joint of kind \"tenon\" takes no hinges"));
}

TEST_CASE("Pins lie along the longer side of the faces, at the edge that is named", "[hung]")
{
    const auto line = [](const std::string& hinges) {
        Gate gate;
        gate.hinges = hinges;
        const auto bench = bench_of(gate.text());
        const Contact& contact = bench->contact("stile #1", "post");
        return hinge_line(bench->piece.joints[*contact.joint], contact);
    };
    // The stile's face looks left; both share y 30 to 75 and z 100 to 1100.
    const HingeLine middle = line("hinges = { count = 3, inset = 100, gap = 3 }");
    REQUIRE(middle.places.size() == 3);
    CHECK(middle.upright());
    for (const auto& [i, z] : {std::pair{0, 0.200}, std::pair{1, 0.600}, std::pair{2, 1.000}}) {
        CHECK_THAT(middle.places[static_cast<std::size_t>(i)][2], WithinAbs(z, 1e-9));
        CHECK_THAT(middle.places[static_cast<std::size_t>(i)][1], WithinAbs(0.0525, 1e-9));
    }
    CHECK_THAT(line("hinges = { count = 1, gap = 3 }").places.front()[2], WithinAbs(0.600, 1e-9));
    CHECK_THAT(line("hinges = { gap = 3, pin = \"front\" }").places.front()[1], WithinAbs(0.030, 1e-9));
    CHECK_THAT(line("hinges = { gap = 3, pin = \"back\" }").places.front()[1], WithinAbs(0.075, 1e-9));
}
