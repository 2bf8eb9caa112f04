// One demand with all six components on a joint of unlike woods: what adds up, what joins by squares, and where published tests end.

#include "bond/joints/joint_capacity.hpp"
#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/joints/joint_as_drawn.hpp"
#include "judging/joints/joint_use.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A bench frame: posts of white pine, a rail of red oak tenoned in at its front, not in the middle of the posts.
std::string mixed_frame(double length, double thickness, const char* glue = "PVA", const char* use = "none")
{
    DesignHead head{.name = "Frame", .use = use};
    if (head.use == "seat") head.carries = {"rail"};
    std::string text = design({
        head_text(head),
        wood_text("red oak"),
        "[[wood]]\nid = \"light\"\nspecies = \"eastern white pine\"\nrings = \"flat\"\n",
        part_text("post", {450, 50, 60}, "z", "x", "{ left = 0, front = 0, bottom = 0 }",
                  "copies = [ { at = { right = 900, front = 0, bottom = 0 } } ]"),
        part_text("rail", {780, 63.5, 22.2}, "x", "y", "{ left = 60, front = 5, top = 450 }"),
        joint_text("rail", "post", "tenon", glue,
                   fmt::format("tenon = {{ length = {}, width = 38, thickness = {} }}", length, thickness)),
    });
    const std::size_t post = text.find("wood = \"stock\"", text.find("id = \"post\""));
    text.replace(post, 14, "wood = \"light\"");
    return text;
}

JointCapacity capacity_at(const Bench& bench, const Contact& contact, const DrawnJoint& joint, const char* glue)
{
    const PartState &a = bench.prepared.state_of(contact.first), &b = bench.prepared.state_of(contact.second);
    return *joint_capacity(
        testing::shared_facts(), joint.form, joint.sizes,
        {&a.loaded, &b.loaded, a.species, b.species, glue ? testing::shared_facts().find_glue(glue) : nullptr});
}

/// A push that hands on these, along the joint's own axes; `pull` out of the post.
JointDemand demand_of(const DrawnJoint& j, double moment, double flat, double torsion, double pull, double shear)
{
    JointDemand d;
    d.push = true;
    d.duration = LoadDuration::short_term;
    for (std::size_t i = 0; i < 3; ++i) {
        d.moment[i] = moment * j.main[i] + flat * j.flat[i] + torsion * j.into[i];
        d.force[i] = pull * j.into[i] + shear * j.flat[i];
    }
    return d;
}

} // namespace

TEST_CASE("What draws on the same cheeks adds up; torsion and shear join by squares", "[joint-capacity]")
{
    const auto bench = bench_of(mixed_frame(32, 9.5));
    const Contact& contact = bench->layout.contacts.front();
    const auto joint = drawn_joint(bench->prepared, contact);
    REQUIRE(joint);
    const JointCapacity c = capacity_at(*bench, contact, *joint, "PVA");
    const auto use = [&](double m, double f, double t, double n, double v) {
        return use_of_joint(bench->prepared, contact, *joint, c, demand_of(*joint, m, f, t, n, v));
    };
    const double factor = use(1, 0, 0, 0, 0).factor;
    // The weaker wood is the post's pine: 0.75 × 1.6/2.1 of the mean for a short load.
    CHECK_THAT(factor, WithinRel(0.75 * 1.6 / 2.1, 1e-9));
    const double m = 20 / (c.mean.value() * factor), f = 9 / (c.flat.value() * factor), n = 700 / (c.withdrawal.value() * factor),
                 v = 400 / (c.section_shear.value() * factor);
    // Of 14 N m about the rail's length the pressed shoulder takes 0.25 × 20/0.9 by friction; the rest twists the tenon.
    const double twist = 14 - 0.25 * 20 / 0.9;
    const double t = std::max(twist / (c.torsion.value() * factor), twist / (c.torsion_pressed.value() / 1.67));
    CHECK_THAT(use(20, 0, 0, 0, 0).use, WithinRel(m, 1e-9));
    CHECK_THAT(use(0, 9, 0, 0, 0).use, WithinRel(f, 1e-9));
    CHECK_THAT(use(20, 9, 0, 700, 0).use, WithinRel(m + f + n, 1e-9));
    CHECK_THAT(use(20, 9, 14, 700, 400).use, WithinRel(std::hypot(m + f + n, t, v), 1e-9));
    CHECK_THAT(use(-20, 9, -14, 700, -400).use, WithinRel(std::hypot(m + f + n, t, v), 1e-9));
    // Pressed into the post the cheeks are not asked; its shoulder rubs the more.
    CHECK(use(20, 9, 14, -700, 400).use < use(20, 9, 14, 0, 400).use);
    CHECK(use(0, 0, 14, 0, 0).twists);
    CHECK_FALSE(use(20, 9, 0, 0, 0).twists);
}

TEST_CASE("No component more ever uses less of a joint, but for the friction that it presses", "[joint-capacity][identity]")
{
    const auto bench = bench_of(mixed_frame(40, 8));
    const Contact& contact = bench->layout.contacts.front();
    const auto joint = drawn_joint(bench->prepared, contact);
    const JointCapacity c = capacity_at(*bench, contact, *joint, "PVA");
    double last = 0;
    for (int i = 0; i <= 40; ++i) {
        const double k = 0.1 * i, use = use_of_joint(bench->prepared, contact, *joint, c,
                                                     demand_of(*joint, 30 * k, 8 * k, 20 * k, 500 * k, 300 * k))
                                            .use;
        CHECK(use >= last);
        last = use;
    }
}

TEST_CASE("A dry tenon bears what turns it less what the load on it uses", "[joint-capacity]")
{
    const auto bench = bench_of(mixed_frame(32, 9.5, ""));
    const Contact& contact = bench->layout.contacts.front();
    const auto joint = drawn_joint(bench->prepared, contact);
    const JointCapacity c = capacity_at(*bench, contact, *joint, nullptr);
    REQUIRE(c.mean == c.shape);
    const auto use = [&](double m, double v) {
        return use_of_joint(bench->prepared, contact, *joint, c, demand_of(*joint, m, 0, 0, 0, v));
    };
    const JointUse both = use(6, 900);
    const double m = 6 / (c.shape.value() / 1.67), v = 900 / (c.pressed.value() / 1.67),
                 broken = 900 / (c.section_shear.value() * both.factor);
    CHECK_THAT(both.use, WithinRel(std::hypot(m + v, broken), 1e-9));
    CHECK(use(6, 1800).use > both.use);
}

TEST_CASE("A mitre of unlike widths is drawn with its own angle", "[joint-capacity]")
{
    const std::string frame = design({
        head_text({.name = "Frame", .wall = {"stile"}, .more = "size = [400, 20, 500]"}),
        wood_text("red oak"),
        part_text("stile", {500, 40, 20}, "z", "y", "[0, 0, 0]", "mirror = [\"x\"]"),
        part_text("rail", {400, 60, 20}, "x", "y", "[0, 0, 0]", "mirror = [\"z\"]"),
        joint_text("stile", "rail", "mitre", "PVA"),
    });
    const auto bench = bench_of(frame);
    const Contact& contact = bench->layout.contacts.front();
    const auto joint = drawn_joint(bench->prepared, contact);
    REQUIRE(joint);
    REQUIRE(joint->form == JointForm::mitre);
    // The cut runs over 40 × 60 mm. The stile, the first, lies along the 60: its grain is at atan(40/60) to the cut, at 56.3° to its normal.
    CHECK_THAT(in_millimetres(joint->sizes.rail_depth) * std::sqrt(2.0), WithinAbs(std::hypot(40, 60), 1e-6));
    const bool stile_first = bench->piece.part_of(contact.first).id == "stile";
    CHECK_THAT(joint->sizes.tilt, WithinAbs(stile_first ? std::atan2(60.0, 40.0) : std::atan2(40.0, 60.0), 1e-6));
}

TEST_CASE("A tenon beyond the published tests: said, and a warning where the tested sizes would not do", "[joint-capacity]")
{
    const auto judged = [](double length, double thickness, const char* use, double weight = 150) {
        return finding_of(content_of(mixed_frame(length, thickness, "PVA", use) +
                                     load_text("weight", "rail", weight, "[450, 15, 450]", "lasting = true"))
                              .findings,
                          "joint-capacity", "rail / post");
    };
    // Nobody sits there: said, and no more.
    const Finding still = judged(20, 9.5, "none");
    CHECK(still.verdict == Verdict::pass);
    CHECK_THAT(still.headline, ContainsSubstring("outside the published tests"));
    CHECK_THAT(still.headline, ContainsSubstring("20 mm long lies outside the published tests (25 mm to 50 mm)"));
    CHECK_THAT(judged(40, 9.5, "none").headline, !ContainsSubstring("published tests"));
    // Where people sit: 50 × 13 mm would not do in place of 60 × 16.
    const Finding seat = judged(60, 16, "seat", 540);
    CHECK_THAT(seat.headline, ContainsSubstring("60 mm long"));
    CHECK_THAT(seat.headline, ContainsSubstring("16 mm thick"));
    CHECK(seat.verdict != Verdict::pass);
    REQUIRE(seat.remedy);
    if (*seat.utilisation <= 1) CHECK_THAT(seat.remedy.words(), ContainsSubstring("more than 50 mm long has not been tested"));
}
